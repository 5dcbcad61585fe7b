import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'

interface Props {
  /** Null: closed. */
  name: string | null
  busy: boolean
  error: unknown
  onClose: () => void
  onTakeBack: () => void
}

export function TakeBackDialog({ name, busy, error, onClose, onTakeBack }: Props): ReactElement {
  return (
    <Dialog
      open={name !== null}
      title={`Take back the invitation of ${name ?? ''}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Leave it open</Button>
          <Button look="main" busy={busy} onClick={onTakeBack}>
            Take it back
          </Button>
        </>
      }
    >
      <p>The link that was handed out leads nowhere then. You can invite the person anew, with another link.</p>
      <ErrorNotice error={error} />
    </Dialog>
  )
}
