import * as z from 'zod'
import { KINDS } from '../../core/catalog/kinds.ts'
import type { CurrencyRate } from '../../core/pricing/currency-rate.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import type { ListedPrice } from '../../core/pricing/listed-price.ts'
import type { BoardRow, PriceRecord, SightingRow } from '../../core/pricing/record.ts'
import type { RolledPart } from '../../core/pricing/roll-up-by-region.ts'
import { CONDITIONS } from '../../core/pricing/sighting.ts'
import { amount, day, id, instant, ProductAnswer } from './catalog.ts'
import { answer } from './registry.ts'

const age = z.enum(['current', 'ageing'])
const sightingIds = z.array(id)

export const PriceViewAnswer = answer(
  'PriceView',
  z.strictObject({
    productId: id,
    storeId: id,
    regular: z.strictObject({ priceMinor: amount, seenOn: day, age, from: z.enum(['shelf', 'printed', 'list']), sightingIds }).optional(),
    today: z
      .strictObject({
        priceMinor: amount,
        condition: z.enum(['shelf', 'sale', 'clearance']),
        seenOn: day,
        holdsUntil: day.nullable(),
        lastDayStated: z.boolean(),
        age,
        reporters: z.int(),
        sightingIds,
      })
      .optional(),
    goneOn: day.describe('No price of today, since it was found gone: the first day').optional(),
    best: z.strictObject({ priceMinor: amount, seenOn: day, sightingId: id }).optional(),
    otherClub: z.string().optional(),
  }) satisfies z.ZodType<PriceView>,
)

export const CurrencyRateAnswer = answer(
  'CurrencyRate',
  z.strictObject({ currency: z.string(), rate: z.number(), seenOn: day, source: z.string() }) satisfies z.ZodType<CurrencyRate>,
)
export const CurrencyRatesAnswer = answer('CurrencyRates', z.strictObject({ items: z.array(CurrencyRateAnswer), oldAfterDays: z.int() }))

const stock = {
  productId: id,
  name: z.string(),
  kind: z.enum(KINDS),
  gtin: z.string().nullable(),
  stockNumber: z.string().nullable(),
  stockCount: z.int().nullable(),
  prices: z.array(z.strictObject({ validFrom: day, priceMinor: amount, saleMinor: amount.nullable(), saleUntil: day.nullable() })),
  version: z.int().min(0),
}
export const StockAnswer = answer('PriceListEntry', z.strictObject(stock))
export const StockListAnswer = answer('PriceList', z.strictObject({ items: z.array(StockAnswer), total: z.int(), today: day }))

export const SightingAnswer = answer(
  'Sighting',
  z.strictObject({
    id,
    productId: id,
    storeId: id,
    condition: z.enum(CONDITIONS),
    priceMinor: amount,
    printedRegularMinor: amount.nullable(),
    seenOn: day,
    lastDay: day.nullable(),
    evidence: z.enum(['none', 'tag', 'receipt', 'page']),
    note: z.string().nullable(),
    reporterId: id,
    receivedAt: instant,
    doubt: z
      .strictObject({
        code: z.enum(['slipped_decimal', 'far_from_record', 'too_deep', 'above_regular', 'other_product']),
        words: z.string(),
      })
      .nullable(),
    withdrawn: z.boolean(),
    confirmations: z.int(),
    disputes: z.int(),
    goneOn: day.nullable().describe('First day on which somebody found it gone').optional(),
    productName: z.string(),
    storeName: z.string(),
    reporterName: z.string(),
    own: z.boolean(),
    imported: z.boolean().describe('It came with a file: the word of a list, not of whoever imported it').optional(),
    tie: z.enum(['invited_you', 'invited_by_you']).nullable().describe('Why inviter and invitee have no vote').optional(),
    oneMore: z.string().nullable().describe('Why your word on a list does not count yet').optional(),
    mayVote: z.boolean(),
    myVote: z.enum(['confirm', 'dispute']).nullable(),
    withdrawnReason: z.string().nullable(),
    goneBy: z.array(z.string()).nullable().describe('Who found it gone, for managers').optional(),
  }) satisfies z.ZodType<SightingRow>,
)

const rolledPrice = { priceMinor: amount, storeId: id, seenOn: day, sightingIds }
const stores = z.int().describe('How many stores are behind it')

export const RolledPartAnswer = answer(
  'RolledPart',
  z.strictObject({
    part: z.enum(['all', 'region', 'rest']).describe('All stores, those of one region, or those of none where there are regions'),
    regionId: id.nullable(),
    regionName: z.string().nullable(),
    new: z
      .strictObject({
        stores: z.int().describe('Stores with a price today'),
        today: z
          .strictObject({ ...rolledPrice, condition: z.enum(['shelf', 'sale', 'clearance']), holdsUntil: day.nullable(), age })
          .describe('The lowest of today, with its store’s tax as all prices here')
          .optional(),
        regular: z
          .strictObject({ medianMinor: amount, lowestMinor: amount, highestMinor: amount, stores, sightingIds })
          .describe('Regular prices: the middle of the stores, the least and the greatest')
          .optional(),
        onSale: z.strictObject({ stores, sightingIds }).describe('Where a sale or clearance runs today').optional(),
        drift: z
          .strictObject({ change: z.number().describe('New ÷ old − 1'), since: day, stores, sightingIds })
          .describe('Middle of what shelf prices moved by in about a year')
          .optional(),
        best: z.strictObject(rolledPrice).describe('The lowest of the last 365 days').optional(),
      })
      .describe('New goods')
      .optional(),
    used: z
      .strictObject({
        stores,
        lowest: z.strictObject(rolledPrice).describe('The lowest of the last 180 days').optional(),
        best: z.strictObject(rolledPrice).describe('The lowest of the last 365 days'),
      })
      .describe('Used goods')
      .optional(),
  }) satisfies z.ZodType<RolledPart>,
)

export const ListedPriceAnswer = answer(
  'ListedPrice',
  z.strictObject({
    productId: id,
    productName: z.string(),
    kind: z.enum(KINDS),
    storeId: id,
    storeName: z.string(),
    priceMinor: amount,
    fullMinor: amount.nullable(),
    saleUntil: day.nullable(),
    validFrom: day,
    inStock: z.boolean().nullable().describe('Null where it is not counted'),
    stockCount: z.int().nullable().describe('Only for whoever reads the price list').optional(),
  }) satisfies z.ZodType<ListedPrice>,
)

export const PriceRecordAnswer = answer(
  'PriceRecord',
  z.strictObject({
    product: ProductAnswer,
    sightings: z.array(SightingAnswer),
    total: z.int(),
    views: z.array(PriceViewAnswer),
    rolledUp: z.array(RolledPartAnswer),
    listed: ListedPriceAnswer.nullable(),
    asOf: day,
  }) satisfies z.ZodType<PriceRecord>,
)

export const BoardAnswer = answer(
  'Board',
  z.strictObject({
    rows: z.array(
      z.strictObject({
        sighting: SightingAnswer,
        kind: z.enum(KINDS),
        regularMinor: amount.nullable(),
        underRegular: z.number().nullable(),
        members: z.int().optional().describe('Members behind this price there, at least'),
        over: z.boolean(),
      }) satisfies z.ZodType<BoardRow>,
    ),
    /** Where the place is a store: what its own list asks, in place of rows. */
    listed: z.array(ListedPriceAnswer),
    total: z.int(),
  }),
)

export const PriceViewsAnswer = answer(
  'PriceViews',
  z.strictObject({ prices: z.array(PriceViewAnswer), products: z.array(ProductAnswer), asOf: day }),
)
