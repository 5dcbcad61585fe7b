import { between, normal, wholeBetween, type Random } from '../random.ts'
import type { MarketTruth, ProductTruth, SaleTimeTruth } from './parameters.ts'
import { drawDepth, drawLength, tagPrice } from './sale.ts'

/** One occurrence of a sale time at one store, in days of the simulation, both included. */
export interface Window {
  saleTime: SaleTimeTruth
  store: number
  first: number
  last: number
}

/** What a product costs at a store, day by day. */
export interface Path {
  regular: Int32Array
  price: Int32Array
  /** Last day of the sale that runs on a day; −1 where none does. */
  saleEnds: Int32Array
}

/** All paths by product and store, and where each stands after its last day: a future is drawn on from there. */
export interface Shops {
  paths: Path[][]
  states: State[][]
  days: number
}

interface Running {
  priceMinor: number
  last: number
}
interface State {
  regular: number
  /** Regular price before it is rounded for the tag. */
  exact: number
  ordinary: Running | null
  atSaleTime: Running | null
}

/** Every occurrence of the sale times in `years` years that end with the asOf year and the next, a day or two off each year. */
export function drawWindows(truth: MarketTruth, firstDayOfYear: readonly number[], random: Random): Window[] {
  return firstDayOfYear.flatMap((newYear) =>
    truth.saleTimes.flatMap((saleTime) => {
      const moved = wholeBetween(random, -2, 2)
      return truth.storeIds.map((_, store) => {
        const first = newYear + saleTime.dayOfYear + moved + (random() < 0.2 ? 1 : 0)
        return { saleTime, store, first, last: first + saleTime.lengthDays - 1 }
      })
    }),
  )
}

const emptyPath = (days: number): Path => ({
  regular: new Int32Array(days),
  price: new Int32Array(days),
  saleEnds: new Int32Array(days).fill(-1),
})

/** Days lived before the first of the record, so that a sale may be running on it. */
export const LEAD_DAYS = 60

/** Shops from the lead days on, for so many days. */
export function openShops(truth: MarketTruth, windows: readonly Window[], days: number, random: Random): Shops {
  const states = truth.products.map((product) =>
    truth.storeIds.map((_, store): State => {
      const exact = product.firstRegularMinor[store] as number
      return { exact, regular: tagPrice(exact, truth.charmPrices), ordinary: null, atSaleTime: null }
    }),
  )
  return run(truth, windows, states, { from: 0, days }, random)
}

/**
 * One possible future of shops: what has begun goes on as it was settled, everything else is drawn anew. Arrays begin with the first day ahead.
 * Only the products asked for are lived through; others have no paths.
 */
export function futureOf(
  truth: MarketTruth,
  windows: readonly Window[],
  shops: Shops,
  { days, products }: { days: number; products?: ReadonlySet<number> },
  random: Random,
): Shops {
  return run(truth, windows, shops.states, { from: shops.days, days, products }, random)
}

function run(
  truth: MarketTruth,
  windows: readonly Window[],
  before: readonly State[][],
  { from, days, products }: { from: number; days: number; products?: ReadonlySet<number> },
  random: Random,
): Shops {
  const states = before.map((ofProduct) => ofProduct.map((state) => ({ ...state })))
  const isWanted = (product: number): boolean => products === undefined || products.has(product)
  const paths = truth.products.map((_, product) => (isWanted(product) ? truth.storeIds.map(() => emptyPath(days)) : []))
  const ahead = windows.filter(({ first }) => first >= from && first < from + days)
  const beginning = Map.groupBy(ahead, ({ first }) => first)
  for (let day = 0; day < days; day += 1) {
    const run = (beginning.get(from + day) ?? []).filter(({ saleTime, store }) => random() < (saleTime.runs[store] as number))
    truth.products.forEach((product, p) => {
      if (!isWanted(p)) return
      states[p]?.forEach((state, store) => {
        const window = run.find((each) => each.store === store)
        stepDay(truth, product, store, state, from + day, window, random)
        write(paths[p]?.[store] as Path, day, state, from)
      })
    })
  }
  return { paths, states, days: from + days }
}

function stepDay(
  { charmPrices, saleTimeDepth }: MarketTruth,
  product: ProductTruth,
  store: number,
  state: State,
  day: number,
  window: Window | undefined,
  random: Random,
): void {
  const { kind } = product
  if (random() < kind.changesPerYear / 365) {
    state.exact *= Math.exp(kind.changeMean + kind.changeSpread * normal(random))
    state.regular = tagPrice(state.exact, charmPrices)
  }
  const sale = (factor: number, last: number): Running => ({
    priceMinor: tagPrice(state.exact * (1 - drawDepth(product, factor, random)), charmPrices),
    last,
  })
  if (state.ordinary !== null && state.ordinary.last < day) state.ordinary = null
  else if (state.ordinary === null && random() < (product.startChance[store] as number))
    state.ordinary = sale(1, day + drawLength(kind, random) - 1)
  if (state.atSaleTime !== null && state.atSaleTime.last < day) state.atSaleTime = null
  if (window !== undefined && random() < product.takesPart) state.atSaleTime = sale(saleTimeDepth, window.last)
}

/** Of two sales at a time the lower price holds; a sale price that the regular price has fallen to is none any more. */
function write(path: Path, day: number, { regular, ordinary, atSaleTime }: State, from: number): void {
  const lower = ordinary !== null && (atSaleTime === null || ordinary.priceMinor <= atSaleTime.priceMinor) ? ordinary : atSaleTime
  const running = lower !== null && lower.priceMinor < regular ? lower : null
  path.regular[day] = regular
  path.price[day] = running?.priceMinor ?? regular
  path.saleEnds[day] = running ? running.last - from : -1
}

/** Stretches in which nobody reports from a store. */
export function drawGaps({ reporting, historyDays }: MarketTruth, random: Random): Array<{ first: number; last: number }> {
  const count = Math.round((reporting.gapsPerYear * historyDays) / 365)
  return Array.from({ length: count }, () => {
    const first = wholeBetween(random, 0, historyDays)
    return { first, last: first + Math.round(between(random, 20, 90)) }
  })
}
