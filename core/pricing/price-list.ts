import type { CivilDate } from '../dates.ts'
import type { PriceView } from './price-view.ts'

/** A price of the store's own list, from a day on until the next one begins. */
export interface ListPrice {
  validFrom: CivilDate
  /** As the store prints it, in its currency. */
  priceMinor: number
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
 * @example priceInForce([{ validFrom: '2026-01-01', priceMinor: 900 }, { validFrom: '2026-12-01', priceMinor: 950 }], '2026-11-26')?.priceMinor // 900
 */
export function priceInForce(prices: readonly ListPrice[], asOf: CivilDate): ListPrice | undefined {
  return prices.filter(({ validFrom }) => validFrom <= asOf).toSorted((a, b) => (a.validFrom < b.validFrom ? 1 : -1))[0]
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
  return {
    productId,
    storeId,
    regular: { ...known, from: 'list' },
    today: { ...known, condition: 'shelf', holdsUntil: null, lastDayStated: false, reporters: 0 },
  }
}
