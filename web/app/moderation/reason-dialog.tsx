import { useState, type ReactElement } from 'react'
import type { SightingRow } from '../../../core/pricing/record.ts'
import { faultsOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useStoreMoney } from '../stores/store-currency.ts'

interface Props {
  /** Null: closed. */
  sighting: SightingRow | null
  busy: boolean
  error: unknown
  onClose: () => void
  onWithdraw: (reason: string) => void
}
const REASON_MOST = 500

/** Withdrawing somebody else's sighting, with the reason for it. */
export function ReasonDialog({ sighting, busy, error, onClose, onWithdraw }: Props): ReactElement {
  const [reason, setReason] = useState('')
  const say = useStoreMoney()
  const empty = reason.trim() === ''
  return (
    <Dialog
      open={sighting !== null}
      title={sighting ? `Withdraw ${say(sighting.priceMinor, sighting.storeId)} at ${sighting.storeName}?` : ''}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Leave it</Button>
          <Button look="main" busy={busy} off={empty} onClick={() => onWithdraw(reason.trim())}>
            Withdraw it
          </Button>
        </>
      }
    >
      <p>
        {sighting?.productName}, reported by {sighting?.reporterName}. It stays in the record, marked as withdrawn, and counts for nothing.
        This cannot be undone.
      </p>
      <TextField
        label="Reason"
        value={reason}
        onChange={setReason}
        maxLength={REASON_MOST}
        fault={faultsOf(error)['reason']}
        help="Needed before it can be withdrawn; it is kept with the sighting."
        required
        focusFirst
      />
      <ErrorNotice error={error} shown={['reason']} conflict="Not withdrawn" />
    </Dialog>
  )
}
