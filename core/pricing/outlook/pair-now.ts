import { daysBetween, type CivilDate } from '../../dates.ts'
import { isGone } from '../gone.ts'
import type { PriceView } from '../price-view.ts'
import { regularPrice } from '../regular-price.ts'
import { saleSpells } from '../sale-spells.ts'
import type { Sighting } from '../sighting.ts'
import { todayPrice } from '../today.ts'
import type { TrustOf } from '../trust.ts'
import { dayNumber } from './civil-day.ts'
import { gridTables } from './gap-tables.ts'
import type { SaleWindow } from './market-record.ts'
import { filterSales, partsOf, type Filtered, type TakesPart } from './sale-filter.ts'
import type { KnownPrice } from './printed-regular.ts'
import { saleSteps, type WindowDays } from './sale-steps.ts'
import { timelines } from './timeline.ts'
import type { Unwatched } from './unwatched.ts'

/** A window of a sale time as days from today: 0 is today. */
export interface WindowAhead {
  saleTimeId: string
  first: number
  last: number
}

/** The sale that was last reported, with no regular price reported since. */
export interface SaleNow {
  priceMinor: number
  /** Days from today to its last day as printed, negative if past; null where none was printed. */
  lastDay: number | null
}

/** How a product stands at a store on the day asked about. */
export interface PairNow {
  storeId: string
  /** Newest known regular price, one unit, as the store prints it, and the days since it was seen. */
  regularMinor: number
  regularAge: number
  /** Regular price printed on the newest sale tag that prints one; null where none does. */
  printed: KnownPrice | null
  todayMinor: number
  sale: SaleNow | null
  /** What is believed of a sale running unreported, by place of the grid. */
  believed: ReadonlyMap<number, Filtered>
  /** Windows that are open today, and those that come. */
  open: readonly WindowAhead[]
  coming: readonly WindowAhead[]
}

export interface PairQuestion {
  sightings: readonly Sighting[]
  storeIds: readonly string[]
  windows: readonly SaleWindow[]
  /** By store; a stretch that reaches to the day it was learnt on goes on. */
  unwatched: Readonly<Record<string, readonly Unwatched[]>>
  asOf: CivilDate
  until: CivilDate
  /** Places of the grid that stand for the product. */
  points: readonly number[]
  takesPart: (storeId: string) => TakesPart
  /** Weighs reports of one day that disagree. */
  trustOf: TrustOf
}

/** Today at each of the stores where a regular price is known (design rules 1 and 2), in the order of the store's id. */
export function pairsNow(question: PairQuestion): PairNow[] {
  const { sightings, storeIds, asOf, trustOf } = question
  const byStore = Map.groupBy(sightings, ({ storeId }) => storeId)
  return [...new Set(storeIds)].toSorted().flatMap((storeId): PairNow[] => {
    const ofStore = byStore.get(storeId) ?? []
    const regular = regularPrice(ofStore, asOf, trustOf)
    const today = todayPrice(ofStore, regular, asOf, trustOf)
    if (regular === undefined || today === undefined) return []
    const ahead = windowsAhead(question, storeId)
    const { sale, ...known } = salesNow(question, storeId, ofStore)
    return [
      {
        storeId,
        regularMinor: regular.priceMinor,
        regularAge: daysBetween(regular.seenOn, asOf),
        todayMinor: today.priceMinor,
        ...known,
        sale: endedSale(withStatedDay(sale, today, asOf), saleSpells(ofStore, asOf, trustOf).at(-1)?.goneOn, asOf),
        open: ahead.filter(({ first }) => first <= 0),
        coming: ahead.filter(({ first }) => first > 0),
      },
    ]
  })
}

/** The newest report may print no last day where an earlier one of the same sale did: then that one holds, as it does for today's price. */
function withStatedDay(
  sale: SaleNow | null,
  { holdsUntil, lastDayStated }: NonNullable<PriceView['today']>,
  asOf: CivilDate,
): SaleNow | null {
  if (sale === null || sale.lastDay !== null || !lastDayStated || holdsUntil === null) return sale
  return { ...sale, lastDay: daysBetween(asOf, holdsUntil) }
}

/** A sale that was found gone is over, whatever its tag said. */
const endedSale = (sale: SaleNow | null, goneOn: CivilDate | null | undefined, asOf: CivilDate): SaleNow | null =>
  sale !== null && goneOn && isGone(goneOn, asOf) ? { ...sale, lastDay: daysBetween(asOf, goneOn) - 1 } : sale

function salesNow(
  { windows, unwatched, asOf, points, takesPart, trustOf }: PairQuestion,
  storeId: string,
  ofStore: readonly Sighting[],
): Pick<PairNow, 'sale' | 'believed' | 'printed'> {
  const day = dayNumber(asOf)
  const reports = timelines(ofStore, day, trustOf)[0]?.reports ?? []
  const days: WindowDays[] = windows
    .filter((window) => window.storeId === storeId && window.first <= asOf)
    .map(({ saleTimeId, first, last }) => ({ saleTimeId, first: dayNumber(first), last: dayNumber(last) }))
  const steps = saleSteps(reports, { windows: days, unwatched: unwatched[storeId] ?? [] }, day)
  const believed = new Map<number, Filtered>()
  if (steps) {
    const parts = partsOf(steps, takesPart(storeId))
    for (const point of new Set(points)) believed.set(point, filterSales(steps, gridTables(point), parts))
  }
  const tag = reports.findLast(({ printedMinor }) => !Number.isNaN(printedMinor))
  const printed = tag ? { minor: tag.printedMinor, age: day - tag.day } : null
  const last = reports.at(-1)
  if (!last?.onSale) return { sale: null, believed, printed }
  return { printed, sale: { priceMinor: last.saleMinor, lastDay: printedLastDay(ofStore, last.day, day) }, believed }
}

function printedLastDay(ofStore: readonly Sighting[], seen: number, today: number): number | null {
  const printed = ofStore.filter(({ seenOn, lastDay, withdrawn }) => !withdrawn && lastDay !== null && dayNumber(seenOn) === seen)
  return printed.length === 0 ? null : Math.max(...printed.map(({ lastDay }) => dayNumber(lastDay as CivilDate))) - today
}

function windowsAhead({ windows, asOf, until }: PairQuestion, storeId: string): WindowAhead[] {
  return windows
    .filter((window) => window.storeId === storeId && window.last >= asOf && window.first <= until)
    .map(({ saleTimeId, first, last }) => ({ saleTimeId, first: daysBetween(asOf, first), last: daysBetween(asOf, last) }))
    .toSorted((a, b) => a.first - b.first || (a.saleTimeId < b.saleTimeId ? -1 : 1))
}

/** Whether a sale runs today for certain, for certain not, or may: by its printed last day. */
export const statedNow = (sale: SaleNow | null): 'runs' | 'over' | 'open' =>
  sale === null || sale.lastDay === null ? 'open' : sale.lastDay >= 0 ? 'runs' : 'over'
