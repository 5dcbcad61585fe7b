import { useState, type ReactElement, type ReactNode } from 'react'
import { faultsOf } from '../client/problem.ts'
import type { StoreBody } from '../client/stores.ts'
import { Button } from '../parts/button.tsx'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { CountryField } from '../parts/country-field.tsx'
import { NoteField, TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useCurrency, useReader } from '../session/session.ts'
import { StoreMoney } from './store-money.tsx'
import { StoreCharges, type StorePartProps } from './store-charges.tsx'
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
  'warrantyMonths',
  'currency',
  'own',
  'taxName',
  'deliveryRate',
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
      <StoreMoney draft={draft} faults={faults} set={set} />
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

function StorePlace({ draft, faults, set }: StorePartProps): ReactElement {
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
        <CountryField value={draft.country} onChange={(country) => set({ country })} fault={faults['country']} />
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
