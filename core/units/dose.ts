import { refuse, ok, type Result } from '../result.ts'
import { parseQuantity, type UnitRefusal } from './parse.ts'
import type { ReaderUnits } from './quantity.ts'

/** A label's dose is shorter, with its words. */
const LONGEST = 60
const LIKE = 'Write it like 0.13 mL/L or 5 mL per 10 gal.'

/** "5 mL per 10 gal", "5 mL/40 L", "1 fl oz to 50 gallons": what is given, and into how much. */
const AS_ON_LABEL = /^(.*\d.*?)\s*(?:\bper\b|\bto\b|\bfor\b|\bin\b|\/)\s*(\d.*)$/i

/**
 * Reads a dose as a label prints it, or as millilitres to the litre.
 *
 * Units: mL/L out. Errors: no dose; a side without its unit, since a dose is never guessed; no water at all.
 *
 * @example parseDose('5 mL per 10 gal', US) // 0.1320860…, 5 mL in 37.854 L
 */
export function parseDose(text: string, reader: ReaderUnits): Result<number, UnitRefusal> {
  const typed = text.trim()
  if (typed.length > LONGEST) return refuse({ code: 'too_long', words: `That is too long for a dose. ${LIKE}` })
  const bare = typed.replace(/\s*ml\s*(?:\/|per)\s*(?:l|litre|liter)$/i, '')
  const [, given = '', water = ''] = AS_ON_LABEL.exec(bare) ?? []
  if (given === '') return plainDose(bare, typed, reader)
  if (!/\p{L}/u.test(given) || !/\p{L}/u.test(water))
    return refuse({ code: 'unknown_unit', words: `"${typed}" leaves a unit out. ${LIKE}` })
  const [amountMl, waterL] = [parseQuantity(given, 'mL', reader), parseQuantity(water, 'L', reader)]
  if (!amountMl.ok) return amountMl
  if (!waterL.ok) return waterL
  return waterL.value > 0
    ? ok(amountMl.value / waterL.value)
    : refuse({ code: 'not_a_number', words: `"${typed}" treats no water. ${LIKE}` })
}

function plainDose(bare: string, typed: string, reader: ReaderUnits): Result<number, UnitRefusal> {
  const read = parseQuantity(bare, 'count', reader)
  return read.ok || read.refusal.code === 'ambiguous' ? read : refuse({ code: read.refusal.code, words: `"${typed}" is no dose. ${LIKE}` })
}
