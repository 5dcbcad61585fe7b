import * as z from 'zod'
import { daysBetween } from '../dates.ts'
import { civilDate, minor, oneOf, optionalText, rowId, strict } from '../schema.ts'
import { CONDITIONS, type Sighting } from './sighting.ts'

/** A sale announced for longer than a year is a misread date. */
const LONGEST_SALE_DAYS = 366

/**
 * One sighting as a phone sends it. Shape and what the body alone can tell; "from the future", "unknown store" and "archived product"
 * need a clock and the catalog and are told by `checkSighting`.
 */
export const SightingInput = strict('Sighting', {
  id: z.uuidv7({ error: 'Id is a UUID of version 7, made once on the phone and sent again with every repeat.' }).toLowerCase(),
  productId: rowId('Product'),
  storeId: rowId('Store'),
  condition: oneOf('Condition', CONDITIONS),
  priceMinor: minor('Price', 1),
  printedRegularMinor: minor('Printed regular price', 1).nullable().default(null),
  seenOn: civilDate('Day seen'),
  lastDay: civilDate('Last day of the sale').nullable().default(null),
  evidence: oneOf('Evidence', ['none', 'tag', 'receipt', 'page']).default('none'),
  note: optionalText('Note', 500),
}).superRefine((sighting, context) => {
  if (sighting.lastDay === null) return
  const fault = (message: string) => context.addIssue({ code: 'custom', path: ['lastDay'], message })
  if (sighting.condition === 'shelf' || sighting.condition === 'used')
    return fault('A last day belongs to a sale or a clearance. Take it out, or change the condition.')
  const days = daysBetween(sighting.seenOn, sighting.lastDay)
  if (days < 0)
    return fault(`The sale's last day ${sighting.lastDay} is before the day it was seen, ${sighting.seenOn}. Check the two dates.`)
  if (days > LONGEST_SALE_DAYS)
    return fault(`The sale's last day is ${days} days after it was seen. At most ${LONGEST_SALE_DAYS}. Check the year.`)
}) satisfies z.ZodType<PostedSighting>
export type SightingInput = z.output<typeof SightingInput>

/** What the phone says of a sighting; the rest is the server's. */
export type PostedSighting = Pick<
  Sighting,
  'id' | 'productId' | 'storeId' | 'condition' | 'priceMinor' | 'printedRegularMinor' | 'seenOn' | 'lastDay' | 'evidence' | 'note'
>
