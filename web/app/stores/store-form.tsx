import { useState, type ReactElement, type ReactNode } from 'react'
import { currencySign } from '../../../core/money.ts'
import { faultsOf } from '../client/problem.ts'
import type { StoreBody } from '../client/stores.ts'
import { Button } from '../parts/button.tsx'
import { ChoiceField, TickField } from '../parts/choice-fields.tsx'
import { NoteField, TextField } from '../parts/field.tsx'
import { moneyKeyboard } from '../parts/figure.ts'
import { ErrorNotice } from '../parts/states.tsx'
import { useCurrency, useReader } from '../session/session.ts'
import { readStoreDraft, type StoreDraft } from './store-draft.ts'

interface Props {
  draft: StoreDraft
  onChange: (draft: StoreDraft) => void
  error: unknown
  busy: boolean
  saveWords: string
  conflict?: ReactNode
  onSave: (body: StoreBody) => void
}
interface PartProps {
  draft: StoreDraft
  faults: Record<string, string>
  set: (part: Partial<StoreDraft>) => void
}

const SHOWN = [
  'name',
  'town',
  'country',
  'subdivision',
  'timeZone',
  'taxBasisPoints',
  'delivery.feeMinor',
  'delivery.oversizeMinor',
  'delivery.freeOverMinor',
  'returnDays',
  'note',
]

export function StoreForm({ draft, onChange, error, busy, saveWords, conflict, onSave }: Props): ReactElement {
  const currency = useCurrency()
  const reader = useReader()
  const [tried, setTried] = useState(false)
  const reading = readStoreDraft(draft, currency, reader)
  const faults: Record<string, string> = { ...faultsOf(error), ...(tried ? reading.faults : {}) }
  const set = (part: Partial<StoreDraft>): void => onChange({ ...draft, ...part })
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        if (Object.keys(reading.faults).length === 0 && !busy) onSave(reading.body)
      }}
    >
      <StorePlace draft={draft} faults={faults} set={set} />
      <StoreCharges draft={draft} faults={faults} set={set} />
      <NoteField label="Note" value={draft.note} onChange={(note) => set({ note })} fault={faults['note']} required={false} />
      {conflict ?? <ErrorNotice error={error} shown={SHOWN} />}
      <p className="acts">
        <Button look="main" type="submit" busy={busy}>
          {saveWords}
        </Button>
      </p>
    </form>
  )
}

function StorePlace({ draft, faults, set }: PartProps): ReactElement {
  return (
    <>
      <div className="form-row">
        <TextField label="Name" value={draft.name} onChange={(name) => set({ name })} fault={faults['name']} required />
        <ChoiceField
          label="Kind"
          value={draft.kind}
          onChange={(kind) => set({ kind })}
          options={[
            { value: 'local', label: 'Local' },
            { value: 'online', label: 'Online' },
          ]}
        />
        <TextField label="Town" value={draft.town} onChange={(town) => set({ town })} fault={faults['town']} required={false} />
      </div>
      <div className="form-row">
        <TextField
          label="Country"
          value={draft.country}
          onChange={(country) => set({ country })}
          fault={faults['country']}
          help="Two letters: US, DE."
          maxLength={2}
          required
        />
        <TextField
          label="State or province"
          value={draft.subdivision}
          onChange={(subdivision) => set({ subdivision })}
          fault={faults['subdivision']}
          required={false}
        />
        <TextField
          label="Time zone"
          value={draft.timeZone}
          onChange={(timeZone) => set({ timeZone })}
          fault={faults['timeZone']}
          help="A sale’s last day is a day there: America/New_York."
          required
        />
      </div>
    </>
  )
}

function StoreCharges({ draft, faults, set }: PartProps): ReactElement {
  const currency = useCurrency()
  const money = { before: currencySign(currency).trim(), inputMode: moneyKeyboard(currency) }
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
        <TickField
          label="Prices include the tax"
          checked={draft.pricesIncludeTax}
          onChange={(pricesIncludeTax) => set({ pricesIncludeTax })}
        />
        <TickField label="Delivery is taxed" checked={draft.deliveryTaxed} onChange={(deliveryTaxed) => set({ deliveryTaxed })} />
      </div>
      <ChoiceField
        label="Delivery"
        value={draft.deliveryKind}
        onChange={(deliveryKind) => set({ deliveryKind })}
        options={[
          { value: 'pickup_only', label: 'Pickup only' },
          { value: 'flat', label: 'Flat fee' },
          { value: 'free_over', label: 'Free over' },
        ]}
      />
      {draft.deliveryKind !== 'pickup_only' && (
        <div className="form-row">
          <TextField
            {...money}
            label="Delivery fee"
            value={draft.fee}
            onChange={(fee) => set({ fee })}
            fault={faults['delivery.feeMinor']}
            required
          />
          {draft.deliveryKind === 'free_over' && (
            <TextField
              {...money}
              label="Free from"
              value={draft.freeOver}
              onChange={(freeOver) => set({ freeOver })}
              fault={faults['delivery.freeOverMinor']}
              help="Goods in one order."
              required
            />
          )}
          <TextField
            {...money}
            label="Oversize surcharge"
            value={draft.oversize}
            onChange={(oversize) => set({ oversize })}
            fault={faults['delivery.oversizeMinor']}
            help="On top, once an order with oversize goods."
            required
          />
        </div>
      )}
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
      </div>
    </>
  )
}
