import type { ReactElement } from 'react'
import { currencySign } from '../../../core/money.ts'
import { ChoiceField, TickField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { moneyKeyboard } from '../parts/figure.ts'
import { useCurrency } from '../session/session.ts'
import { StoreRates } from './store-rates.tsx'
import type { StoreDraft } from './store-draft.ts'

export interface StorePartProps {
  draft: StoreDraft
  faults: Record<string, string>
  set: (part: Partial<StoreDraft>) => void
}

const RULES = [
  { value: 'pickup_only', label: 'Pickup only' },
  { value: 'flat', label: 'Flat fee' },
  { value: 'free_over', label: 'Free over' },
] as const

/** What is charged on top of the price on the tag, and how long goods may come back. */
export function StoreCharges({ draft, faults, set }: StorePartProps): ReactElement {
  return (
    <>
      <div className="sechead">
        <h2>Tax and delivery</h2>
      </div>
      <div className="form-row">
        <TextField
          label="Tax"
          value={draft.taxPercent}
          onChange={(taxPercent) => set({ taxPercent })}
          unit="%"
          inputMode="decimal"
          fault={faults['taxBasisPoints']}
          required
        />
        {draft.rates.length > 0 && (
          <TextField
            label="Its name on the receipt"
            value={draft.taxName}
            maxLength={40}
            onChange={(taxName) => set({ taxName })}
            fault={faults['taxName']}
            required={false}
          />
        )}
        <TickField
          label="Prices include the tax"
          checked={draft.pricesIncludeTax}
          onChange={(pricesIncludeTax) => set({ pricesIncludeTax })}
        />
        <TickField label="Delivery is taxed" checked={draft.deliveryTaxed} onChange={(deliveryTaxed) => set({ deliveryTaxed })} />
      </div>
      <StoreRates draft={draft} faults={faults} set={set} />
      <ChoiceField label="Delivery" value={draft.deliveryKind} onChange={(deliveryKind) => set({ deliveryKind })} options={RULES} />
      {draft.deliveryKind !== 'pickup_only' && <DeliveryFees draft={draft} faults={faults} set={set} />}
      <div className="form-row">
        <TextField
          label="Return days"
          value={draft.returnDays}
          onChange={(returnDays) => set({ returnDays })}
          unit="days"
          inputMode="numeric"
          fault={faults['returnDays']}
          help="The leak test must fall inside them."
          required={false}
        />
        <TextField
          label="Warranty"
          value={draft.warrantyMonths}
          onChange={(warrantyMonths) => set({ warrantyMonths })}
          unit="months"
          inputMode="numeric"
          fault={faults['warrantyMonths']}
          help="Where the maker gives none of its own."
          required={false}
        />
      </div>
    </>
  )
}

function DeliveryFees({ draft, faults, set }: StorePartProps): ReactElement {
  const home = useCurrency()
  const typed = draft.currency.trim().toUpperCase()
  const currency = /^[A-Z]{3}$/.test(typed) ? typed : home
  const money = { before: currencySign(currency).trim(), inputMode: moneyKeyboard(currency), required: true }
  return (
    <div className="form-row">
      <TextField {...money} label="Delivery fee" value={draft.fee} onChange={(fee) => set({ fee })} fault={faults['delivery.feeMinor']} />
      {draft.deliveryKind === 'free_over' && (
        <TextField
          {...money}
          label="Free from"
          value={draft.freeOver}
          onChange={(freeOver) => set({ freeOver })}
          fault={faults['delivery.freeOverMinor']}
          help="Goods in one order."
        />
      )}
      <TextField
        {...money}
        required={false}
        label="Oversize surcharge"
        value={draft.oversize}
        onChange={(oversize) => set({ oversize })}
        fault={faults['delivery.oversizeMinor']}
        help="On top, once an order with oversize goods. Left open: none."
      />
    </div>
  )
}
