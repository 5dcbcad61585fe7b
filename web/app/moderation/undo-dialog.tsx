import type { ReactElement } from 'react'
import type { Reporter } from '../client/moderation.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'

interface Props {
  /** Null: closed. */
  reporter: Reporter | null
  busy: boolean
  error: unknown
  onClose: () => void
  onUndo: () => void
}

export function UndoDialog({ reporter, busy, error, onClose, onUndo }: Props): ReactElement {
  const count = reporter?.sightings ?? 0
  const what = count === 1 ? 'the 1 sighting' : `all ${count} sightings`
  return (
    <Dialog
      open={reporter !== null}
      title={`Take back ${what} of ${reporter?.name ?? ''}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Leave them</Button>
          <Button look="main" busy={busy} onClick={onUndo}>
            Take back {count}
          </Button>
        </>
      }
    >
      <p>
        They stay in the record, marked as withdrawn, and count for nothing. For 30 days they can be put back. What they post from now on
        counts.
      </p>
      <ErrorNotice error={error} />
    </Dialog>
  )
}
