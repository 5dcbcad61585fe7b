import type { Kind } from '../../../core/catalog/kinds.ts'
import type { Store } from '../../../core/catalog/store.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import { withTaxExact } from '../../../core/pricing/receipt.ts'
import type { BoardRow } from '../../../core/pricing/record.ts'
import { rateIndexOf } from '../../../core/pricing/store-rates.ts'
import { taxThere, type TaxThere } from '../../../core/pricing/tax-there.ts'

/** What a product costs today at a store, as that store prints it. */
export interface PriceThere {
  productId: string
  storeId: string
  priceMinor: number
}

const TAX_WORDS = {
  same: '',
  within: 'tax in it',
  before: 'before tax',
  none: 'no tax added',
  less: 'plus a lower tax',
  more: 'plus a higher tax',
} as const satisfies Record<TaxThere, string>

export interface LowerElsewhere extends Pick<PriceThere, 'priceMinor'> {
  storeName: string
  /** How its tag is meant, where it is not meant as the row's; else empty. */
  tax: (typeof TAX_WORDS)[TaxThere]
}

/** What a row's product costs there today: its price, or the regular one where its sale is over. */
const priceNow = ({ sighting, over, regularMinor }: BoardRow): number | null => (over ? regularMinor : sighting.priceMinor)

/** What stands in the rows that were read: all that is known without a signal. */
export const pricesOfRows = (rows: readonly BoardRow[]): PriceThere[] =>
  rows.flatMap((row) => {
    const priceMinor = priceNow(row)
    const { productId, storeId, condition } = row.sighting
    return priceMinor === null || condition === 'used' ? [] : [{ productId, storeId, priceMinor }]
  })

/** What the server knows of the rows' products at every store. What other clubs told is left out: nobody here has seen it. */
export const pricesOfViews = (views: readonly PriceView[]): PriceThere[] =>
  views.flatMap(({ productId, storeId, today, otherClub }) =>
    today && otherClub === undefined ? [{ productId, storeId, priceMinor: today.priceMinor }] : [],
  )

/**
 * The lowest price of a row's product at another store, new goods; null where none is lower or a store is not known.
 * Prices are compared with tax, and those of another currency not at all.
 *
 * @example lowerElsewhere(row, pricesOfRows([row]), stores) // null: no other store
 */
export function lowerElsewhere(row: BoardRow, prices: readonly PriceThere[], stores: readonly Store[]): LowerElsewhere | null {
  const { productId, storeId, condition } = row.sighting
  const here = stores.find(({ id }) => id === storeId)
  const own = priceNow(row)
  if (!here || own === null || condition === 'used') return null
  const ownCost = costAt(here, own, productId, row.kind)
  const [lower] = prices
    .flatMap((price) => {
      const store = price.productId === productId && price.storeId !== storeId ? stores.find(({ id }) => id === price.storeId) : undefined
      if (!store || store.archived || (store.currency ?? null) !== (here.currency ?? null)) return []
      const cost = costAt(store, price.priceMinor, productId, row.kind)
      return cost < ownCost ? [{ store, cost, priceMinor: price.priceMinor }] : []
    })
    .toSorted((a, b) => a.cost - b.cost)
  if (!lower) return null
  const taxedAt = (store: Store) => ({ store, rateIndex: rateIndexOf(store, { productId, kind: row.kind }) })
  return { storeName: lower.store.name, priceMinor: lower.priceMinor, tax: TAX_WORDS[taxThere(taxedAt(lower.store), taxedAt(here))] }
}

const costAt = (store: Store, priceMinor: number, productId: string, kind: Kind): number =>
  withTaxExact(priceMinor, store, rateIndexOf(store, { productId, kind }))
