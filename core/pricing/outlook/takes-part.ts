import type { Learned, ProductLearned } from './learned.ts'

/** Where nothing was learnt of a store and sale time: mean 0.3, weight 2 (design rule 4). */
export const runsOf = (learned: Learned, storeId: string, saleTimeId: string): readonly [number, number] =>
  learned.stores[storeId]?.[saleTimeId] ?? [0.6, 1.4]

/** Chance that a product is on sale for a sale time at a store: that the store runs it, and the product takes part. */
export function takesPartChance(learned: Learned, product: ProductLearned, storeId: string, saleTimeId: string, open: boolean): number {
  const running = open ? learned.running[`${storeId} ${saleTimeId}`] : undefined
  const [runYes, runNo] = runsOf(learned, storeId, saleTimeId)
  const [partYes, partNo] = product.part
  return ((running ?? runYes / (runYes + runNo)) * partYes) / (partYes + partNo)
}
