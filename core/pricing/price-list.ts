import type { CivilDate } from '../dates.ts'
import type { PriceView } from './price-view.ts'

/** A price of the store's own list, from a day on until the next one begins. */
export interface ListPrice {
  validFrom: CivilDate
  /** As the store prints it, in its currency. */
  priceMinor: number
  /** What is asked instead while a sale lasts that begins on the same day; below the price. Null: no sale. */
  saleMinor: number | null
  /** Last day of the sale; null: it lasts until the next price begins. */
  saleUntil: CivilDate | null
}

/** What the store's own list says of a product. */
export interface StockItem {
  productId: string
  /** The store's own number for it. */
  stockNumber: string | null
  /** How many there are; null: not counted. */
  stockCount: number | null
  /** A day at most once, the earliest first. */
  prices: ListPrice[]
}

/**
 * The price in force on a day: the one that began last. It does not age. Undefined before the first begins.
 *
 * @example priceInForce([{ validFrom: '2026-01-01', priceMinor: 900, … }, { validFrom: '2026-12-01', priceMinor: 950, … }], '2026-11-26')?.priceMinor // 900
 */
export function priceInForce<Price extends Pick<ListPrice, 'validFrom'>>(prices: readonly Price[], asOf: CivilDate): Price | undefined {
  return prices.filter(({ validFrom }) => validFrom <= asOf).toSorted((a, b) => (a.validFrom < b.validFrom ? 1 : -1))[0]
}

/**
 * The sale that runs on a day beside the price in force, with its last day where one is known.
 *
 * @example saleOn({ saleMinor: 800, saleUntil: '2026-11-30', … }, '2026-12-01') // undefined
 */
export function saleOn(
  { saleMinor, saleUntil }: Pick<ListPrice, 'saleMinor' | 'saleUntil'>,
  asOf: CivilDate,
): { priceMinor: number; until: CivilDate | null } | undefined {
  return saleMinor === null || (saleUntil !== null && saleUntil < asOf) ? undefined : { priceMinor: saleMinor, until: saleUntil }
}

/** What the own list says of a product on a day, as builds are priced from it; undefined where no price is in force. */
export function listView(
  { productId, prices }: Pick<StockItem, 'productId' | 'prices'>,
  storeId: string,
  asOf: CivilDate,
): PriceView | undefined {
  const price = priceInForce(prices, asOf)
  if (!price) return undefined
  const { priceMinor, validFrom } = price
  const known = { priceMinor, seenOn: validFrom, age: 'current' as const, sightingIds: [] }
  const sale = saleOn(price, asOf)
  const shelf = { ...known, condition: 'shelf' as const, holdsUntil: null, lastDayStated: false, reporters: 0 }
  return {
    productId,
    storeId,
    regular: { ...known, from: 'list' },
    today: sale
      ? { ...shelf, condition: 'sale', priceMinor: sale.priceMinor, holdsUntil: sale.until, lastDayStated: sale.until !== null }
      : shelf,
  }
}
