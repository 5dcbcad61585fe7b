import { effectiveCondition } from '../effective-condition.ts'
import { isAccepted, type Sighting } from '../sighting.ts'
import type { TrustOf } from '../trust.ts'
import { weightedMedian, type Weighted } from '../weighted-median.ts'
import { dayNumber } from './civil-day.ts'

/** What was reported of a product at a store on one day: several reports of a day are one. */
export interface ReportDay {
  day: number
  /** Some report of the day tells of a sale; a regular tag is often reported beside it. */
  onSale: boolean
  /** Trust-weighted medians; NaN where the day tells of none. */
  saleMinor: number
  shelfMinor: number
}

/** The report days of one product at one store, oldest first. */
export interface Timeline {
  productId: string
  storeId: string
  reports: ReportDay[]
}

/** Report days up to a day by product and store, in the order of their ids. What is not accepted and used goods count for nothing. */
export function timelines(sightings: readonly Sighting[], asOf: number, trustOf: TrustOf): Timeline[] {
  const byPair = new Map<string, Map<string, Sighting[]>>()
  for (const sighting of sightings) {
    if (sighting.condition === 'used' || !isAccepted(sighting) || dayNumber(sighting.seenOn) > asOf) continue
    const stores = byPair.get(sighting.productId) ?? new Map<string, Sighting[]>()
    const reports = stores.get(sighting.storeId) ?? []
    reports.push(sighting)
    stores.set(sighting.storeId, reports)
    byPair.set(sighting.productId, stores)
  }
  const inOrder = <Value>(map: Map<string, Value>): Array<[string, Value]> => [...map].sort(([a], [b]) => (a < b ? -1 : 1))
  return inOrder(byPair).flatMap(([productId, stores]) =>
    inOrder(stores).map(([storeId, ofPair]): Timeline => ({ productId, storeId, reports: reportDays(ofPair, trustOf) })),
  )
}

function reportDays(ofPair: readonly Sighting[], trustOf: TrustOf): ReportDay[] {
  const byDay = new Map<number, { sale: Weighted[]; shelf: Weighted[] }>()
  for (const sighting of ofPair) {
    const day = dayNumber(sighting.seenOn)
    const known = byDay.get(day) ?? { sale: [], shelf: [] }
    known[effectiveCondition(sighting) === 'shelf' ? 'shelf' : 'sale'].push({
      value: sighting.priceMinor,
      weight: trustOf(sighting.reporterId),
    })
    byDay.set(day, known)
  }
  return [...byDay]
    .map(([day, { sale, shelf }]) => ({ day, onSale: sale.length > 0, saleMinor: middle(sale), shelfMinor: middle(shelf) }))
    .sort((a, b) => a.day - b.day)
}

const middle = (values: readonly Weighted[]): number => (values.length === 0 ? NaN : weightedMedian(values))
