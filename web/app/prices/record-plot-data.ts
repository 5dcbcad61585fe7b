import { addDays, type CivilDate } from '../../../core/dates.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import type { PriceRecord } from '../../../core/pricing/record.ts'
import { recordSteps, type RecordSteps } from '../../../core/pricing/record-steps.ts'
import { isAccepted } from '../../../core/pricing/sighting.ts'
import type { PriceRecordData, PriceRun, StoreLine } from '../../plots/price-record-data.ts'

/** Shelf days with the sale's days taken out of them: a price stands or its sale does, never both. */
function cutByDips(run: PriceRun, dips: readonly PriceRun[]): PriceRun[] {
  let left = [run]
  for (const dip of dips) {
    left = left.flatMap((piece) => {
      if (dip.to <= piece.from || dip.from >= piece.to) return [piece]
      const before = { ...piece, to: dip.from }
      const after = { ...piece, from: dip.to }
      return [before, after].filter((part) => part.from < part.to)
    })
  }
  return left
}

/** The first day after an inclusive last one. */
const after = (day: CivilDate): CivilDate => addDays(day, 1)

/** A sale that runs today runs on to its last day: the drawing's steps end today. */
function untilLastDay(sales: PriceRun[], view: PriceView | undefined): PriceRun[] {
  const today = view?.today
  const last = sales.at(-1)
  if (!today?.holdsUntil || !last || last.priceMinor !== today.priceMinor || last.to > after(today.holdsUntil)) return sales
  return [...sales.slice(0, -1), { ...last, to: after(today.holdsUntil) }]
}

function storeLine({ storeId, steps, dips, points }: RecordSteps, name: string, view: PriceView | undefined): StoreLine {
  const seen: PriceRun[] = dips.map(({ from, until, priceMinor, regularMinor }) => ({
    from,
    to: after(until),
    priceMinor,
    kind: 'sale',
    regularMinor,
  }))
  const sales = untilLastDay(seen, view)
  const shelves = steps.flatMap(({ from, until, priceMinor }) =>
    cutByDips({ from, to: after(until), priceMinor, kind: 'regular', regularMinor: null }, sales),
  )
  return {
    storeId,
    name,
    runs: [...shelves, ...sales].sort((a, b) => a.from.localeCompare(b.from)),
    marks: points
      .filter((point) => point.accepted && point.condition !== 'used')
      .map((point) => ({ on: point.seenOn, priceMinor: point.priceMinor, kind: point.condition === 'shelf' ? 'shelf' : 'sale' })),
  }
}

/** What the plot of a product's record shows: accepted sightings of new goods, a line a store. */
export function recordPlotData(record: PriceRecord, currency: string): PriceRecordData {
  const names = new Map(record.sightings.map((row) => [row.storeId, row.storeName]))
  const counted = record.sightings.filter((sighting) => isAccepted(sighting) && sighting.condition !== 'used')
  return {
    productName: record.product.name,
    currency,
    asOf: record.asOf,
    stores: recordSteps(record.sightings, record.asOf)
      .map((steps) =>
        storeLine(
          steps,
          names.get(steps.storeId) ?? 'a store',
          record.views.find(({ storeId }) => storeId === steps.storeId),
        ),
      )
      .filter(({ marks }) => marks.length > 0),
    countedSightings: counted.length,
    reporters: new Set(counted.map(({ reporterId }) => reporterId)).size,
  }
}
