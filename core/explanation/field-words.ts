import type { Field } from '../fields.ts'
import { fine, phrase, stated, type Phrase } from '../units/quantity.ts'

/** Decimals that a stated figure keeps: makers print no more than two. */
const DIGITS = 2

/** What a tenth of an inch is too coarse for. */
const THIN: ReadonlySet<string> = new Set(['glassMm', 'bottomMm', 'hoseMm'])
/** What a sump holds is told to a tenth, as its room is: one is the others' difference. */
const TENTHS: ReadonlySet<string> = new Set(['totalVolumeL', 'operatingVolumeL'])

/**
 * The value that a field holds, in words or with its unit. Undefined where it holds none.
 *
 * @example fieldValue(field, 100) // 100 W of a power
 */
export function fieldValue(field: Field, value: unknown): Phrase | undefined {
  if (field.type === 'flag') return typeof value === 'boolean' ? phrase`${value ? 'yes' : 'no'}` : undefined
  if (field.type === 'choice') {
    const option = field.options.find((known) => known.value === value)
    return option && phrase`${option.label.toLowerCase()}`
  }
  if (typeof value !== 'number') return undefined
  const digits = Number.isInteger(value) ? 0 : field.unit === 'mm' ? 1 : DIGITS
  if (THIN.has(field.key)) return phrase`${fine(stated(value, 'mm', digits))}`
  if (TENTHS.has(field.key)) return phrase`${fine(stated(value, 'L', 1))}`
  return field.unit ? phrase`${stated(value, field.unit, digits)}` : phrase`${stated(value, 'count', digits)} ${field.unitText}`
}

/** Several values in a row. @example listed([phrase`a`, phrase`b`]) // 'a, b' */
export const listed = (phrases: readonly Phrase[]): Phrase => phrases.flatMap((each, index) => (index === 0 ? each : [', ', ...each]))
