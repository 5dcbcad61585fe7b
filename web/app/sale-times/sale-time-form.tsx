import { useMutation } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import type { Store } from '../../../core/catalog/store.ts'
import type { CivilDate } from '../../../core/dates.ts'
import type { SaleTime } from '../../../core/pricing/sale-time.ts'
import { faultsOf } from '../client/problem.ts'
import { createSaleTime, updateSaleTime } from '../client/sale-times.ts'
import { Button } from '../parts/button.tsx'
import { TickField } from '../parts/choice-fields.tsx'
import { NoteField, TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { BeginsFields } from './begins-fields.tsx'
import { NextRuns } from './next-runs.tsx'
import { draftFaults } from './draft-faults.ts'
import { bodyOf, draftOf, emptyDraft, type SaleTimeDraft } from './sale-time-draft.ts'

interface Props {
  saleTime: SaleTime | null
  asOf: CivilDate
  stores: readonly Store[]
  onDone: () => Promise<void>
  onLeave: () => void
}

const SHOWN = ['name', 'lengthDays', 'when.holiday', 'when.offsetDays', 'when.rule', 'when.from', 'when.firstDays', 'storeIds', 'note']

/** One sale time: what it is called, when it begins, how long it lasts, where. */
export function SaleTimeForm({ saleTime, asOf, stores, onDone, onLeave }: Props): ReactElement {
  const [draft, setDraft] = useState<SaleTimeDraft>(() => (saleTime ? draftOf(saleTime, asOf) : emptyDraft(asOf)))
  const body = bodyOf(draft)
  const save = useMutation({
    mutationFn: () => (saleTime ? updateSaleTime(saleTime, body) : createSaleTime(body)),
    onSuccess: onDone,
  })
  const [tried, setTried] = useState(false)
  const own = draftFaults(draft)
  const isSound = Object.keys(own).length === 0
  const faults = { ...faultsOf(save.error), ...(tried && own) }
  const nowhere = !draft.everywhere && draft.storeIds.length === 0
  const set = (part: Partial<SaleTimeDraft>): void => setDraft({ ...draft, ...part })
  const shown = stores.filter((store) => !store.archived || draft.storeIds.includes(store.id))
  const place = shown.find(({ id }) => draft.everywhere || draft.storeIds.includes(id)) ?? shown[0]
  return (
    <form
      className="form sale-time-form"
      noValidate
      aria-label={saleTime ? `Change ${saleTime.name}` : 'A new sale time'}
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        if (!save.isPending && !nowhere && isSound) save.mutate()
      }}
    >
      <TextField
        label="What it is called"
        value={draft.name}
        maxLength={80}
        fault={faults['name']}
        focusFirst
        onChange={(name) => set({ name })}
      />
      <BeginsFields draft={draft} set={set} faults={faults} place={place} />
      <TextField
        label="Length"
        unit="days"
        inputMode="numeric"
        value={draft.lengthDays}
        fault={faults['lengthDays']}
        onChange={(lengthDays) => set({ lengthDays })}
      />
      {Object.keys(own).every((field) => field === 'name') && <NextRuns body={body} asOf={asOf} />}
      <TickField label="At every store" checked={draft.everywhere} onChange={(everywhere) => set({ everywhere })} />
      {!draft.everywhere && (
        <StoreTicks stores={shown} chosen={draft.storeIds} fault={tried && nowhere} onChange={(storeIds) => set({ storeIds })} />
      )}
      <NoteField
        label="Note"
        required={false}
        rows={2}
        maxLength={500}
        value={draft.note}
        fault={faults['note']}
        onChange={(note) => set({ note })}
      />
      <ErrorNotice error={save.error} shown={SHOWN} />
      <p className="acts">
        <Button onClick={onLeave}>Leave it</Button>
        <Button look="main" type="submit" busy={save.isPending}>
          {saleTime ? 'Save the sale time' : 'Add the sale time'}
        </Button>
      </p>
    </form>
  )
}

interface TicksProps {
  stores: readonly Store[]
  chosen: readonly string[]
  /** Saving was tried with none. */
  fault: boolean
  onChange: (ids: string[]) => void
}

function StoreTicks({ stores, chosen, fault, onChange }: TicksProps): ReactElement {
  return (
    <fieldset className="field ticks">
      <legend className="label">Its stores</legend>
      {stores.map(({ id, name }) => (
        <TickField
          key={id}
          label={name}
          checked={chosen.includes(id)}
          onChange={(on) => onChange(on ? [...chosen, id] : chosen.filter((one) => one !== id))}
        />
      ))}
      {fault && <p className="fault">Tick at least one store, or tick “At every store”.</p>}
    </fieldset>
  )
}
