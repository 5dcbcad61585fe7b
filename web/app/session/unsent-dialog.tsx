import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'

interface Props {
  name: string
  /** How many are unsent; null: closed. */
  left: number | null
  /** Sending was tried, and some are left. */
  tried: boolean
  busy: boolean
  error: unknown
  onClose: () => void
  onKeep: () => void
  onDiscard: () => void
  onSend: () => void
}

/** What becomes of sightings that the server does not have yet. */
export function UnsentDialog({ name, left, tried, busy, error, onClose, onKeep, onDiscard, onSend }: Props): ReactElement {
  return (
    <Dialog
      open={left !== null}
      title={left === 1 ? 'One sighting is not sent yet. Sign out?' : `${left ?? 0} sightings are not sent yet. Sign out?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Stay signed in</Button>
          <Button busy={busy} onClick={onKeep}>
            Keep them and sign out
          </Button>
          <Button busy={busy} onClick={onDiscard}>
            Discard them and sign out
          </Button>
          <Button look="main" busy={busy} onClick={onSend}>
            Send, then sign out
          </Button>
        </>
      }
    >
      <p>Kept ones stay on this device for {name} alone and post by themselves after the next sign-in. Discarded ones are gone.</p>
      {tried && <p className="fault">{left === 1 ? 'One' : left} could not be sent now.</p>}
      <ErrorNotice error={error} />
    </Dialog>
  )
}
