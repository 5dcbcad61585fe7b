import { ok, refuse, type Result } from '../result.ts'
import {
  fahrenheitToCelsius, G_PER_OUNCE, KG_PER_POUND, L_PER_IMPERIAL_GALLON, L_PER_US_GALLON, ML_PER_IMPERIAL_FLUID_OUNCE, ML_PER_US_FLUID_OUNCE, MM_PER_FOOT, MM_PER_INCH,
  N_PER_KILOGRAM_FORCE, N_PER_POUND_FORCE, PPM_PER_DKH,
} from './factors.ts' // prettier-ignore
import type { ReaderUnits, Unit } from './quantity.ts'
import { displayUnit } from './say.ts'
import { salinityOfGravity } from './specific-gravity.ts'

export type UnitRefusal = { code: 'empty' | 'too_long' | 'not_a_number' | 'ambiguous' | 'unknown_unit'; words: string }

/** No figure with its unit is longer; what is longer would make the patterns below walk it again and again. */
const LONGEST = 40

type ToStorage = (value: number) => number
const times =
  (factor: number): ToStorage =>
  (value) =>
    value * factor

/** Units a person may type for each storage unit, with what turns them into it. */
function accepted(unit: Unit, reader: ReaderUnits): Record<string, ToStorage> {
  const gallon = times(reader.gallon === 'imperial' ? L_PER_IMPERIAL_GALLON : L_PER_US_GALLON)
  const ounce = times(reader.gallon === 'imperial' ? ML_PER_IMPERIAL_FLUID_OUNCE : ML_PER_US_FLUID_OUNCE)
  const tables: Partial<Record<Unit, Record<string, ToStorage>>> = {
    mm: { mm: times(1), cm: times(10), m: times(1000), in: times(MM_PER_INCH), inch: times(MM_PER_INCH), inches: times(MM_PER_INCH), '"': times(MM_PER_INCH), '″': times(MM_PER_INCH), ft: times(MM_PER_FOOT), "'": times(MM_PER_FOOT), '′': times(MM_PER_FOOT) },
    m: { m: times(1), cm: times(0.01), mm: times(0.001), ft: times(MM_PER_FOOT / 1000), in: times(MM_PER_INCH / 1000) },
    L: { l: times(1), litre: times(1), litres: times(1), liter: times(1), liters: times(1), ml: times(0.001), gal: gallon, gallon, gallons: gallon, usgal: times(L_PER_US_GALLON), impgal: times(L_PER_IMPERIAL_GALLON) },
    mL: { ml: times(1), l: times(1000), floz: ounce, oz: ounce },
    kg: { kg: times(1), g: times(0.001), lb: times(KG_PER_POUND), lbs: times(KG_PER_POUND), oz: times(G_PER_OUNCE / 1000) },
    g: { g: times(1), kg: times(1000), oz: times(G_PER_OUNCE), lb: times(KG_PER_POUND * 1000) },
    K: { k: times(1), '°c': times(1), c: times(1), '°f': times(5 / 9), f: times(5 / 9) },
    degC: { '°c': times(1), c: times(1), '°f': fahrenheitToCelsius, f: fahrenheitToCelsius },
    'L/h': { 'l/h': times(1), lph: times(1), 'gal/h': gallon, gph: gallon, 'l/min': times(60) },
    W: { w: times(1), watt: times(1), watts: times(1), kw: times(1000) },
    N: { n: times(1), lbf: times(N_PER_POUND_FORCE), lb: times(N_PER_POUND_FORCE), lbofpull: times(N_PER_POUND_FORCE), kgf: times(N_PER_KILOGRAM_FORCE), kgofpull: times(N_PER_KILOGRAM_FORCE) },
    V: { v: times(1) },
    A: { a: times(1), amp: times(1), amps: times(1) },
    dKH: { dkh: times(1), '°dh': times(1), '°kh': times(1), dgh: times(1), ppm: times(1 / PPM_PER_DKH), 'mg/l': times(1 / PPM_PER_DKH) },
    lm: { lm: times(1), lumen: times(1), lumens: times(1) },
    'g/kg': { 'g/kg': times(1), ppt: times(1), psu: times(1), '‰': times(1), sg: salinityOfGravity },
    h: { h: times(1), hour: times(1), hours: times(1), min: times(1 / 60) },
    days: { day: times(1), days: times(1), week: times(7), weeks: times(7) },
    min: { min: times(1), minutes: times(1), h: times(60), hours: times(60) },
    'L/day': { laday: times(1), 'l/day': times(1), 'l/d': times(1), galaday: gallon, 'gal/day': gallon, gpd: gallon },
    percent: { '%': times(1) },
    share: { '%': (value) => value / 100 },
  } // prettier-ignore
  return tables[unit] ?? {}
}

/** "20 1/4", "20.25", "20,25", "1/2": the leading figure and what follows it. */
function splitFigure(text: string): { figure: string; rest: string } | null {
  const match = /^([-\u2212+]?(?:\d+\s+\d+\/\d+|\d+\/\d+|[\d.,]+))\s*(.*)$/.exec(text)
  return match ? { figure: match[1] ?? '', rest: match[2] ?? '' } : null
}

/** Signs that a keyboard or another program puts in place of plain ones: "20½", a blank between thousands. */
const PLAIN_SIGNS: ReadonlyArray<readonly [RegExp, string]> = [
  [/\s*½/g, ' 1/2'],
  [/\s*¼/g, ' 1/4'],
  [/\s*¾/g, ' 3/4'],
  [/(?<=^[-\u2212]?\d{1,3}(?:[ \u00a0\u2009\u202f]\d{3})*)[ \u00a0\u2009\u202f](?=\d{3}(?![\d/]))/g, ''],
]
const inPlainSigns = (text: string): string => PLAIN_SIGNS.reduce((plain, [sign, by]) => plain.replace(sign, by), text).trim()

function readFigure(figure: string, reader: ReaderUnits): number | 'ambiguous' | null {
  const text = figure.replace('\u2212', '-')
  const fraction = /^(-?)(?:(\d+)\s+)?(\d+)\/(\d+)$/.exec(text)
  if (fraction) {
    const value = Number(fraction[2] ?? 0) + Number(fraction[3]) / Number(fraction[4])
    return Number.isFinite(value) ? (fraction[1] === '-' ? -value : value) : null
  }
  // "1,234": a thousand or one and a bit? Only a reader who writes decimal commas has told us; anyone else is asked.
  if (/^-?\d{1,3},\d{3}$/.test(text) && reader.decimal !== ',') return 'ambiguous'
  if (/^-?\d{1,3}\.\d{3}$/.test(text) && reader.decimal === ',') return 'ambiguous'
  if (/^-?\d{1,3}(,\d{3})+(\.\d+)$/.test(text)) return Number(text.replace(/,/g, ''))
  if (/^-?\d{1,3}(\.\d{3})+(,\d+)$/.test(text)) return Number(text.replace(/\./g, '').replace(',', '.'))
  return /^[-+]?\d*[.,]?\d+$|^[-+]?\d+[.,]$/.test(text) ? Number(text.replace(',', '.')) : null
}

/**
 * Reads a figure as people type it; a bare number is in the reader's own unit.
 *
 * Units: the storage unit asked for. Errors: empty, no number, a number that can be read two ways, a unit that does not measure this.
 *
 * @example parseQuantity('20 1/4 in', 'mm', METRIC) // 514.35
 * @example parseQuantity('78 °F', 'degC', METRIC) // 25.56
 */
export function parseQuantity(text: string, unit: Unit, reader: ReaderUnits): Result<number, UnitRefusal> {
  const typed = text.trim()
  if (typed === '') return refuse({ code: 'empty', words: 'Nothing was entered.' })
  if (typed.length > LONGEST)
    return refuse({ code: 'too_long', words: `That is too long for a figure. Write it like ${example(unit, reader)}.` })
  const split = splitFigure(inPlainSigns(typed))
  const value = split ? readFigure(split.figure, reader) : null
  if (split === null || value === null) {
    const bare = behindWord(typed, unit, reader)
    if (bare !== null) return refuse({ code: 'not_a_number', words: `Write the figure without a word before it: ${bare}.` })
    return refuse({ code: 'not_a_number', words: `"${typed}" is not a number. Write it like ${example(unit, reader)}.` })
  }
  if (value === 'ambiguous')
    return refuse({
      code: 'ambiguous',
      words: `"${split.figure}" can be read two ways. Write ${split.figure.replace(/[.,]/, '')} or ${split.figure.replace(/[.,]/, reader.decimal)}.`,
    })
  const table = accepted(unit, reader)
  const name = split.rest.toLowerCase().replace(/\s+/g, '').replace(/\.$/, '')
  const feet = /^(?:ft|'|′)(\d+(?:\.\d+)?)(?:in|"|″)?$/.exec(name)
  if (unit === 'mm' && feet) return ok(value * MM_PER_FOOT + Number(feet[1]) * MM_PER_INCH)
  const own = displayUnit(unit, reader).toLowerCase().replace(/\s+/g, '')
  const convert = table[name === '' ? own : name]
  if (convert) return ok(convert(value))
  if (name === '' || name === own) return ok(value)
  return refuse({ code: 'unknown_unit', words: `"${split.rest}" is not a unit for this. Write it like ${example(unit, reader)}.` })
}

/** Of "about 36 inches" what would be accepted: "36 inches"; null where that is no figure either. */
function behindWord(typed: string, unit: Unit, reader: ReaderUnits): string | null {
  const bare = /^(?:[a-z]+\.?|[~≈])\s*(\d.*)$/i.exec(typed)?.[1]
  return bare !== undefined && parseQuantity(bare, unit, reader).ok ? bare : null
}

function example(unit: Unit, reader: ReaderUnits): string {
  const name = displayUnit(unit, reader)
  return `20 ${name}`.trim()
}
