import type { Store } from '../catalog/store.ts'
import { rateSteps, taxOn, taxWithin, WHOLE_RATE } from '../money.ts'
import { deliveryFee } from './delivery.ts'
import type { Receipt, Sum } from './tiers.ts'

/**
 * One store's receipt: tax is worked out once, on the whole, and rounded half away from zero.
 *
 * Units: minor units as the store prints them. Range: 0 and above.
 *
 * @example receiptOf({ …, taxBasisPoints: 600, pricesIncludeTax: false, deliveryTaxed: false }, 10000, 990) // tax 600, total 11590
 */
export function receiptOf(store: Store, goodsMinor: number, deliveryMinor: number): Receipt {
  const taxableMinor = goodsMinor + (store.deliveryTaxed ? deliveryMinor : 0)
  const taxMinor = store.pricesIncludeTax ? taxWithin(taxableMinor, store.taxBasisPoints) : taxOn(taxableMinor, store.taxBasisPoints)
  const taxIncludedMinor = store.pricesIncludeTax ? taxMinor : 0
  const totalMinor = goodsMinor + deliveryMinor + taxMinor - taxIncludedMinor
  return { storeId: store.id, taxBasisPoints: store.taxBasisPoints, goodsMinor, deliveryMinor, taxMinor, taxIncludedMinor, totalMinor }
}

/** The receipt of one day's goods at a store whose goods can reach the customer, delivery by its rule. Units and range as `receiptOf`. */
export function deliveredReceipt(store: Store, goodsMinor: number, anyOversize: boolean): Receipt {
  const fee = deliveryFee(store, goodsMinor, anyOversize)
  // Stores whose goods reach nobody make no offers, so that nothing is bought there.
  return receiptOf(store, goodsMinor, fee === 'cannot_be_delivered' ? 0 : fee)
}

/** Receipts added up. */
export function sumOf(receipts: readonly Sum[]): Sum {
  const sum = { goodsMinor: 0, deliveryMinor: 0, taxMinor: 0, taxIncludedMinor: 0, totalMinor: 0 }
  for (const receipt of receipts) {
    sum.goodsMinor += receipt.goodsMinor
    sum.deliveryMinor += receipt.deliveryMinor
    sum.taxMinor += receipt.taxMinor
    sum.taxIncludedMinor += receipt.taxIncludedMinor ?? 0
    sum.totalMinor += receipt.totalMinor
  }
  return sum
}

/** An amount with its tax, in millionths of a minor unit and so exact: for comparing prices of stores that print tax differently. */
export const withTaxExact = (priceMinor: number, store: Pick<Store, 'taxBasisPoints' | 'pricesIncludeTax'>): number =>
  priceMinor * (WHOLE_RATE + (store.pricesIncludeTax ? 0 : rateSteps(store.taxBasisPoints)))
