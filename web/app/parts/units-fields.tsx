import type { ReactElement } from 'react'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { inSystem, measuredIn, type MeasuredIn } from '../../../core/units/reader.ts'
import { ChoiceField, type Option } from './choice-fields.tsx'

export const SYSTEM_WORDS: Record<ReaderUnits['system'], string> = { us: 'in, gal, °F', metric: 'cm, L, °C' }
export const SYSTEMS = [
  { value: 'us', label: SYSTEM_WORDS.us },
  { value: 'metric', label: SYSTEM_WORDS.metric },
] as const
const GALLONS = [
  { value: 'us', label: 'US gallon' },
  { value: 'imperial', label: 'Imperial' },
] as const
const DECIMALS = [
  { value: '.', label: 'Point, 1.5' },
  { value: ',', label: 'Comma, 1,5' },
] as const

type Thing = keyof MeasuredIn
type Choices = { [Key in Thing]: { label: string; options: ReadonlyArray<Option<MeasuredIn[Key]>> } }
const THINGS: Choices = {
  length: { label: 'Length', options: [{ value: 'in', label: 'in' }, { value: 'cm', label: 'cm' }] },
  volume: { label: 'Volume', options: [{ value: 'gal', label: 'gal' }, { value: 'L', label: 'L' }] },
  mass: { label: 'Weight', options: [{ value: 'lb', label: 'lb' }, { value: 'kg', label: 'kg' }] },
  temperature: { label: 'Temperature', options: [{ value: 'F', label: '°F' }, { value: 'C', label: '°C' }] },
  hardness: { label: 'Hardness', options: [{ value: 'dKH', label: 'dKH' }, { value: 'ppm', label: 'ppm' }] },
  salinity: { label: 'Salinity', options: [{ value: 'g/kg', label: 'g/kg' }, { value: 'sg', label: 'Gravity' }] },
} // prettier-ignore

interface Props {
  units: ReaderUnits
  faults?: Record<string, string>
  onChange: (units: ReaderUnits) => void
}

/** How someone reads and types figures: a system, which gallon, which decimal sign, and folded whatever departs from the system. */
export function UnitsFields({ units, faults = {}, onChange }: Props): ReactElement {
  const departs = (Object.keys(THINGS) as Thing[]).some((thing) => units[thing] !== undefined)
  return (
    <div className="form units-fields">
      <div className="form-row">
        <ChoiceField
          label="Units"
          value={units.system}
          onChange={(system) => onChange(inSystem(units, system))}
          fault={faults['units.system']}
          options={SYSTEMS}
        />
        <ChoiceField
          label="A typed “gal” is"
          value={units.gallon}
          onChange={(gallon) => onChange({ ...units, gallon })}
          fault={faults['units.gallon']}
          options={GALLONS}
        />
        <ChoiceField
          label="Decimal sign"
          value={units.decimal}
          onChange={(decimal) => onChange({ ...units, decimal })}
          fault={faults['units.decimal']}
          options={DECIMALS}
        />
      </div>
      <details open={departs} className="one-by-one">
        <summary>One by one</summary>
        <div className="form-row">
          {(Object.keys(THINGS) as Thing[]).map((thing) => (
            <ThingField key={thing} thing={thing} units={units} onChange={onChange} />
          ))}
        </div>
      </details>
    </div>
  )
}

/** What the system itself has is kept as absent, so that it follows the system. */
function ThingField({ thing, units, onChange }: Props & { thing: Thing }): ReactElement {
  const { label, options } = THINGS[thing]
  const usual = measuredIn(inSystem(units, units.system))[thing]
  return (
    <ChoiceField
      label={label}
      value={measuredIn(units)[thing]}
      options={options}
      onChange={(chosen) => onChange(withoutAbsent({ ...units, [thing]: chosen === usual ? undefined : chosen }))}
    />
  )
}

const withoutAbsent = (units: ReaderUnits): ReaderUnits =>
  Object.fromEntries(Object.entries(units).filter(([, value]) => value !== undefined)) as unknown as ReaderUnits

/**
 * Units in one line, for one who must choose between two.
 *
 * @example spellUnits({ system: 'us', gallon: 'us', decimal: '.', temperature: 'C' }) // 'in, gal, °F; US gallon; decimal point; temperature in °C'
 */
export function spellUnits(units: ReaderUnits): string {
  const departing = (Object.keys(THINGS) as Thing[]).flatMap((thing) => {
    const { label, options } = THINGS[thing]
    const chosen = (options as ReadonlyArray<Option<string>>).find((option) => option.value === units[thing])
    return chosen ? [`${label.toLowerCase()} in ${chosen.label}`] : []
  })
  const gallon = units.gallon === 'us' ? 'US gallon' : 'imperial gallon'
  return [SYSTEM_WORDS[units.system], gallon, `decimal ${units.decimal === '.' ? 'point' : 'comma'}`, ...departing].join('; ')
}
