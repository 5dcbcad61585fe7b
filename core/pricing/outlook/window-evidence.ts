import type { Kind } from '../../catalog/kinds.ts'
import { gridTables } from './gap-tables.ts'
import { filterSales, partsOf, type TakesPart } from './sale-filter.ts'
import type { ProductSteps } from './sale-fit.ts'
import type { WindowDays } from './sale-steps.ts'
import type { SaleTimesLearned, WindowEvidence } from './sale-times.ts'

/** Of the places kept of a product so many weigh a window: a ratio of likelihoods needs no finer mean. */
const EVIDENCE_POINTS = 6

/** What each product's reports say of each window, one after the other: nothing of them is kept. `pointsOf` are the places kept of a product. */
export function* evidenceOf(
  steps: ReadonlyMap<Kind, Iterable<ProductSteps>>,
  pointsOf: (productId: string) => readonly number[],
): Generator<WindowEvidence> {
  for (const [kind, products] of steps)
    for (const { productId, stores } of products) {
      const points = pointsOf(productId)
      const few = Array.from(
        { length: EVIDENCE_POINTS },
        (_, index) => points[Math.floor(((index + 0.5) / EVIDENCE_POINTS) * points.length)],
      )
      for (const { storeId, steps: ofStore } of stores) {
        const parts = partsOf(ofStore, () => 0.05)
        const sums = new Map<WindowDays, { ratio: number; open: boolean }>()
        for (const point of few.filter((at) => at !== undefined))
          filterSales(ofStore, gridTables(point), parts, (step, logRatio) => {
            const ratio = (sums.get(step.window)?.ratio ?? 0) + Math.min(1e6, Math.exp(logRatio)) / EVIDENCE_POINTS
            sums.set(step.window, { ratio, open: step.open })
          })
        for (const [{ saleTimeId, first }, { ratio, open }] of sums) yield { productId, kind, storeId, saleTimeId, first, ratio, open }
      }
    }
}

/** Chance that a product takes part in a window at a store, by what was learnt of sale times. */
export function takesPart(times: SaleTimesLearned, kind: Kind, productId: string, storeId: string): TakesPart {
  const [partYes, partNo] = times.products.get(productId) ?? times.kinds.get(kind) ?? [0.3, 1.7]
  return ({ window }) => {
    const [runYes, runNo] = times.stores.get(storeId)?.get(window.saleTimeId) ?? [0.6, 1.4]
    return ((runYes / (runYes + runNo)) * partYes) / (partYes + partNo)
  }
}
