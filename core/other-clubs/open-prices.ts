import type { Kind } from '../catalog/kinds.ts'
import type { CivilDate } from '../dates.ts'
import { plainAmount } from '../exchange/cell-reader.ts'
import { effectiveCondition } from '../pricing/effective-condition.ts'
import type { Condition } from '../pricing/sighting.ts'

/** Newest first; a club that sees more a year tells what is of use today. */
export const MOST_OPEN_PRICES = 5_000
/** Older prices say nothing of what is paid now. */
export const OPEN_PRICE_DAYS = 365

/** A price as one club tells it to another: what was seen, where and on which day, and nothing of who saw it or at what hour. */
export interface OpenPrice {
  /** Of the club that saw it; says nothing but that the same price has the same one. */
  originId: string
  product: { name: string; maker: string | null; gtin: string | null; kind: Kind | null }
  store: { key: string; name: string; kind: 'local' | 'online'; town: string | null; country: string }
  condition: Condition
  priceMinor: number
  printedRegularMinor: number | null
  /** ISO 4217. */
  currency: string
  seenOn: CivilDate
  lastDay: CivilDate | null
  includesTax: boolean
}

const SCHEMA = 'https://schema.org'

/**
 * The open feed of a club: schema.org `DataFeed` of `Offer` in JSON-LD, readable by whoever reads that vocabulary.
 *
 * Units: minor units in, decimal text out; civil days. Source: schema.org, types DataFeed, Offer, UnitPriceSpecification and PriceTypeEnumeration
 * (from memory). A clearance is a sale of limited availability, since the vocabulary has no word of its own for it.
 */
export const openPriceFeed = (club: string, asOf: CivilDate, prices: readonly OpenPrice[]): object => ({
  '@context': SCHEMA,
  '@type': 'DataFeed',
  name: club,
  description: 'Prices that members of this club saw for themselves, without their names. Prices told by other clubs are not among them.',
  dateModified: asOf,
  dataFeedElement: prices.map(offerOf),
})

function offerOf(price: OpenPrice): object {
  const { originId, currency, seenOn, lastDay, printedRegularMinor, condition } = price
  const specification = (minor: number, priceType: string) => ({
    '@type': 'UnitPriceSpecification',
    price: plainAmount(minor, currency),
    priceCurrency: currency,
    priceType: `${SCHEMA}/${priceType}`,
    valueAddedTaxIncluded: price.includesTax,
  })
  return {
    '@type': 'Offer',
    identifier: originId,
    itemOffered: productOf(price.product),
    seller: sellerOf(price.store),
    itemCondition: `${SCHEMA}/${condition === 'used' ? 'UsedCondition' : 'NewCondition'}`,
    ...(condition === 'clearance' && { availability: `${SCHEMA}/LimitedAvailability` }),
    priceSpecification: [
      specification(price.priceMinor, effectiveCondition(price) === 'shelf' || condition === 'used' ? 'RegularPrice' : 'SalePrice'),
      ...(printedRegularMinor === null ? [] : [specification(printedRegularMinor, 'StrikethroughPrice')]),
    ],
    validFrom: seenOn,
    ...(lastDay !== null && { priceValidUntil: lastDay }),
  }
}

const productOf = ({ name, maker, gtin, kind }: OpenPrice['product']): object => ({
  '@type': 'Product',
  name,
  ...(maker !== null && { brand: { '@type': 'Brand', name: maker } }),
  ...(gtin !== null && { gtin }),
  ...(kind !== null && { category: kind }),
})

const sellerOf = ({ key, name, kind, town, country }: OpenPrice['store']): object => ({
  '@type': kind === 'online' ? 'OnlineStore' : 'Store',
  identifier: key,
  name,
  address: { '@type': 'PostalAddress', ...(town !== null && { addressLocality: town }), addressCountry: country },
})
