import { allocate } from '../allocate.ts'
import { taxOn } from '../money.ts'
import type { GoodsByRate } from './receipt.ts'

/** What is taken off the goods of a quote, with its reason. `storeId` null: off the goods of every store. */
export type Discount =
  | { kind: 'amount'; amountMinor: number; storeId: string | null; reason: string }
  /** Of the goods, in hundredths of a per cent: 1000 is 10 %. */
  | { kind: 'share'; basisPoints: number; storeId: string | null; reason: string }

/** Goods of one store by rate. */
export interface DiscountedGoods {
  storeId: string
  goods: GoodsByRate
}

/**
 * What a discount takes off, by store and rate: one amount, a share of the goods rounded once half away from zero, split by largest
 * remainder over the goods. It is never more than the goods: what is above them is not given.
 *
 * Units: minor units as the stores print them. Range: goods 0 and above. The order of the stores changes nothing.
 *
 * @example discountsOf({ kind: 'amount', amountMinor: 1000, storeId: null, reason: '' }, [{ storeId: 'a', goods: [3000, 1000] }]) // Map { 'a' → [750, 250] }
 */
export function discountsOf(discount: Discount | null | undefined, bought: readonly DiscountedGoods[]): Map<string, number[]> {
  if (!discount) return new Map()
  const cells = bought
    .filter(({ storeId }) => discount.storeId === null || storeId === discount.storeId)
    .toSorted((a, b) => (a.storeId < b.storeId ? -1 : 1))
    .flatMap(({ storeId, goods }) => goods.map((minor) => ({ storeId, minor })))
  const goodsMinor = cells.reduce((sum, { minor }) => sum + minor, 0)
  const wanted = discount.kind === 'amount' ? discount.amountMinor : taxOn(goodsMinor, discount.basisPoints)
  const shares = allocate(
    Math.min(wanted, goodsMinor),
    cells.map(({ minor }) => minor),
  )
  const byStore = new Map<string, number[]>()
  cells.forEach(({ storeId }, at) => byStore.set(storeId, [...(byStore.get(storeId) ?? []), shares[at] ?? 0]))
  return byStore
}
