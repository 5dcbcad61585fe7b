import { effectiveCondition } from '../effective-condition.ts'
import { isAccepted, type SeenPrice, type Sighting } from '../sighting.ts'
import type { TrustOf } from '../trust.ts'
import { weightedMedian, type Weighted } from '../weighted-median.ts'
import { dayNumber } from './civil-day.ts'

/** What is learnt from: of a sighting only what says a price and whether it counts. */
export type TaughtPrice = SeenPrice & Pick<Sighting, 'productId'>

/** What was reported of a product at a store on one day: several reports of a day are one. */
export interface ReportDay {
  day: number
  /** Some report of the day tells of a sale; a regular tag is often reported beside it. */
  onSale: boolean
  /** Trust-weighted medians; NaN where the day tells of none. */
  saleMinor: number
  shelfMinor: number
  /** Regular price printed beside the sale price. */
  printedMinor: number
}

/** The report days of one product at one store, oldest first. */
export interface Timeline {
  productId: string
  storeId: string
  reports: ReportDay[]
}

/** Report days up to a day by product and store, in the order of their ids. What is not accepted and used goods count for nothing. */
export function timelines(sightings: readonly TaughtPrice[], asOf: number, trustOf: TrustOf): Timeline[] {
  const byPair = new Map<string, Map<string, TaughtPrice[]>>()
  for (const sighting of sightings) {
    if (sighting.condition === 'used' || !isAccepted(sighting) || dayNumber(sighting.seenOn) > asOf) continue
    const stores = byPair.get(sighting.productId) ?? new Map<string, TaughtPrice[]>()
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

function reportDays(ofPair: readonly TaughtPrice[], trustOf: TrustOf): ReportDay[] {
  const byDay = new Map<number, { sale: Weighted[]; shelf: Weighted[]; printed: Weighted[] }>()
  for (const sighting of ofPair) {
    const day = dayNumber(sighting.seenOn)
    const known = byDay.get(day) ?? { sale: [], shelf: [], printed: [] }
    const weight = trustOf(sighting.reporterId)
    if (effectiveCondition(sighting) === 'shelf') known.shelf.push({ value: sighting.priceMinor, weight })
    else {
      known.sale.push({ value: sighting.priceMinor, weight })
      if (sighting.printedRegularMinor !== null) known.printed.push({ value: sighting.printedRegularMinor, weight })
    }
    byDay.set(day, known)
  }
  const days = [...byDay]
    .map(([day, { sale, shelf, printed }]) => ({
      day,
      onSale: sale.length > 0,
      saleMinor: middle(sale),
      shelfMinor: middle(shelf),
      printedMinor: middle(printed),
    }))
    .sort((a, b) => a.day - b.day)
  return days.map((report, index) => asShelf(report, days, index))
}

/** Half a per cent: below it two prices are one, but for a rounded tag or a coin left out. */
const SAME_LOG = 0.005
export const isSame = (a: number, b: number): boolean => Math.abs(Math.log(a / b)) < SAME_LOG

/**
 * A sale at the shelf price before it, or where none was seen before at the one behind it, is no sale: somebody printed a regular price that
 * was none. It is a report of the shelf price.
 */
function asShelf(report: ReportDay, days: readonly ReportDay[], index: number): ReportDay {
  if (!report.onSale || !Number.isNaN(report.shelfMinor)) return report
  const isShelf = ({ shelfMinor }: ReportDay): boolean => !Number.isNaN(shelfMinor)
  const near = days.slice(0, index).findLast(isShelf) ?? days.slice(index + 1).find(isShelf)
  if (near === undefined || !isSame(near.shelfMinor, report.saleMinor)) return report
  return { day: report.day, onSale: false, saleMinor: NaN, shelfMinor: report.saleMinor, printedMinor: NaN }
}

const middle = (values: readonly Weighted[]): number => (values.length === 0 ? NaN : weightedMedian(values))
