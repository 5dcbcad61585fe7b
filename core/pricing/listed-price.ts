import type { Kind } from '../catalog/kinds.ts'
import type { CivilDate } from '../dates.ts'
import { priceInForce, saleOn, type StockItem } from './price-list.ts'

/** What the own store's list asks for a product on a day. Minor units as the store prints them. */
export interface ListedPrice {
  productId: string
  productName: string
  kind: Kind
  storeId: string
  storeName: string
  priceMinor: number
  /** The full price beside a sale that runs; null where none does. */
  fullMinor: number | null
  /** Last day of that sale; null where none is stated. */
  saleUntil: CivilDate | null
  /** Day from which it stands in the list. */
  validFrom: CivilDate
  /** Whether there are any; null: not counted. */
  inStock: boolean | null
  /** How many there are; null: not counted. Only for whoever reads the list itself. */
  stockCount?: number | null
}

/** As a member has it: whether there are any, not how many. */
export const withoutCount = ({ stockCount: _stockCount, ...price }: ListedPrice): ListedPrice => price

/**
 * What a product costs today where the place is a store; undefined where no price of its list is in force.
 *
 * @example listedPrice({ …, prices: [{ validFrom: '2026-11-01', priceMinor: 900, saleMinor: 800, saleUntil: null }] }, own, '2026-11-26')?.fullMinor // 900
 */
export function listedPrice(
  { productId, name, kind, stockCount, prices }: Pick<StockItem, 'productId' | 'stockCount' | 'prices'> & { name: string; kind: Kind },
  own: { id: string; name: string },
  asOf: CivilDate,
): ListedPrice | undefined {
  const price = priceInForce(prices, asOf)
  if (!price) return undefined
  const sale = saleOn(price, asOf)
  return {
    productId,
    productName: name,
    kind,
    storeId: own.id,
    storeName: own.name,
    priceMinor: sale?.priceMinor ?? price.priceMinor,
    fullMinor: sale ? price.priceMinor : null,
    saleUntil: sale?.until ?? null,
    validFrom: price.validFrom,
    inStock: stockCount === null ? null : stockCount > 0,
    stockCount,
  }
}
