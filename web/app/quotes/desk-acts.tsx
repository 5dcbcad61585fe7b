import { useState, type ReactElement } from 'react'
import { addDays } from '../../../core/dates.ts'
import { Button } from '../parts/button.tsx'
import type { Flush } from './autosave.ts'
import { useDesk } from './desk-context.ts'
import { getDraftPaper } from './draft-paper.ts'
import { titleOf } from './quote-title.ts'
import { useSameAsIssued } from './use-issued-draft.ts'

/** Two weeks: long enough to decide, short enough that most prices seen still hold. The advisor changes it in the dialog. */
export const STANDS_DAYS = 14

/** What is done with the whole quote: seen on paper, issued, or discarded while nobody holds it. */
export function DeskActs({ flush }: { flush: Flush }): ReactElement {
  const { state, open, edit, locked, reader } = useDesk()
  const { view, draft } = state
  const same = useSameAsIssued() === true
  const ask = (): void => {
    if (draft.standsUntil === null || draft.standsUntil < view.asOf) edit({ do: 'stands_until', date: addDays(view.asOf, STANDS_DAYS) })
    if (draft.title === '') edit({ do: 'title', title: titleOf(draft.need, reader) })
    open({ at: 'issue' })
  }
  return (
    <>
      {view.revisions.length === 0 && (
        <Button look="plain" onClick={() => open({ at: 'discard' })}>
          Discard
        </Button>
      )}
      <PaperButtons flush={flush} />
      {!locked && (
        <>
          {same && <span className="reason">Nothing changed since version {view.revisions.length}.</span>}
          <Button look={same ? 'outlined' : 'main'} aria-keyshortcuts="I" onClick={ask}>
            {view.revisions.length === 0 ? 'Issue quote' : `Issue version ${view.revisions.length + 1}`}
          </Button>
        </>
      )}
    </>
  )
}

const PAPER_WORDS = { a4: 'A4', letter: 'Letter' } as const

/** Shows the draft as it would be printed, once the server has what is on the screen; the other size stands beside. */
function PaperButtons({ flush }: { flush: Flush }): ReactElement {
  const { view } = useDesk().state
  const [busy, setBusy] = useState(false)
  const [fault, setFault] = useState('')
  const usual = view.install.paper
  const other = usual === 'a4' ? 'letter' : 'a4'
  const see = async (paper: 'a4' | 'letter'): Promise<void> => {
    // The window is opened first, within the press, or the browser takes it for a pop-up.
    const page = window.open('', '_blank')
    setBusy(true)
    setFault('')
    try {
      if ((await flush()) === null) throw new Error('The draft is not saved yet.')
      const address = URL.createObjectURL(await getDraftPaper(view.id, paper))
      if (page) page.location.href = address
    } catch (error) {
      page?.close()
      setFault(error instanceof Error ? error.message : 'The paper could not be made.')
    } finally {
      setBusy(false)
    }
  }
  return (
    <>
      {fault && <output className="reason">Not shown: {fault}</output>}
      <Button busy={busy} aria-keyshortcuts="P" onClick={() => void see(usual)}>
        See it on paper
      </Button>
      <Button look="plain" busy={busy} onClick={() => void see(other)}>
        on {PAPER_WORDS[other]}
      </Button>
    </>
  )
}
