import type { Store } from '../../../core/catalog/store.ts'
import { withTaxExact } from '../../../core/pricing/receipt.ts'
import type { BoardRow } from '../../../core/pricing/record.ts'

export interface LowerElsewhere {
  storeName: string
  /** As that store prints it. */
  priceMinor: number
}

/** What a row's product costs there today: its price, or the regular one where its sale is over. */
const priceNow = ({ sighting, over, regularMinor }: BoardRow): number | null => (over ? regularMinor : sighting.priceMinor)

/**
 * The lowest price at another store, new goods, among the rows that were read; null where none is lower or a store is not known.
 * Stores that print tax differently are compared with tax, those of another currency not at all.
 *
 * @example lowerElsewhere(row, [row], stores) // null: no other store
 */
export function lowerElsewhere(row: BoardRow, rows: readonly BoardRow[], stores: readonly Store[]): LowerElsewhere | null {
  const currency = stores.find(({ id }) => id === row.sighting.storeId)?.currency ?? null
  const costOf = (other: BoardRow): number | null => {
    const price = priceNow(other)
    const store = stores.find(({ id }) => id === other.sighting.storeId)
    return price === null || !store || (store.currency ?? null) !== currency ? null : withTaxExact(price, store)
  }
  const own = costOf(row)
  if (own === null || row.sighting.condition === 'used') return null
  const { productId, storeId } = row.sighting
  const lower = rows
    .filter(({ sighting }) => sighting.productId === productId && sighting.storeId !== storeId && sighting.condition !== 'used')
    .flatMap((other) => {
      const cost = costOf(other)
      return cost === null || cost >= own ? [] : [{ other, cost }]
    })
    .toSorted((a, b) => a.cost - b.cost)[0]?.other
  const priceMinor = lower && priceNow(lower)
  return lower && priceMinor ? { storeName: lower.sighting.storeName, priceMinor } : null
}
