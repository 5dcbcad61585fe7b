import { addDays, daysBetween } from '../../dates.ts'
import { saleSpells } from '../sale-spells.ts'
import { newcomerTrust, type TrustOf } from '../trust.ts'
import type { KindLearned, Learned, ProductLearned } from './learned.ts'
import type { MarketRecord } from './market-record.ts'
import { GRID_LENGTHS, GRID_RATES, GRID_SILENCES } from './sale-grid.ts'

const UNKNOWN_KIND: KindLearned = {
  logRate: { mean: Math.log(3), sd: 0.7, error: 0.3 },
  changes: { shape: 1, days: 365, sizesLog: [-0.05, 0.03, 0.05, 0.08], meanError: 0.02 },
  depth: { mean: 0.2, meanError: 0.03, betweenSd: 0.05, residuals: [-0.1, -0.05, 0, 0.05, 0.1] },
  part: [0.3, 1.7],
  saleDays: 0,
}

/**
 * What the record teaches on its day. Pure: the same record gives the same bytes, whatever the order of its lists.
 */
export function learn(record: MarketRecord, { trustOf = newcomerTrust }: { trustOf?: TrustOf } = {}): Learned {
  const kinds: Learned['kinds'] = { any: UNKNOWN_KIND }
  const products: Record<string, ProductLearned> = {}
  const byProduct = Map.groupBy(record.sightings, ({ productId }) => productId)
  for (const { id, kind } of record.products.toSorted((a, b) => (a.id < b.id ? -1 : 1))) {
    kinds[kind] = UNKNOWN_KIND
    const pairs = [...Map.groupBy(byProduct.get(id) ?? [], ({ storeId }) => storeId).values()]
    let spells = 0
    let days = 0
    for (const pair of pairs) {
      const seen = pair.map(({ seenOn }) => seenOn).filter((day) => day <= record.asOf)
      const first = seen.toSorted()[0]
      if (first === undefined) continue
      days += daysBetween(first, record.asOf)
      spells += saleSpells(pair, addDays(record.asOf, 0), trustOf).length
    }
    const rate = (spells + 2) / (days / 365 + 2 / 3)
    products[id] = {
      kind,
      points: [nearestPoint(rate)],
      depth: { mean: UNKNOWN_KIND.depth.mean, sd: UNKNOWN_KIND.depth.betweenSd },
      part: UNKNOWN_KIND.part,
      reportDays: pairs.reduce((sum, pair) => sum + pair.length, 0),
      saleDays: spells,
    }
  }
  return { asOf: record.asOf, kinds, products, stores: {}, running: {} }
}

function nearestPoint(rate: number): number {
  let best = 0
  GRID_RATES.forEach((known, index) => {
    if (Math.abs(Math.log(known / rate)) < Math.abs(Math.log((GRID_RATES[best] as number) / rate))) best = index
  })
  return best * GRID_SILENCES.length * GRID_LENGTHS.length + 2
}
