import {
  celsiusToFahrenheit, KG_PER_POUND, L_PER_IMPERIAL_GALLON, L_PER_US_GALLON, ML_PER_IMPERIAL_FLUID_OUNCE, ML_PER_US_FLUID_OUNCE, MM_PER_FOOT, MM_PER_INCH,
  N_PER_KILOGRAM_FORCE, N_PER_POUND_FORCE, PPM_PER_DKH,
} from './factors.ts' // prettier-ignore
import type { Phrase, Quantity, ReaderUnits, Unit } from './quantity.ts'
import { measuredIn } from './reader.ts'
import { specificGravity } from './specific-gravity.ts'

export const METRIC: ReaderUnits = { system: 'metric', gallon: 'us', decimal: '.' }
export const US: ReaderUnits = { system: 'us', gallon: 'us', decimal: '.' }

interface Shown {
  value: number
  unit: string
  digits: number
}

const PLAIN_NAMES: Partial<Record<Unit, string>> = {
  m2: 'm²', 'W/K': 'W/K', per_hour: 'times an hour', h: 'h', min: 'min', days: 'days', 'mg/L': 'mg/L', 'umol/m2/s': 'µmol/m²s', 'mol/m2/day': 'mol/m² a day',
  'kWh/year': 'kWh a year', 'L/day': 'L a day', percent: '%', count: '', share: '', dKH: 'dKH', 'g/kg': 'g/kg', lm: 'lm', W: 'W', V: 'V', A: 'A', K: '°C', N: 'N', g: 'g', mL: 'mL', 'kg/m2': 'kg/m²',
} // prettier-ignore

const litresPerGallon = (reader: ReaderUnits): number => (reader.gallon === 'imperial' ? L_PER_IMPERIAL_GALLON : L_PER_US_GALLON)

/** A length is told to a tenth of an inch or of a centimetre, whole where it is one; small ones in millimetres. */
function shownLength(mm: number, reader: ReaderUnits): Shown {
  if (measuredIn(reader).length === 'in') {
    const inches = mm / MM_PER_INCH
    return { value: inches, unit: 'in', digits: Math.abs(inches - Math.round(inches)) < 0.05 ? 0 : 1 }
  }
  if (Math.abs(mm) < 100) return { value: mm, unit: 'mm', digits: 0 }
  const cm = mm / 10
  return { value: cm, unit: 'cm', digits: Math.abs(cm - Math.round(cm)) < 0.05 ? 0 : 1 }
}

/** A hose to a tenth of a foot, a mountain to a whole one. */
const shownFeet = (feet: number): Shown => ({ value: feet, unit: 'ft', digits: Math.abs(feet) < 100 ? 1 : 0 })

function shownVolume(litres: number, reader: ReaderUnits): Shown {
  if (measuredIn(reader).volume === 'L') return { value: litres, unit: 'L', digits: Math.abs(litres) < 10 ? 1 : 0 }
  const gallons = litres / litresPerGallon(reader)
  return { value: gallons, unit: 'gal', digits: Math.abs(gallons) < 20 ? 1 : 0 }
}

/** Square feet where lengths are in inches, pounds where weights are. */
const M2_PER_FT2 = (MM_PER_FOOT / 1000) ** 2
function shownLoad(kgPerM2: number, digits: number, reader: ReaderUnits): Shown {
  const { length, mass } = measuredIn(reader)
  const [over, area] = length === 'in' ? [M2_PER_FT2, 'ft²'] : [1, 'm²']
  return { value: (kgPerM2 * over) / (mass === 'lb' ? KG_PER_POUND : 1), unit: `${mass}/${area}`, digits }
}

/** A temperature to a tenth of a degree is told in whole degrees Fahrenheit where it is one, as it was typed. */
function shownFahrenheit(celsius: number, digits: number): Shown {
  const value = celsiusToFahrenheit(celsius)
  return { value, unit: '°F', digits: digits > 0 && Math.abs(value - Math.round(value)) >= 0.05 ? 1 : 0 }
}

/** Of a whole number of kelvins the tenth is told where it is not a whole number of degrees Fahrenheit. @example shownStep(3.6, 0).digits // 1 */
const shownStep = (value: number, digits: number): Shown => ({
  value,
  unit: '°F',
  digits: digits <= 0 && Math.abs(value - Math.round(value)) >= 0.05 ? 1 : Math.max(digits, 0),
})

/** The units that a reader may tell otherwise than they are stored; null where this one tells them as stored. */
function shownOtherwise({ value, unit, digits }: Quantity, reader: ReaderUnits): Shown | null {
  const { length, volume, mass, temperature, hardness, salinity } = measuredIn(reader)
  switch (unit) {
    case 'm':
      return length === 'in' ? shownFeet((value * 1000) / (MM_PER_INCH * 12)) : null
    case 'kg':
      return mass === 'lb' ? { value: value / KG_PER_POUND, unit: 'lb', digits: value < 5 ? 1 : 0 } : null
    case 'degC':
      return temperature === 'F' ? shownFahrenheit(value, digits) : null
    case 'K':
      return temperature === 'F' ? shownStep(value * 1.8, digits) : null
    case 'L/h':
      return volume === 'gal' ? { value: value / litresPerGallon(reader), unit: 'gal/h', digits: 0 } : null
    case 'L/day':
      return volume === 'gal' ? { value: value / litresPerGallon(reader), unit: 'gal a day', digits: 2 } : null
    case 'm2':
      return length === 'in' ? { value: value / M2_PER_FT2, unit: 'ft²', digits } : null
    case 'N':
      return mass === 'lb' ? { value: value / N_PER_POUND_FORCE, unit: 'lb of pull', digits } : null
    case 'kg/m2':
      return shownLoad(value, digits, reader)
    case 'dKH':
      return hardness === 'ppm' ? { value: value * PPM_PER_DKH, unit: 'ppm', digits: 0 } : null
    case 'g/kg':
      return salinity === 'sg' ? { value: specificGravity(value), unit: 'SG', digits: 4 } : null
    default:
      return null
  }
}

/** Units whose digits are cut for reading: one who reckons gets them as declared. */
const CUT: ReadonlySet<Unit> = new Set(['kg', 'L', 'L/h'])

function shown(quantity: Quantity, reader: ReaderUnits): Shown {
  const told = shownForReading(quantity, reader)
  return quantity.fine && CUT.has(quantity.unit) ? { ...told, digits: quantity.digits } : told
}

function shownForReading(quantity: Quantity, reader: ReaderUnits): Shown {
  if (quantity.unit === 'mm') return shownLength(quantity.value, reader)
  if (quantity.unit === 'L') return shownVolume(quantity.value, reader)
  const otherwise = shownOtherwise(quantity, reader)
  if (otherwise) return otherwise
  const unit = quantity.unit === 'degC' ? '°C' : (PLAIN_NAMES[quantity.unit] ?? quantity.unit)
  return { value: quantity.value, unit, digits: quantity.digits }
}

/** A number as the reader writes it, thousands grouped, minus U+2212. @example sayNumber(1234.5, 1, US) // '1,234.5' */
export function sayNumber(value: number, digits: number, reader: ReaderUnits): string {
  const fixed = Math.abs(value).toFixed(Math.max(0, digits))
  const [whole = '0', fraction] = fixed.split('.')
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, reader.decimal === ',' ? '\u00a0' : ',')
  const text = fraction === undefined ? grouped : `${grouped}${reader.decimal}${fraction}`
  return value < 0 && Number(fixed) !== 0 ? `\u2212${text}` : text
}

/** The unit a reader sees for a storage unit, for the end of a field. @example displayUnit('mm', US) // 'in' */
export function displayUnit(unit: Unit, reader: ReaderUnits): string {
  if (unit === 'mm') return measuredIn(reader).length
  if (unit === 'g/kg') return measuredIn(reader).salinity === 'sg' ? 'SG' : unit
  return shown({ value: 100, unit, digits: 0 }, reader).unit
}

/**
 * A figure in the reader's units.
 *
 * @example sayQuantity(quantity(32, 'degC', 1), US) // '89.6 °F'
 * @example sayQuantity(quantity(914.4, 'mm', 0), METRIC) // '91.4 cm'
 */
export function sayQuantity(quantity: Quantity, reader: ReaderUnits): string {
  if (quantity.least && quantity.unit === 'mm') return sayAtLeastLength(quantity.value, reader)
  if (quantity.fine && quantity.unit === 'mm') return sayThickness(quantity.value, reader)
  if (quantity.unit === 'mL' && measuredIn(reader).volume === 'gal') return sayBottles(quantity, reader)
  if (quantity.unit === 'N' && measuredIn(reader).mass === 'kg') return sayPull(quantity, reader)
  const { value, unit, digits } = shown(quantity, reader)
  const number = sayNumber(value, digits, reader)
  return unit === '' ? number : `${number} ${unit}`
}

/** A whole sentence in the reader's units. @example sayPhrase(['It weighs ', quantity(100, 'kg', 0)], US) // 'It weighs 220 lb' */
export const sayPhrase = (phrase: Phrase, reader: ReaderUnits): string =>
  phrase.map((part) => (typeof part === 'string' ? part : sayQuantity(part, reader))).join('')

/** A length alone. @example sayLength(508, US) // '20 in' */
export const sayLength = (mm: number, reader: ReaderUnits): string => sayQuantity({ value: mm, unit: 'mm', digits: 0 }, reader)

/** Lengths are stored in whole millimetres: 4 in, kept as 102 mm, must not come out as 4.5 in. */
const STORED_TO_MM = 0.5

/**
 * A least length, for someone who measures: rounded up, so that keeping to what is told keeps to the rule. To half an inch, or to a whole
 * centimetre (a whole millimetre under 10 cm); half a millimetre over a step is the storage's rounding and is let go.
 *
 * Range: 0 mm and above. Source: own.
 *
 * @example sayAtLeastLength(100, US) // '4 in'
 * @example sayAtLeastLength(1697, METRIC) // '170 cm'
 */
export function sayAtLeastLength(mm: number, reader: ReaderUnits): string {
  const least = Math.max(0, mm - STORED_TO_MM)
  if (measuredIn(reader).length === 'in') {
    const halves = Math.ceil((2 * least) / MM_PER_INCH)
    return `${sayNumber(halves / 2, halves % 2, reader)} in`
  }
  return mm < 100 ? `${sayNumber(Math.ceil(least), 0, reader)} mm` : `${sayNumber(Math.ceil(least / 10), 0, reader)} cm`
}

/** Glass is sold in millimetres everywhere; a tenth of an inch is 2.5 of them. @example sayThickness(6, US) // '0.24 in (6 mm)' */
function sayThickness(mm: number, reader: ReaderUnits): string {
  const metric = `${sayNumber(mm, Number.isInteger(mm) ? 0 : 1, reader)} mm`
  return measuredIn(reader).length === 'in' ? `${sayNumber(mm / MM_PER_INCH, 2, reader)} in (${metric})` : metric
}

/** A pull is felt as a weight: what stands behind it is in newtons. @example sayPull(quantity(635, 'N', 0), METRIC) // '65 kg of pull (635 N)' */
function sayPull({ value, digits }: Quantity, reader: ReaderUnits): string {
  const kg = value / N_PER_KILOGRAM_FORCE
  return `${sayNumber(kg, Math.abs(kg) < 10 ? 1 : 0, reader)} kg of pull (${sayNumber(value, digits, reader)} N)`
}

/** Bottles are not read finer. */
const LEAST_OUNCES = 0.1

/**
 * A dose is drawn up in millilitres everywhere, and bottles have both: "8.5 fl oz (250 mL)". Of a few drops the millilitres say all.
 *
 * @example sayBottles(quantity(24, 'mL', 0), US) // '0.81 fl oz (24 mL)'
 */
function sayBottles({ value, digits }: Quantity, reader: ReaderUnits): string {
  const ounces = value / (reader.gallon === 'imperial' ? ML_PER_IMPERIAL_FLUID_OUNCE : ML_PER_US_FLUID_OUNCE)
  const millilitres = `${sayNumber(value, digits, reader)} mL`
  if (Math.abs(ounces) < LEAST_OUNCES) return millilitres
  return `${sayNumber(ounces, ounces < 1 ? 2 : ounces < 20 ? 1 : 0, reader)} fl oz (${millilitres})`
}

/** "90 × 45 × 45 cm": sizes of one box in one unit, said once. */
export function saySize(sidesMm: readonly number[], reader: ReaderUnits): string {
  const unit = measuredIn(reader).length
  const per = unit === 'in' ? MM_PER_INCH : 10
  const numbers = sidesMm.map((mm) => sayNumber(mm / per, Math.abs(mm / per - Math.round(mm / per)) < 0.05 ? 0 : 1, reader))
  return `${numbers.join(' × ')} ${unit}`
}
