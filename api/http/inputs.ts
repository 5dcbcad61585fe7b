import * as z from 'zod'
import { rowId, strict } from '../../core/schema.ts'

/** Path parameters and queries arrive as text; these read them. */
export const ById = strict('Path', { id: rowId('Id') })

const whole = (label: string, least: number, most: number) => {
  const words = `${label} is a whole number from ${least} to ${most}.`
  return z
    .string({ error: words })
    .regex(/^\d{1,9}$/, { error: words })
    .transform(Number)
    .pipe(z.int().min(least, { error: words }).max(most, { error: words }))
}

/** Page size and start; `most` bounds what one answer costs. */
export const paging = (usual: number, most: number) => ({
  limit: whole('Limit', 1, most).default(usual),
  offset: whole('Offset', 0, 1_000_000).default(0),
})

export const searchText = z
  .string({ error: 'Search text stands once.' })
  .trim()
  .max(200, { error: 'Search text has at most 200 characters.' })
  .refine((text) => text.isWellFormed() && !text.includes('\u0000'), { error: 'Search text has a control character in it.' })
  .optional()

export const yesNoText = (label: string) =>
  z.enum(['true', 'false'], { error: `${label} is true or false.` }).transform((text) => text === 'true')

/** Opaque text of a link; a wrong one is simply not found. */
export const ByToken = strict('Path', { token: z.string().max(200, { error: 'A link is shorter than that.' }) })
