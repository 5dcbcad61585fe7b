import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import type { Install } from '../../../core/install.ts'
import { updateInstall } from '../client/install.ts'
import { faultsOf, problemOf } from '../client/problem.ts'
import type { Versioned } from '../client/request.ts'
import { Button } from '../parts/button.tsx'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { MergedTold, StaleTold, type Clash } from '../parts/conflict-told.tsx'
import { TextField } from '../parts/field.tsx'
import { MoneyField, QuantityField } from '../parts/figure-fields.tsx'
import { mergeTyped } from '../parts/merge.ts'
import { ErrorNotice } from '../parts/states.tsx'
import { sessionQuery } from '../session/session.ts'

const LABELS: Record<keyof Install, string> = {
  name: 'Name', mode: 'Mode', currency: 'Currency', country: 'Country', timeZone: 'Time zone', units: 'Units', contact: 'Contact', paper: 'Paper', energyPriceMinor: 'Price of a kilowatt hour',
  circuitVoltageV: 'Circuit voltage', circuitCurrentA: 'Circuit current',
} // prettier-ignore

type Read = Versioned<Install>
type Faults = Record<string, string>
interface PartProps {
  draft: Install
  faults: Faults
  set: (part: Partial<Install>) => void
}

export function SettingsForm({ read, reload }: { read: Read; reload: () => Promise<Read | undefined> }): ReactElement {
  const queries = useQueryClient()
  const [based, setBased] = useState(read)
  const [draft, setDraft] = useState(read.value)
  const [typed, setTyped] = useState<Faults>({})
  const [clashes, setClashes] = useState<Clash[] | null>(null)
  const save = useMutation({
    mutationFn: () => updateInstall(draft, based.etag),
    onSuccess: async () => {
      setClashes(null)
      const newest = await reload()
      if (newest) setBased(newest)
      await queries.invalidateQueries({ queryKey: sessionQuery.queryKey })
    },
  })
  const compare = useMutation({
    mutationFn: reload,
    onSuccess: (newest) => {
      if (!newest) return
      const { merged, clashes: both } = mergeTyped(based.value, draft, newest.value)
      const spell = (value: unknown): string => (typeof value === 'object' ? JSON.stringify(value) : String(value))
      setClashes(both.map((key) => ({ label: LABELS[key], mine: spell(draft[key]), theirs: spell(newest.value[key]) })))
      setBased(newest)
      setDraft(merged)
      save.reset()
    },
  })
  const set = (part: Partial<Install>): void => {
    if (save.isSuccess) save.reset()
    setDraft({ ...draft, ...part })
  }
  const bad = Object.values(typed).filter((fault) => fault !== '').length
  const stale = save.error !== null && problemOf(save.error).status === 412
  const faults = faultsOf(save.error)
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        if (bad === 0 && !save.isPending) save.mutate()
      }}
    >
      <SettingsPlace draft={draft} faults={faults} set={set} />
      <SettingsUnits draft={draft} faults={faults} set={set} />
      <SettingsPower draft={draft} faults={faults} set={set} onFault={(field, fault) => setTyped({ ...typed, [field]: fault ?? '' })} />
      {stale ? (
        <StaleTold busy={compare.isPending} onCompare={() => compare.mutate()} />
      ) : clashes ? (
        <MergedTold clashes={clashes} />
      ) : (
        <ErrorNotice error={save.error} shown={[...Object.keys(LABELS), 'units.system', 'units.gallon', 'units.decimal']} />
      )}
      <p className="acts">
        <Button look="main" type="submit" busy={save.isPending} off={bad > 0}>
          Save the settings
        </Button>
        <span role="status">{save.isSuccess ? 'Saved.' : ''}</span>
        {bad > 0 && <span className="reason">A figure above needs another look.</span>}
      </p>
    </form>
  )
}

function SettingsPlace({ draft, faults, set }: PartProps): ReactElement {
  return (
    <>
      <TextField label="Name of the club or store" value={draft.name} onChange={(name) => set({ name })} fault={faults['name']} required />
      <TextField
        label="Where a reader should ask"
        value={draft.contact}
        onChange={(contact) => set({ contact })}
        fault={faults['contact']}
        help="Printed on quotes and setups: a name and a telephone number."
        required={false}
      />
      <div className="form-row">
        <TextField
          label="Country"
          value={draft.country}
          onChange={(country) => set({ country: country.toUpperCase() })}
          fault={faults['country']}
          maxLength={2}
          required
        />
        <TextField
          label="Time zone"
          value={draft.timeZone}
          onChange={(timeZone) => set({ timeZone })}
          fault={faults['timeZone']}
          required
        />
        <div className="field">
          <span className="label">Currency</span>
          <p className="fixed">{draft.currency}</p>
          <p className="help">Fixed: every amount here is in it.</p>
        </div>
      </div>
    </>
  )
}

function SettingsUnits({ draft, faults, set }: PartProps): ReactElement {
  const { units } = draft
  return (
    <>
      <div className="sechead">
        <h2>Units and paper</h2>
      </div>
      <div className="form-row">
        <ChoiceField
          label="Units"
          value={units.system}
          onChange={(system) => set({ units: { ...units, system } })}
          fault={faults['units.system']}
          options={[
            { value: 'us', label: 'in, gal, °F' },
            { value: 'metric', label: 'cm, L, °C' },
          ]}
        />
        <ChoiceField
          label="A typed “gal” is"
          value={units.gallon}
          onChange={(gallon) => set({ units: { ...units, gallon } })}
          fault={faults['units.gallon']}
          options={[
            { value: 'us', label: 'US gallon' },
            { value: 'imperial', label: 'Imperial' },
          ]}
        />
      </div>
      <div className="form-row">
        <ChoiceField
          label="Decimal sign"
          value={units.decimal}
          onChange={(decimal) => set({ units: { ...units, decimal } })}
          fault={faults['units.decimal']}
          options={[
            { value: '.', label: 'Point, 1.5' },
            { value: ',', label: 'Comma, 1,5' },
          ]}
        />
        <ChoiceField
          label="Paper"
          value={draft.paper}
          onChange={(paper) => set({ paper })}
          fault={faults['paper']}
          options={[
            { value: 'a4', label: 'A4' },
            { value: 'letter', label: 'US Letter' },
          ]}
        />
      </div>
    </>
  )
}

function SettingsPower({
  draft,
  faults,
  set,
  onFault,
}: PartProps & { onFault: (field: string, fault: string | null) => void }): ReactElement {
  const missing = 'This is missing. Running costs and the circuit check need it.'
  return (
    <>
      <div className="sechead">
        <h2>Electricity</h2>
        <p className="quiet">For running costs and the check of the circuit.</p>
      </div>
      <div className="form-row">
        <MoneyField
          label="Price of a kilowatt hour"
          value={draft.energyPriceMinor}
          fault={faults['energyPriceMinor']}
          onChange={(energyPriceMinor, fault) => {
            onFault('energyPriceMinor', fault ?? (energyPriceMinor === null ? missing : null))
            if (energyPriceMinor !== null) set({ energyPriceMinor })
          }}
        />
        <QuantityField
          label="Circuit voltage"
          unit="V"
          min={90}
          max={260}
          value={draft.circuitVoltageV}
          fault={faults['circuitVoltageV']}
          onChange={(circuitVoltageV, fault) => {
            onFault('circuitVoltageV', fault ?? (circuitVoltageV === null ? missing : null))
            if (circuitVoltageV !== null) set({ circuitVoltageV })
          }}
        />
        <QuantityField
          label="Circuit current"
          unit="A"
          min={1}
          max={63}
          value={draft.circuitCurrentA}
          fault={faults['circuitCurrentA']}
          onChange={(circuitCurrentA, fault) => {
            onFault('circuitCurrentA', fault ?? (circuitCurrentA === null ? missing : null))
            if (circuitCurrentA !== null) set({ circuitCurrentA })
          }}
        />
      </div>
      <p className="help">
        The breaker’s rating, as printed on it. The check is no approval: the local electrical code and a licensed electrician come first.
      </p>
    </>
  )
}
