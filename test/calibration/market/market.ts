import { addDays, daysBetween, yearOf, type CivilDate } from '../../../core/dates.ts'
import type { MarketRecord } from '../../../core/pricing/outlook/market-record.ts'
import { randomOf } from '../random.ts'
import { drawLines, type Line } from './lines.ts'
import { drawParameters, type MarketTruth } from './parameters.ts'
import { recordOf } from './record.ts'
import { drawReports } from './reports.ts'
import { drawWindows, futureOf, LEAD_DAYS, openShops, type Path, type Shops, type Window } from './shops.ts'

/** As far as anything is forecast. */
export const DAYS_AHEAD = 120

/** What the shops ask from the day of the record (day 0) on, one product at one store. */
export interface Ahead {
  regular: Int32Array
  price: Int32Array
  /** 1 where a sale is on. */
  onSale: Uint8Array
}

/** A simulated market: what is known of it, what is true of it, and what came. */
export interface Market {
  index: number
  truth: MarketTruth
  windows: Window[]
  /** Lived up to and with the day of the record. */
  shops: Shops
  record: MarketRecord
  /** Day of the simulation that the record is of. */
  asOfDay: number
  lines: Line[]
  /** By product and store. */
  ahead: Ahead[][]
}

/** Kinds stand for nothing here but themselves: names that the catalog knows. */
const KIND_NAMES = ['heater', 'filter', 'light', 'tank'] as const
const YEAR_OF_RECORD = 2027

/**
 * The market of a seed and a place in the row. Each part draws from a stream of its own, named after seed, place and part: one more draw in one
 * of them moves nothing in the others, and markets next to each other share nothing.
 */
export function drawMarket(seed: string, index: number): Market {
  const stream = (part: string) => randomOf(`${seed}/${index}/${part}`)
  const truth = drawParameters(stream('parameters'))
  const asOf = addDays(`${YEAR_OF_RECORD}-01-01`, truth.asOfDayOfYear)
  const firstDay = addDays(asOf, -truth.historyDays - LEAD_DAYS)
  const asOfDay = truth.historyDays + LEAD_DAYS
  const dateOf = (day: number): CivilDate => addDays(firstDay, day)
  const newYears = Array.from({ length: YEAR_OF_RECORD + 2 - yearOf(firstDay) }, (_, year) =>
    daysBetween(firstDay, `${yearOf(firstDay) + year}-01-01`),
  )
  const windows = drawWindows(truth, newYears, stream('windows'))
  const shops = openShops(truth, windows, asOfDay + 1, stream('shops'))
  const reports = drawReports(truth, shops, { from: LEAD_DAYS, to: asOfDay }, stream('reports'))
  const record: MarketRecord = {
    sightings: recordOf(truth, reports, dateOf, stream('votes')),
    products: truth.products.map(({ id, kind }) => ({ id, kind: KIND_NAMES[truth.kinds.indexOf(kind)] ?? 'heater' })),
    windows: windows
      .filter(({ last }) => last >= LEAD_DAYS)
      .map(({ saleTime, store, first, last }) => ({
        saleTimeId: saleTime.id,
        storeId: truth.storeIds[store] as string,
        first: dateOf(first),
        last: dateOf(last),
      })),
    asOf,
  }
  return {
    index,
    truth,
    windows,
    shops,
    record,
    asOfDay,
    lines: drawLines(truth, record, stream('lines')),
    ahead: aheadOf(shops, futureOf(truth, windows, shops, { days: DAYS_AHEAD }, stream('future'))),
  }
}

/** Day 0 as it is, and the days of a future behind it. */
export function aheadOf(shops: Shops, future: Shops): Ahead[][] {
  const last = shops.days - 1
  return future.paths.map((ofProduct, product) =>
    ofProduct.map((path, store) => {
      const now = shops.paths[product]?.[store] as Path
      const regular = joined(now.regular[last] as number, path.regular)
      const price = joined(now.price[last] as number, path.price)
      const onSale = new Uint8Array(price.length)
      for (let day = 0; day < price.length; day += 1) onSale[day] = Number((price[day] as number) < (regular[day] as number))
      return { regular, price, onSale }
    }),
  )
}

function joined(first: number, rest: Int32Array): Int32Array {
  const all = new Int32Array(rest.length + 1)
  all[0] = first
  all.set(rest, 1)
  return all
}
