import * as z from 'zod'
import { isGtin } from '../catalog/gtin.ts'
import { KINDS, type Kind } from '../catalog/kinds.ts'
import { isCivilDate } from '../dates.ts'
import { civilDate, rowId, strict, text } from '../schema.ts'
import { MOST_OPEN_PRICES } from './open-prices.ts'

/**
 * What another club's feed may say. It comes from outside: every text is cut to what is stored, and an offer that cannot be read is left out
 * and counted rather than stopping the rest.
 */
const NAME = text('Name', 1, 200)
const day = civilDate('Day').refine((value) => isCivilDate(value))
/** A decimal as text, or a number as some write it. */
const decimal = z.string().regex(/^\d{1,10}(\.\d{1,3})?$/)
const amount = z.union([decimal, z.number().transform(String).pipe(decimal)])
const term = z.string().max(80)

const Specification = z.object({
  price: amount,
  priceCurrency: z.string().regex(/^[A-Z]{3}$/),
  priceType: term.nullable().default(null),
  valueAddedTaxIncluded: z.boolean().default(false),
})
const named = z.union([NAME, z.object({ name: NAME }).transform(({ name }) => name)])

export const OfferRead = z.object({
  identifier: z.string().regex(/^[\w-]{8,64}$/),
  itemOffered: z.object({
    name: NAME,
    brand: named.nullable().catch(null).default(null),
    gtin: z
      .string()
      .transform((value) => (isGtin(value) ? value : null))
      .nullable()
      .catch(null)
      .default(null),
    category: z
      .string()
      .transform((value) => KINDS.find((kind): kind is Kind => kind === value) ?? null)
      .nullable()
      .catch(null)
      .default(null),
  }),
  seller: z.object({
    '@type': term.default('Store'),
    identifier: z.string().regex(/^[\w-]{1,64}$/),
    name: NAME,
    address: z.object({
      addressLocality: NAME.nullable().catch(null).default(null),
      addressCountry: z.string().regex(/^[A-Z]{2}$/),
    }),
  }),
  itemCondition: term,
  availability: term.nullable().default(null),
  priceSpecification: z.array(Specification).min(1).max(4),
  validFrom: day,
  priceValidUntil: day.nullable().default(null),
})
export type OfferRead = z.output<typeof OfferRead>

/** The head of a feed; its offers are read one by one. */
export const FeedRead = z.object({
  '@type': z.literal('DataFeed', { error: 'This is not a feed of prices: its "@type" is not DataFeed.' }),
  name: NAME,
  dataFeedElement: z.array(z.unknown(), { error: 'This is not a feed of prices: "dataFeedElement" is not a list.' }).max(MOST_OPEN_PRICES, {
    error: `This feed has more than ${MOST_OPEN_PRICES} prices, and is not read.`,
  }),
})

/** An address to read another club's prices from. */
export const OtherClubInput = strict('Club', {
  address: text('Address', 1, 300).refine((value) => /^https:\/\//i.test(value), {
    error: 'Address does not begin with https://. Copy it from the other club’s screen "Other clubs".',
  }),
})

export const OtherStoreInput = strict('Store', {
  /** Null: none of ours. */
  storeId: rowId('Store').nullable(),
})

export const PublishInput = strict('Publishing', { publishes: z.boolean({ error: 'publishes is true or false.' }) })
