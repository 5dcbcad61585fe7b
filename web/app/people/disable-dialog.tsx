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
  onDisable: () => void
}

export function DisableDialog({ name, busy, error, onClose, onDisable }: Props): ReactElement {
  return (
    <Dialog
      open={name !== null}
      title={`Disable ${name ?? ''}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Leave as it is</Button>
          <Button look="main" busy={busy} onClick={onDisable}>
            Disable the account
          </Button>
        </>
      }
    >
      <p>They are signed out everywhere and cannot sign in. What they reported stays; you can let them in again.</p>
      <ErrorNotice error={error} />
    </Dialog>
  )
}
