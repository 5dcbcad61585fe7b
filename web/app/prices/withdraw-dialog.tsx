import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'

interface Props {
  /** "$159.00 at Saltcote"; null: closed. */
  what: string | null
  busy: boolean
  error: unknown
  onClose: () => void
  onWithdraw: () => void
}

export function WithdrawDialog({ what, busy, error, onClose, onWithdraw }: Props): ReactElement {
  return (
    <Dialog
      open={what !== null}
      title={`Withdraw ${what ?? ''}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Leave it</Button>
          <Button look="main" busy={busy} onClick={onWithdraw}>
            Withdraw it
          </Button>
        </>
      }
    >
      <p>
        It stays in the record, marked as withdrawn, and counts for nothing. This cannot be undone; a right price is posted as a new
        sighting.
      </p>
      <ErrorNotice error={error} />
    </Dialog>
  )
}
