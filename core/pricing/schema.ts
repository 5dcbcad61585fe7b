import * as z from 'zod'
import { currencyCode } from '../catalog/schema.ts'
import { daysBetween } from '../dates.ts'
import { civilDate, count, list, minor, oneOf, optionalText, rowId, strict, text, yesNo } from '../schema.ts'
import { isFineRate, type CurrencyRate } from './currency-rate.ts'
import { listSaleFault } from './list-sale.ts'
import type { StockItem } from './price-list.ts'
import { ABOVE_ITS_TAG, isAboveItsTag } from './printed-regular.ts'
import type { SaleTime } from './sale-time.ts'
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
  if ((sighting.printedRegularMinor ?? 0) > 0 && isAboveItsTag(sighting))
    context.addIssue({ code: 'custom', path: ['printedRegularMinor'], message: ABOVE_ITS_TAG })
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

/** A rate of exchange as the manager enters it: above 0, dated, with its source. */
export const CurrencyRateInput = strict('Rate of exchange', {
  currency: currencyCode,
  rate: z
    .number({ error: 'Rate is a number: how much one unit of the currency is worth in the install’s.' })
    .refine((rate) => rate > 0, { error: (issue) => `Rate is ${String(issue.input)}. It is above 0.`, abort: true })
    .max(1_000_000, { error: 'Rate is at most 1000000. Was it turned the wrong way round?' })
    .refine(isFineRate, { error: 'Rate has at most 8 decimals.' }),
  seenOn: civilDate('Day of the rate'),
  source: text('Source', 1, 120),
}) satisfies z.ZodType<CurrencyRate>

const listPrice = strict('Price', {
  validFrom: civilDate('Valid from'),
  priceMinor: minor('Price', 1),
  saleMinor: minor('Sale price', 1).nullable().default(null),
  saleUntil: civilDate('Last day of the sale').nullable().default(null),
}).check(({ value: { validFrom, priceMinor, saleMinor, saleUntil }, issues }) => {
  const fault = listSaleFault({ validFrom, priceMinor, saleMinor, saleUntil })
  if (fault !== null) issues.push({ code: 'custom', input: fault.field, path: [fault.field], message: fault.words })
})
const listPrices = list('Prices', listPrice, 0, 200).refine(
  (prices) => new Set(prices.map(({ validFrom }) => validFrom)).size === prices.length,
  {
    error: 'Two prices begin on the same day. Leave one of them.',
  },
)
/** What the store's own list says of a product. */
export const StockItemInput = strict('Price list entry', {
  stockNumber: text('Stock number', 1, 40).nullable().default(null),
  stockCount: count('Stock', 0, 1_000_000).nullable().default(null),
  prices: listPrices,
}) satisfies z.ZodType<Omit<StockItem, 'productId'>>
export type StockItemInput = z.output<typeof StockItemInput>

/** A holiday sale begins at most two months before or after its day. */
const MOST_OFFSET_DAYS = 62
const saleTimeRule = z.discriminatedUnion(
  'kind',
  [
    strict('Rule', { kind: z.literal('rule'), rule: text('Rule', 1, 300), from: civilDate('First day of the rule') }),
    strict('Holiday', {
      kind: z.literal('holiday'),
      holiday: text('Holiday', 1, 120),
      offsetDays: count('Days after the holiday', -MOST_OFFSET_DAYS, MOST_OFFSET_DAYS),
    }),
    strict('Days', { kind: z.literal('dates'), firstDays: list('First days', civilDate('First day'), 1, 200) }),
  ],
  { error: 'Say when it begins: kind is one of rule, holiday, dates.' },
)
/** When sales are known to happen. Whether the calendar can follow it is told where there is one. */
export const SaleTimeInput = strict('Sale time', {
  name: text('Name of a sale time', 1, 80),
  when: saleTimeRule,
  lengthDays: count('Length in days', 1, 62),
  storeIds: list('Stores', rowId('Store'), 0, 500),
  note: optionalText('Note', 500),
}) satisfies z.ZodType<Omit<SaleTime, 'id' | 'version'>>
export type SaleTimeInput = z.output<typeof SaleTimeInput>

/** A build has sixty lines at most, and a packet of the smallest thing a hundred pieces. */
const outlookLine = strict('Line', {
  productId: rowId('Product'),
  quantity: count('Quantity', 1, 999),
  storeId: rowId('Store').nullable().default(null),
})
/** What somebody wants to know of a purchase: what it will come to by a day. */
export const OutlookBody = strict('Request', {
  lines: list('Lines', outlookLine, 1, 60),
  /** Stores the customer will use; none: every store. */
  storeIds: list('Stores', rowId('Store'), 0, 500).default([]),
  until: civilDate('By when'),
  /** For all of the lines together; 0: waiting costs nothing, and only the date ends it. */
  weekWaitMinor: minor('What a week’s wait is worth', 0).default(0),
  withTax: yesNo('With tax').default(false),
})
