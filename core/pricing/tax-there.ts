import type { Store } from '../catalog/store.ts'
import { WHOLE_RATE } from '../money.ts'
import { withTaxExact } from './receipt.ts'

/** Goods at a store, by the place of their rate of tax among the store's; absent is 0, the usual one. */
export interface TaxedAt {
  store: Pick<Store, 'taxBasisPoints' | 'otherRates' | 'pricesIncludeTax'>
  rateIndex?: number
}

/** How a tag is meant beside another: tax in it or not where the other is the contrary, else what comes on it. */
export type TaxThere = 'same' | 'within' | 'before' | 'none' | 'less' | 'more'

/**
 * How the price that a store prints is meant, seen from another store: without the word, one that is no lower would read as a slip.
 *
 * @example taxThere({ store: { taxBasisPoints: 0, pricesIncludeTax: false } }, { store: { taxBasisPoints: 600, pricesIncludeTax: false } }) // 'none'
 */
export function taxThere(there: TaxedAt, here: TaxedAt): TaxThere {
  if (there.store.pricesIncludeTax !== here.store.pricesIncludeTax) return there.store.pricesIncludeTax ? 'within' : 'before'
  const [factor, own] = [withTaxExact(1, there.store, there.rateIndex), withTaxExact(1, here.store, here.rateIndex)]
  if (factor === own) return 'same'
  return factor === WHOLE_RATE ? 'none' : factor < own ? 'less' : 'more'
}
