import * as z from 'zod'
import { FIRST_DAY, isCivilDate, LAST_DAY } from './dates.ts'
import { isOption, rangeWords, shapeWords } from './field-fault.ts'
import type { Field } from './fields.ts'
import { MOST_MINOR } from './money.ts'
import { isPlainText, isVisible, withoutTurns } from './plain-text.ts'

/** The building blocks of every validator: strict objects and plain words. Meaning (a clock, a database) is checked by rules, not here. */

/** An object that refuses keys it does not know, so that a misspelt field is an error and not a loss. */
export function strict<Shape extends z.core.$ZodShape>(what: string, shape: Shape) {
  return z.strictObject(shape, {
    error: (issue) => {
      if (issue.code === 'unrecognized_keys')
        return `${what} has no field ${issue.keys.map((key) => `"${key}"`).join(', ')}. Check the spelling, or leave it out.`
      return issue.input === undefined ? `${what} is missing.` : `${what} is an object with named fields.`
    },
  })
}

/** Text that a database and a page can hold: trimmed, well formed, no control characters but the line break and the tab, no signs that turn the direction. Where it must be filled in, something of it is seen. */
export function text(label: string, least: number, most: number) {
  return z
    .string({ error: (issue) => (issue.input === undefined ? `${label} is missing.` : `${label} is text.`) })
    .overwrite(withoutTurns)
    .trim()
    .min(least, {
      error: (issue) => (issue.input === '' ? `${label} is empty. Fill it in.` : `${label} is too short: at least ${least} characters.`),
    })
    .max(most, {
      error: (issue) =>
        `${label} has ${typeof issue.input === 'string' ? issue.input.length : 'too many'} characters. At most ${most} fit.`,
    })
    .refine(isPlainText, { error: `${label} has a control character or half of a character. Type it again without it.` })
    .refine((value) => least === 0 || value === '' || isVisible(value), { error: `${label} has no visible character. Fill it in.` })
}

/** Text that may be left out: absent and null are both null. An empty text is refused, so that there is one way to say nothing. */
export const optionalText = (label: string, most: number) => text(label, 1, most).nullable().default(null)

/** A row's id in the database. */
export const rowId = (label: string) =>
  z
    .guid({ error: (issue) => (issue.input === undefined ? `${label} is missing.` : `${label} is not an id of ours, like 0198c0de-….`) })
    .toLowerCase()

/** An id that the browser makes for a part of a document: unique inside it. */
export const partId = (label: string) =>
  z.string({ error: `${label} is text.` }).regex(/^[A-Za-z0-9_-]{1,64}$/, { error: `${label} has 1 to 64 letters, digits, "-" or "_".` })

/** A day that exists on the calendar. */
export const civilDate = (label: string) =>
  z
    .string({ error: (issue) => (issue.input === undefined ? `${label} is missing.` : `${label} is a day, written like 2026-10-20.`) })
    .refine((value) => isCivilDate(value) && value >= FIRST_DAY && value <= LAST_DAY, {
      error: (issue) =>
        `${label} is "${String(issue.input).slice(0, 20)}", which is not a day between 1990 and 2200. Write it like 2026-10-20.`,
    })
    .meta({ format: 'date' })

/** An amount of money in minor units: whole, from `least` to the largest amount that sums can hold. */
export const minor = (label: string, least: 0 | 1) =>
  z
    .int({
      error: (issue) =>
        issue.input === undefined ? `${label} is missing.` : `${label} is a whole number of minor units: 15900 for 159.00.`,
    })
    .min(least, { error: (issue) => `${label} is ${String(issue.input)}. ${least === 1 ? 'A price is above 0.' : 'It is not below 0.'}` })
    .max(MOST_MINOR, {
      error: (issue) => `${label} is ${String(issue.input)} minor units, more than ${MOST_MINOR}. Check for a slipped decimal.`,
    })

export const count = (label: string, least: number, most: number) =>
  z
    .int({ error: (issue) => (issue.input === undefined ? `${label} is missing.` : `${label} is a whole number.`) })
    .min(least, { error: (issue) => `${label} is ${String(issue.input)}. At least ${least}.` })
    .max(most, { error: (issue) => `${label} is ${String(issue.input)}. At most ${most}.` })

export const yesNo = (label: string) =>
  z.boolean({ error: (issue) => (issue.input === undefined ? `${label} is missing.` : `${label} is true or false.`) })

export const oneOf = <const Values extends readonly [string, ...string[]]>(label: string, values: Values) =>
  z.enum(values, {
    error: (issue) => `${label} ${issue.input === undefined ? 'is missing. It' : ''} is one of: ${values.join(', ')}.`.replace('  ', ' '),
  })

export function list<Item extends z.ZodType>(label: string, item: Item, least: number, most: number) {
  return z
    .array(item, { error: (issue) => (issue.input === undefined ? `${label} is missing.` : `${label} is a list.`) })
    .min(least, { error: `${label}: at least ${least}.` })
    .max(most, { error: (issue) => `${label}: ${Array.isArray(issue.input) ? issue.input.length : 'too many'} of them. At most ${most}.` })
}

/** Objects for a list of fields, the limits and words of the table kept. */
export function fieldShape(fields: readonly Field[], subject: string): Record<string, z.ZodType> {
  return Object.fromEntries(
    fields.map((field) => {
      const schema = fieldSchema(field, subject).meta({ description: describe(field) })
      return [field.key, field.required ? schema : schema.optional()]
    }),
  )
}

function fieldSchema(field: Field, subject: string): z.ZodType {
  const shape = { error: (issue: { input?: unknown }) => shapeWords(field, issue.input) }
  if (field.type === 'flag') return z.boolean(shape)
  if (field.type === 'choice' && field.open === true) return z.string(shape).refine((value) => isOption(field, value), shape)
  if (field.type === 'choice') return z.enum(field.options.map((option) => option.value) as [string, ...string[]], shape)
  const range = { error: (issue: { input?: unknown }) => rangeWords(field, Number(issue.input), subject) }
  const base = field.type === 'whole' ? z.int(shape) : z.number(shape)
  return base.min(field.min, range).max(field.max, range)
}

const describe = (field: Field): string =>
  [field.label, 'unitText' in field && field.unitText ? `(${field.unitText})` : '', field.help].filter(Boolean).join(' ')
