import * as z from 'zod'
import type { OutlookView } from '../../core/pricing/outlook-view.ts'
import { amount, day, id } from './catalog.ts'
import { answer } from './registry.ts'

const money = amount.nullable()
/** So many in so many pay at most this. */
export const LikelyAnswer = z.strictObject({ many: z.int(), of: z.int(), paidMinor: amount })
const line = z.strictObject({
  productId: id,
  quantity: z.int(),
  advice: z.enum(['buy_now', 'no_hurry', 'buy_when_convenient', 'wait']),
  title: z.string(),
  words: z.string(),
  reason: z.string(),
  noHurryUntil: day.nullable(),
  onSale: z.boolean(),
  saleLastDay: day.nullable(),
  payTodayMinor: money,
  expectedPaidMinor: money,
  paid10Minor: money,
  paid90Minor: money,
  likely: LikelyAnswer.nullable(),
  likelyTagMinor: money,
  chanceOfSale: z.number().min(0).max(1),
  priceToBuyAtMinor: money,
  buyAtTagMinor: money,
  tagsAgree: z.boolean(),
  nextSaleTime: z.strictObject({ name: z.string(), storeId: id, first: day, last: day }).nullable(),
  basis: z.enum(['record', 'kind', 'too_little']),
})
const total = z.strictObject({ payTodayMinor: amount, expectedPaidMinor: amount, paid10Minor: amount, paid90Minor: amount })

export const OutlookAnswer = answer(
  'Outlook',
  z.strictObject({
    asOf: day,
    until: day,
    learnedOn: day.nullable(),
    lines: z.array(line),
    total: total.nullable(),
  }) satisfies z.ZodType<OutlookView>,
)
