import type { ReactElement } from 'react'
import type { InstallSettings } from '../../../core/install.ts'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { CountryField } from '../parts/country-field.tsx'
import { TextField } from '../parts/field.tsx'
import { QuantityField } from '../parts/figure-fields.tsx'
import { UnitsFields } from '../parts/units-fields.tsx'
import { inCurrency } from './in-currency.ts'
import { UnitPriceField } from './unit-price-field.tsx'

export interface SettingsPartProps {
  draft: InstallSettings
  faults: Record<string, string>
  set: (part: Partial<InstallSettings>) => void
}

const PAPERS = [
  { value: 'a4', label: 'A4' },
  { value: 'letter', label: 'US Letter' },
] as const

export function SettingsPlace({ draft, faults, set }: SettingsPartProps): ReactElement {
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
        <CountryField value={draft.country} onChange={(country) => set({ country: country.toUpperCase() })} fault={faults['country']} />
        <TextField
          label="Time zone"
          value={draft.timeZone}
          onChange={(timeZone) => set({ timeZone })}
          fault={faults['timeZone']}
          required
        />
        <TextField
          label="Currency"
          value={draft.currency}
          onChange={(typed) => set(inCurrency(draft, typed.toUpperCase()))}
          fault={faults['currency']}
          help="Three letters: USD, EUR. Fixed once a price, a fee or a quote is stored."
          maxLength={3}
          required
        />
      </div>
    </>
  )
}

export function SettingsUnits({ draft, faults, set }: SettingsPartProps): ReactElement {
  return (
    <>
      <div className="sechead">
        <h2>Units and paper</h2>
        <p className="quiet">For whoever chose none of their own, and for paper.</p>
      </div>
      <UnitsFields units={draft.units} faults={faults} onChange={(units) => set({ units })} />
      <div className="lone">
        <ChoiceField label="Paper" value={draft.paper} onChange={(paper) => set({ paper })} fault={faults['paper']} options={PAPERS} />
      </div>
    </>
  )
}

type PowerKey = 'energyPriceMinor' | 'circuitVoltageV' | 'circuitCurrentA'
const NAMES: Record<PowerKey, string> = {
  energyPriceMinor: 'Price of a kilowatt hour',
  circuitVoltageV: 'Circuit voltage',
  circuitCurrentA: 'Circuit current',
}

/** Figures that every quote's running costs and circuit check start from; an unreadable one stops the saving. */
export function SettingsPower({
  draft,
  faults,
  set,
  onFault,
}: SettingsPartProps & { onFault: (field: PowerKey, fault: string | null) => void }): ReactElement {
  const change = (key: PowerKey) => (value: number | null, fault: string | null) => {
    onFault(key, fault ?? (value === null ? `${NAMES[key]} is empty. Fill it in.` : null))
    if (value !== null) set({ [key]: value })
  }
  return (
    <>
      <div className="sechead">
        <h2>Electricity</h2>
        <p className="quiet">For running costs and the check of the circuit.</p>
      </div>
      <div className="form-row">
        <UnitPriceField
          label="Price of a kilowatt hour"
          currency={draft.currency}
          decimal={draft.units.decimal}
          value={draft.energyPriceMinor}
          help="As on the bill, with its decimals."
          fault={faults['energyPriceMinor']}
          onChange={change('energyPriceMinor')}
        />
        <QuantityField
          label="Circuit voltage"
          unit="V"
          min={90}
          max={260}
          value={draft.circuitVoltageV}
          fault={faults['circuitVoltageV']}
          onChange={change('circuitVoltageV')}
        />
        <QuantityField
          label="Circuit current"
          unit="A"
          min={1}
          max={63}
          value={draft.circuitCurrentA}
          fault={faults['circuitCurrentA']}
          onChange={change('circuitCurrentA')}
        />
      </div>
      <p className="help">
        The breaker’s rating, as printed on it. The check is no approval: the local electrical code and a licensed electrician come first.
      </p>
    </>
  )
}
