import { fieldFault } from '../field-fault.ts'
import type { Field } from '../fields.ts'
import { ok, refuse, type Result } from '../result.ts'

export type CellRefusal = { code: 'not_a_value'; words: string }
const fault = (words: string): { ok: false; refusal: CellRefusal } => refuse({ code: 'not_a_value', words })

const YES = ['yes', 'y', 'true', '1']
const NO = ['no', 'n', 'false', '0']

/** @example readFlag('Yes', 'Adjustable') // true */
export function readFlag(cell: string, label: string): Result<boolean, CellRefusal> {
  const text = cell.toLowerCase()
  if (YES.includes(text)) return ok(true)
  return NO.includes(text) ? ok(false) : fault(`${label} is "${short(cell)}". Write yes or no, or leave it empty.`)
}

/**
 * A spec value from a cell that is not empty, in the unit of storage that the heading names.
 *
 * A number has digits and one decimal sign, point or comma. "1,234" can be read two ways and is refused. No unit: it is in the heading.
 */
export function readSpecCell(field: Field, cell: string, subject: string): Result<number | string | boolean, CellRefusal> {
  if (field.type === 'flag') return readFlag(cell, field.label)
  // The name or id of a row of the place's own is looked up by the check of the rows.
  if (field.type === 'choice' && field.open === true) return ok(readChoice(field.options, cell) ?? cell)
  const value = field.type === 'choice' ? readChoice(field.options, cell) : readNumber(cell)
  if (value === 'ambiguous')
    return fault(`${field.label} is "${short(cell)}", which can be read two ways. Write it without the thousands sign.`)
  if (value === null)
    return fault(`${field.label} is "${short(cell)}". ${field.type === 'choice' ? choices(field.options) : wantsNumber(field.unitText)}`)
  const words = fieldFault(field, value, subject)
  return words === null ? ok(value) : fault(words)
}

function readNumber(cell: string): number | 'ambiguous' | null {
  if (/^-?[1-9]\d{0,2},\d{3}$/.test(cell)) return 'ambiguous'
  return /^-?\d+([.,]\d+)?$/.test(cell) ? Number(cell.replace(',', '.')) : null
}

type Options = ReadonlyArray<{ value: string; label: string }>
const plain = (text: string): string => text.toLowerCase().replace(/[\s_-]+/g, ' ')
const readChoice = (options: Options, cell: string): string | null =>
  options.find(({ value, label }) => plain(value) === plain(cell) || plain(label) === plain(cell))?.value ?? null

const choices = (options: Options): string => `It is one of: ${options.map(({ value }) => value).join(', ')}.`
const wantsNumber = (unit: string): string => `Write a plain number${unit ? ` of ${unit}` : ''}, without the unit.`

/** A cell as it is quoted in a message: long ones are cut, so that a report stays readable. */
export const short = (cell: string): string => (cell.length > 40 ? `${cell.slice(0, 39)}…` : cell)
