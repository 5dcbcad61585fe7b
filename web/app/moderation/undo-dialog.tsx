import type { ReactElement } from 'react'
import type { Reporter } from '../client/moderation.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { sayStanding } from './say-standing.ts'

interface Props {
  /** Null: closed. */
  reporter: Reporter | null
  busy: boolean
  error: unknown
  onClose: () => void
  onUndo: () => void
}

export function UndoDialog({ reporter, busy, error, onClose, onUndo }: Props): ReactElement {
  const standing = { sightings: reporter?.sightings ?? 0, foundGone: reporter?.foundGone ?? 0 }
  const said = sayStanding(standing)
  const what = standing.sightings > 1 && standing.foundGone === 0 ? `all ${said}` : `the ${said}`
  return (
    <Dialog
      open={reporter !== null}
      title={`Take back ${what} of ${reporter?.name ?? ''}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Leave them</Button>
          <Button look="main" busy={busy} onClick={onUndo}>
            Take back {standing.sightings + standing.foundGone}
          </Button>
        </>
      }
    >
      <p>
        Sightings stay in the record, marked as withdrawn, and count for nothing; what they found gone is there again. For 30 days it can be
        put back. What they post from now on counts.
      </p>
      <ErrorNotice error={error} />
    </Dialog>
  )
}
