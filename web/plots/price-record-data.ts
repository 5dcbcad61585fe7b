import { addDays, type CivilDate } from '../../core/dates.ts'
import { foundGone } from '../../core/pricing/gone.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import type { PriceRecord } from '../../core/pricing/record.ts'
import { recordSteps, type RecordSteps } from '../../core/pricing/record-steps.ts'
import { isAccepted } from '../../core/pricing/sighting.ts'

/** A stretch of days at one price. `to` is the first day after it. */
export interface PriceRun {
  from: CivilDate
  to: CivilDate
  priceMinor: number
  kind: 'regular' | 'sale'
  /** Of a sale: the shelf price then, where it is known. */
  regularMinor: number | null
  /** Of a running sale: its last day is the usual rule's, not the tag's. */
  assumed: boolean
}
/** One counted sighting. */
export interface PriceMark {
  on: CivilDate
  priceMinor: number
  kind: 'shelf' | 'sale'
}
export interface StoreLine {
  storeId: string
  name: string
  /** In order of time; days nobody knows a price for are left out. */
  runs: PriceRun[]
  marks: PriceMark[]
  /** First day from which what was seen last is gone; null where nobody found it so. */
  goneOn?: CivilDate | null
}

/** What is paid by a day following the advice: expected, and where 8 of 10 outcomes lie. */
export interface PriceAhead {
  until: CivilDate
  lowMinor: number
  expectedMinor: number
  highMinor: number
}

/** What a price record plot shows: new goods only, as each store prints them. */
export interface PriceRecordData {
  productName: string
  currency: string
  asOf: CivilDate
  stores: StoreLine[]
  countedSightings: number
  reporters: number
  /** Absent: nothing is expected, and the plot ends soon after today. */
  ahead?: PriceAhead | undefined
}

/** A stretch of days with what was there before cut out of it. */
function outside(run: PriceRun, dips: readonly PriceRun[]): PriceRun[] {
  return dips.reduce<PriceRun[]>(
    (left, dip) =>
      left.flatMap((piece) => {
        if (dip.to <= piece.from || dip.from >= piece.to) return [piece]
        const before = dip.from > piece.from ? [{ ...piece, to: dip.from }] : []
        const after = dip.to < piece.to ? [{ ...piece, from: dip.to }] : []
        return [...before, ...after]
      }),
    [run],
  )
}

/** One store's runs: shelf prices with the sales let into them. A sale that is running goes on to the last day it is taken to hold. */
function runsOf(record: RecordSteps, asOf: CivilDate, view: PriceView | undefined): PriceRun[] {
  const dips = record.dips.map((dip): PriceRun => {
    const running = dip.until === asOf
    const runs = running ? (view?.today?.holdsUntil ?? asOf) : dip.until
    return {
      from: dip.from,
      to: addDays(runs, 1),
      priceMinor: dip.priceMinor,
      kind: 'sale',
      regularMinor: dip.regularMinor,
      assumed: running && view?.today?.lastDayStated === false,
    }
  })
  const shelf = record.steps.map((step): PriceRun => ({
    from: step.from,
    to: addDays(step.until, 1),
    priceMinor: step.priceMinor,
    kind: 'regular',
    regularMinor: null,
    assumed: false,
  }))
  return [...shelf.flatMap((run) => outside(run, dips)), ...dips].sort((a, b) => (a.from < b.from ? -1 : 1))
}

const marksOf = (record: RecordSteps): PriceMark[] =>
  record.points
    .filter((point) => point.accepted && point.condition !== 'used')
    .map((point) => ({ on: point.seenOn, priceMinor: point.priceMinor, kind: point.condition === 'shelf' ? 'shelf' : 'sale' }))

/** A product's record made ready for the plot: stores in order of their names, so that each keeps its dash and marker. */
export function priceRecordData(record: Pick<PriceRecord, 'product' | 'sightings' | 'views' | 'asOf'>, currency: string): PriceRecordData {
  const { sightings, views, asOf } = record
  const counted = sightings.filter((sighting) => sighting.condition !== 'used' && isAccepted(sighting) && sighting.seenOn <= asOf)
  const stores = recordSteps(sightings, asOf)
    .map((steps) => ({
      storeId: steps.storeId,
      name: sightings.find((sighting) => sighting.storeId === steps.storeId)?.storeName ?? '',
      runs: runsOf(
        steps,
        asOf,
        views.find((view) => view.storeId === steps.storeId),
      ),
      marks: marksOf(steps),
      goneOn: foundGone(counted.filter(({ storeId }) => storeId === steps.storeId)),
    }))
    .filter((store) => store.runs.length + store.marks.length > 0)
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0))
  const reporters = new Set(counted.map((sighting) => sighting.reporterId)).size
  return { productName: record.product.name, currency, asOf, stores, countedSightings: counted.length, reporters }
}
