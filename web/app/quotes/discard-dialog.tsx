import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { BUILD_LETTERS } from '../../../core/quote/draft.ts'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { forgetDraft } from './kept-draft.ts'

interface Props {
  open: boolean
  quoteId: string
  customerName: string
  /** The draft as it stands; undefined while it is read. */
  draft: QuoteView['draft'] | undefined
  /** Sends it away at the version that is shown. */
  discard: () => Promise<unknown>
  onGone: () => unknown
  onClose: () => void
  /** Why the draft could not be read. */
  unread?: unknown
}

/** Discards a quote that was never issued: names what goes, since nothing of it can be had back. */
export function DiscardDialog({ open, quoteId, customerName, draft, discard, onGone, onClose, unread }: Props): ReactElement {
  const queries = useQueryClient()
  const gone = useMutation({
    mutationFn: discard,
    onSuccess: async () => {
      forgetDraft(sessionStorage, quoteId)
      onClose()
      await queries.invalidateQueries({ queryKey: ['quotes'] })
      await queries.invalidateQueries({ queryKey: ['customers'] })
      await onGone()
    },
  })
  const close = (): void => {
    gone.reset()
    onClose()
  }
  return (
    <Dialog
      open={open}
      title={`Discard this draft for ${customerName}?`}
      onClose={close}
      actions={
        <>
          <Button onClick={close}>Keep it</Button>
          {draft && (
            <Button look="main" busy={gone.isPending} onClick={() => gone.mutate()}>
              Discard the draft
            </Button>
          )}
        </>
      }
    >
      {draft ? <Goes draft={draft} /> : <Reading unread={unread} />}
      <p>
        It was never issued, so no customer holds it. {customerName} stays on record with their gear and other quotes. This cannot be
        undone.
      </p>
      <ErrorNotice error={gone.error} />
    </Dialog>
  )
}

const Reading = ({ unread }: { unread: unknown }): ReactElement =>
  unread ? <ErrorNotice error={unread} /> : <LoadingRows what="the draft" rows={2} />

function Goes({ draft }: { draft: QuoteView['draft'] }): ReactElement {
  return (
    <>
      <p>{draft.title ? `“${draft.title}” goes, with its need, terms and notes and:` : 'Its need, terms and notes go, and:'}</p>
      <ul>
        {draft.builds.map((build, index) => (
          <li key={build.id}>
            Build {BUILD_LETTERS[index]}
            {build.name && `, “${build.name}”`}: {sayLines(build.lines.length)}
          </li>
        ))}
      </ul>
    </>
  )
}

/** @example sayLines(1) // 'one line' */
const sayLines = (count: number): string => (count === 0 ? 'no lines yet' : count === 1 ? 'one line' : `${count} lines`)
