import { useMutation } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { getPaper } from '../client/paper.ts'
import { problemOf } from '../client/problem.ts'
import { revisionPdfAddress } from '../client/quotes.ts'
import { saveFile } from '../parts/save-file.ts'

const PAPERS = [
  ['a4', 'PDF, A4'],
  ['letter', 'PDF, Letter'],
] as const

/** An issued version on either paper. Plain links, so that they can be opened beside; pressed, they wait their turn where many are made. */
export function PaperLinks({ quoteId, revision }: { quoteId: string; revision: number }): ReactElement {
  const fetching = useMutation({
    mutationFn: async (address: string) => {
      const { bytes, name } = await getPaper(address)
      saveFile(bytes, name)
    },
  })
  const press = (event: { preventDefault: () => void }, address: string): void => {
    event.preventDefault()
    if (!fetching.isPending) fetching.mutate(address)
  }
  return (
    <>
      {PAPERS.map(([paper, label]) => {
        const address = revisionPdfAddress(quoteId, revision, paper)
        const isBusy = fetching.isPending && fetching.variables === address
        return (
          <a key={paper} className="btn small" href={address} download aria-busy={isBusy} onClick={(event) => press(event, address)}>
            {label}
          </a>
        )
      })}
      {fetching.isError && <output className="reason">No paper yet: {problemOf(fetching.error).detail}</output>}
    </>
  )
}
