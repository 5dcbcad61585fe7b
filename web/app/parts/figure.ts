import { currencyExponent, parseMoney, sayMoney } from '../../../core/money.ts'
import { parseDose } from '../../../core/units/dose.ts'
import { parseQuantity } from '../../../core/units/parse.ts'
import type { ReaderUnits, Unit } from '../../../core/units/quantity.ts'
import { measuredIn } from '../../../core/units/reader.ts'
import { displayUnit } from '../../../core/units/say.ts'
import { specificGravity } from '../../../core/units/specific-gravity.ts'

/** What a typed figure came to: its value, nothing entered, or a sentence about what is wrong. */
export type FigureReading = { value: number | null; fault: null } | { value: null; fault: string }

export interface FigureLimits {
  label: string
  /** Absent where the core has no unit for it: then `unitText` stands at the end of the line and nothing is converted. */
  unit?: Unit | undefined
  unitText?: string | undefined
  min?: number | undefined
  max?: number | undefined
  whole?: boolean | undefined
}

/** Glass and mats are told in millimetres by everyone; longer things in centimetres. The largest such field is 60 mm of hose. */
const SMALL_MM = 60

/** The unit at the end of the line, which a bare number is in. @example fieldUnit({ label: 'Length', unit: 'mm', max: 4000 }, US) // 'in' */
export function fieldUnit({ unit, unitText, max }: FigureLimits, reader: ReaderUnits): string {
  if (unit === undefined) return unitText ?? ''
  if (unit === 'mm' && measuredIn(reader).length === 'cm' && max !== undefined && max <= SMALL_MM) return 'mm'
  return displayUnit(unit, reader)
}

/** Storage value of a text in the field's unit, without limits. */
function storageValue(text: string, limits: FigureLimits, reader: ReaderUnits): ReturnType<typeof parseQuantity> {
  if (limits.unitText === 'mL/L') return parseDose(text, reader)
  if (limits.unit === undefined) return parseQuantity(text.replace(limits.unitText ?? '', ''), 'count', reader)
  const bare = /^[-\u2212+]?[\d\s.,/]+$/.test(text.trim())
  return parseQuantity(bare ? `${text.trim()} ${fieldUnit(limits, reader)}`.trim() : text, limits.unit, reader)
}

/** A stored figure in its field's unit, all its digits kept. */
function inFieldUnit(value: number, limits: FigureLimits, reader: ReaderUnits): number {
  if (limits.unit === 'g/kg' && fieldUnit(limits, reader) === 'SG') return specificGravity(value)
  const zero = storageValue('0', limits, reader)
  const one = storageValue('1', limits, reader)
  return zero.ok && one.ok ? (value - zero.value) / (one.value - zero.value) : value
}

/** Four figures, at most three decimals: finer than anyone measures a tank. Specific gravity has nothing but its decimals. */
function decimalsOf(shown: number, { unit }: FigureLimits): number {
  if (unit === 'g/kg') return 4
  return Math.abs(shown) >= 100 ? 1 : Math.abs(shown) >= 10 ? 2 : 3
}

const asTyped = (shown: number, decimals: number, reader: ReaderUnits): string =>
  String(Number(shown.toFixed(decimals))).replace('.', reader.decimal)

/**
 * Spells a stored figure for its field, in the field's unit without the unit.
 *
 * @example spellFigure(914.4, { label: 'Length', unit: 'mm' }, US) // '36'
 */
export function spellFigure(value: number | null | undefined, limits: FigureLimits, reader: ReaderUnits): string {
  if (value === null || value === undefined) return ''
  const shown = inFieldUnit(value, limits, reader)
  return asTyped(shown, decimalsOf(shown, limits), reader)
}

/** A limit, rounded to its inner side and no finer than one remembers it: whoever types the limit that was told is within it. */
function spellLimit(value: number, limits: FigureLimits, reader: ReaderUnits, inwards: (value: number) => number): string {
  const shown = inFieldUnit(value, limits, reader)
  const finest = decimalsOf(shown, limits)
  const decimals = limits.unit === 'g/kg' || Math.abs(shown) < 1 ? finest : Math.abs(shown) >= 100 ? 0 : 1
  // A hair of room, since a limit that is whole in this unit comes through its factor with a tail.
  const hair = inwards === Math.ceil ? -1e-6 : 1e-6
  return asTyped(inwards(shown * 10 ** decimals + hair) / 10 ** decimals, decimals, reader)
}

/**
 * As `readFigure`, but a text that is the stored value's own spelling is that value to its last digit: spelling and reading would round it.
 *
 * @example readKept('157.5', 4000, { label: 'Length', unit: 'mm', max: 4000 }, US) // { value: 4000, fault: null }
 */
export function readKept(text: string, stored: number | null, limits: FigureLimits, reader: ReaderUnits): FigureReading {
  const kept = stored !== null && text === spellFigure(stored, limits, reader)
  return kept ? { value: stored, fault: null } : readFigure(text, limits, reader)
}

/**
 * Reads what was typed, with or without a unit, and holds it against the limits.
 *
 * @example readFigure('20 in', { label: 'Length', unit: 'mm', min: 100, max: 4000 }, METRIC) // { value: 508, fault: null }
 */
export function readFigure(text: string, limits: FigureLimits, reader: ReaderUnits): FigureReading {
  if (text.trim() === '') return { value: null, fault: null }
  const read = storageValue(text, limits, reader)
  if (!read.ok) return { value: null, fault: read.refusal.words }
  const value = Math.round(read.value * 1e6) / 1e6
  const fault = limitFault(value, limits, reader)
  return fault === null ? { value, fault: null } : { value: null, fault }
}

function limitFault(value: number, limits: FigureLimits, reader: ReaderUnits): string | null {
  const { label, min, max, whole } = limits
  const unit = fieldUnit(limits, reader)
  const other = unit === '' || (value < 0 && (min ?? 0) >= 0) ? '' : ' Was it another unit? Write it behind the number.'
  const say = (figure: string): string => `${figure} ${unit}`.trim()
  const told = (): string => say(spellFigure(value, limits, reader))
  if (whole && !Number.isInteger(value)) return `${label} is a whole number, without decimals.`
  if (min !== undefined && value < min)
    return `${label} is ${told()}. The least is ${say(spellLimit(min, limits, reader, Math.ceil))}.${other}`
  if (max !== undefined && value > max)
    return `${label} is ${told()}. The most is ${say(spellLimit(max, limits, reader, Math.floor))}.${other}`
  return null
}

/** Spells an amount for its field, without the sign, with the reader's decimal sign. @example spellMoney(15900, 'USD', ',') // '159,00' */
export const spellMoney = (minor: number | null | undefined, currency: string, decimal: ReaderUnits['decimal'] = '.'): string =>
  minor === null || minor === undefined ? '' : sayMoney(minor, currency, { symbol: false }).replaceAll(',', '').replace('.', decimal)

/** Reads an amount; `least` in minor units, 0 unless told otherwise. @example readMoney('159', 'USD', 'Price', 1) // { value: 15900, fault: null } */
export function readMoney(text: string, currency: string, label: string, least = 0, decimal: ReaderUnits['decimal'] = '.'): FigureReading {
  if (text.trim() === '') return { value: null, fault: null }
  if (/^[^\d]*[-\u2212][^\d]*\d/.test(text))
    return { value: null, fault: `${label} is below 0. The least is ${sayMoney(least, currency)}.` }
  const read = parseMoney(text, currency, decimal)
  if (!read.ok)
    return { value: null, fault: read.refusal.code === 'too_large' ? `${label} is too much. ${read.refusal.words}` : read.refusal.words }
  if (read.value < least)
    return { value: null, fault: `${label} is ${sayMoney(read.value, currency)}. The least is ${sayMoney(least, currency)}.` }
  return { value: read.value, fault: null }
}

/** What the phone's keyboard shows for amounts of a currency. */
export const moneyKeyboard = (currency: string): 'decimal' | 'numeric' => (currencyExponent(currency) === 0 ? 'numeric' : 'decimal')
