import type { Store } from '../catalog/store.ts'
import { rateSteps, taxOn, taxWithin, WHOLE_RATE } from '../money.ts'
import { deliveryFee } from './delivery.ts'
import { deliveryRateIndex, rateCount, ratesOf } from './store-rates.ts'
import type { Receipt, ReceiptTax, Sum } from './tiers.ts'

/** Goods at one store by the rate they take, in the order of `ratesOf`; a rate that is left out has none. */
export type GoodsByRate = readonly number[]

const sumByRate = (goods: GoodsByRate): number => goods.reduce((sum, minor) => sum + minor, 0)

/**
 * One store's receipt: tax is worked out once a rate, on all goods of that rate together, and rounded half away from zero.
 *
 * A discount is taken off the goods as printed, before tax is worked out: where prices exclude tax it lowers the taxable amount, where they
 * include tax the lowered price holds proportionally less of it. What the discount takes off each rate is `discountByRate`, never more than the goods
 * of that rate, so that no amount falls below 0. Delivery is not discounted.
 *
 * Units: minor units as the store prints them. Range: 0 and above. One amount in place of a list is goods at the usual rate.
 *
 * @example receiptOf({ …, taxBasisPoints: 600, pricesIncludeTax: false, deliveryTaxed: false }, 10000, 990) // tax 600, total 11590
 */
export function receiptOf(store: Store, goods: number | GoodsByRate, deliveryMinor: number, discountByRate: GoodsByRate = []): Receipt {
  const byRate = typeof goods === 'number' ? [goods] : goods
  const taxedDelivery = store.deliveryTaxed ? deliveryRateIndex(store) : -1
  const taxes = ratesOf(store).map(({ name, basisPoints }, index): ReceiptTax => {
    const goodsMinor = (byRate[index] ?? 0) - (discountByRate[index] ?? 0)
    const taxableMinor = goodsMinor + (index === taxedDelivery ? deliveryMinor : 0)
    return { name, basisPoints, taxableMinor, taxMinor: (store.pricesIncludeTax ? taxWithin : taxOn)(taxableMinor, basisPoints) }
  })
  const goodsMinor = sumByRate(byRate)
  const discountMinor = sumByRate(discountByRate)
  const taxMinor = taxes.reduce((sum, tax) => sum + tax.taxMinor, 0)
  const taxIncludedMinor = store.pricesIncludeTax ? taxMinor : 0
  return {
    storeId: store.id,
    taxBasisPoints: store.taxBasisPoints,
    goodsMinor,
    ...(discountMinor > 0 && { discountMinor }),
    deliveryMinor,
    taxMinor,
    taxIncludedMinor,
    ...(rateCount(store) > 1 && { taxes: taxes.filter((tax) => tax.taxableMinor > 0) }),
    totalMinor: goodsMinor - discountMinor + deliveryMinor + taxMinor - taxIncludedMinor,
  }
}

/**
 * The receipt of one day's goods at a store whose goods can reach the customer, delivery by its rule on the goods as printed: a discount
 * does not cost the customer a free delivery. Units and range as `receiptOf`.
 */
export function deliveredReceipt(
  store: Store,
  goods: number | GoodsByRate,
  anyOversize: boolean,
  discountByRate: GoodsByRate = [],
): Receipt {
  const fee = deliveryFee(store, typeof goods === 'number' ? goods : sumByRate(goods), anyOversize)
  // Stores whose goods reach nobody make no offers, so that nothing is bought there.
  return receiptOf(store, goods, fee === 'cannot_be_delivered' ? 0 : fee, discountByRate)
}

/** Receipts added up. */
export function sumOf(receipts: readonly Sum[]): Sum {
  const sum = { goodsMinor: 0, discountMinor: 0, deliveryMinor: 0, taxMinor: 0, taxIncludedMinor: 0, totalMinor: 0 }
  for (const receipt of receipts) {
    sum.goodsMinor += receipt.goodsMinor
    sum.discountMinor += receipt.discountMinor ?? 0
    sum.deliveryMinor += receipt.deliveryMinor
    sum.taxMinor += receipt.taxMinor
    sum.taxIncludedMinor += receipt.taxIncludedMinor ?? 0
    sum.totalMinor += receipt.totalMinor
  }
  const { discountMinor, ...others } = sum
  return discountMinor === 0 ? others : { ...others, discountMinor }
}

type Taxing = Pick<Store, 'taxBasisPoints' | 'otherRates' | 'pricesIncludeTax'>

/**
 * An amount with its tax, in millionths of a minor unit and so exact: for comparing prices of stores that print tax differently.
 * `rateIndex` is the rate that the goods take there.
 */
export function withTaxExact(priceMinor: number, store: Taxing, rateIndex = 0): number {
  const basisPoints = rateIndex === 0 ? store.taxBasisPoints : (store.otherRates?.[rateIndex - 1]?.basisPoints ?? store.taxBasisPoints)
  return priceMinor * (WHOLE_RATE + (store.pricesIncludeTax ? 0 : rateSteps(basisPoints)))
}
