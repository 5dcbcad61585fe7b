import { daysBetween, type CivilDate } from '../../dates.ts'
import type { Sighting } from '../sighting.ts'
import type { Ask, AskedLine, SeenDay, SeenOffer } from './ask.ts'
import { daysAhead } from './days-ahead.ts'
import { trustFrom } from '../trust.ts'
import { takesPartChance } from './takes-part.ts'
import type { KindLearned, Learned, ProductLearned } from './learned.ts'
import type { MarketRecord } from './market-record.ts'
import { pairsNow, type PairNow } from './pair-now.ts'
import { stopping, type StoppingDay } from './stopping.ts'

/** One line with what is known of it and the prices to buy at. */
export interface LinePlan {
  productId: string
  quantity: number
  /** Where a price is known: nowhere else is bought. Empty where nothing is known at all. */
  pairs: readonly PairNow[]
  kind: KindLearned
  kindName: string
  product: ProductLearned
  /** The whole line at a unit price, with tax and delivery. */
  costOf: (storeId: string, unitMinor: number) => number
  /** Least cost at regular prices today; NaN where nothing is known. */
  regularMinor: number
  /** Least cost today; NaN likewise. */
  todayMinor: number
  /** Price to buy at ÷ the regular price seen that day, today first, one entry a day; the last is the date, where anything is bought. */
  buyAtShare: Float64Array
  /** What waiting from today comes to for one who knows the record alone, waiting cost included. */
  waitingMinor: number
  days: readonly StoppingDay[]
}

export interface Plan {
  asOf: CivilDate
  until: CivilDate
  learned: Learned
  waitingCostPerDayMinor: number
  lines: readonly LinePlan[]
}

/** Nothing is told of prices beyond so many days: what is bought by a later day is taken to be bought by then. */
export const LONGEST_WAIT_DAYS = 366

/**
 * Prices to buy at for every line and day up to the date. A day of waiting is paid once for the whole purchase: each line bears of it what it
 * has of the saving that free waiting would bring, so that a line with nothing to gain holds up no other and is held up by none.
 *
 * `learned` may be older than `record`, whose day counts. Range: `until` not before `record.asOf`; one that is more than
 * `LONGEST_WAIT_DAYS` ahead counts as so many.
 */
export function planOf(learned: Learned, record: MarketRecord, ask: Ask): Plan {
  const byProduct = Map.groupBy(record.sightings, ({ productId }) => productId)
  const horizon = Math.min(LONGEST_WAIT_DAYS, Math.max(0, daysBetween(record.asOf, ask.until)))
  const bare = ask.lines.map((line) => bareLine(learned, record, ask, line, byProduct.get(line.productId) ?? []))
  const gains = bare.map((line) => (line.pairs.length === 0 || horizon === 0 ? 0 : gainOf(learned, line, horizon)))
  const whole = gains.reduce((sum, gain) => sum + gain, 0)
  const lines = bare.map((line, index) =>
    withPrices(learned, line, horizon, (ask.waitingCostPerDayMinor * (gains[index] as number)) / (whole || 1)),
  )
  return { asOf: record.asOf, until: ask.until, learned, waitingCostPerDayMinor: ask.waitingCostPerDayMinor, lines }
}

type BareLine = Omit<LinePlan, 'buyAtShare' | 'waitingMinor' | 'days'>

function bareLine(learned: Learned, record: MarketRecord, ask: Ask, line: AskedLine, sightings: readonly Sighting[]): BareLine {
  const { productId, quantity, priceOf = (_: string, unitMinor: number) => unitMinor } = line
  const product = learned.products[productId] ?? strangerOf(learned, record, productId)
  const kind = (learned.kinds[product.kind] ?? learned.kinds['any']) as KindLearned
  const pairs = pairsNow({
    sightings,
    storeIds: line.storeIds,
    windows: record.windows,
    unwatched: learned.unwatched,
    asOf: record.asOf,
    until: ask.until,
    points: product.points,
    trustOf: trustFrom(learned.trust),
    takesPart:
      (storeId) =>
      ({ open, window: { saleTimeId } }) =>
        takesPartChance(learned, product, storeId, saleTimeId, open),
  })
  const costOf = (storeId: string, unitMinor: number): number => quantity * priceOf(storeId, unitMinor)
  const least = (price: (pair: PairNow) => number): number =>
    pairs.length === 0 ? NaN : Math.min(...pairs.map((pair) => costOf(pair.storeId, price(pair))))
  return {
    productId,
    quantity,
    pairs,
    kind,
    kindName: product.kind,
    product,
    costOf,
    regularMinor: least(({ regularMinor }) => regularMinor),
    todayMinor: least(({ todayMinor }) => todayMinor),
  }
}

/** A product of which the snapshot knows nothing stands for its kind. */
function strangerOf(learned: Learned, record: MarketRecord, productId: string): ProductLearned {
  const kind = record.products.find(({ id }) => id === productId)?.kind ?? 'service'
  const { depth, part } = (learned.kinds[kind] ?? learned.kinds['any']) as KindLearned
  return { kind, points: [], kindShare: 1, depth: { mean: depth.mean, sd: depth.betweenSd }, part, reportDays: 0, saleDays: 0 }
}

/** What waiting would save if it were free, at least a thousandth of the price, so that whatever waits bears something. */
const gainOf = (learned: Learned, line: BareLine, horizon: number): number =>
  Math.max(line.todayMinor / 1000, line.todayMinor - stopping(daysAhead(learned, line, horizon, false), 0).waiting)

function withPrices(learned: Learned, line: BareLine, horizon: number, costPerDay: number): LinePlan {
  if (line.pairs.length === 0 || horizon === 0)
    return { ...line, buyAtShare: Float64Array.of(Infinity), waitingMinor: line.todayMinor, days: [] }
  const days = daysAhead(learned, line, horizon, false)
  const { waiting, buyAt } = stopping(days, costPerDay)
  const there = stopping(daysAhead(learned, line, horizon, true), costPerDay)
  const buyAtShare = new Float64Array(horizon + 1)
  buyAtShare[0] = shareOf(there.waiting, line.regularMinor, costPerDay)
  for (let day = 1; day < horizon; day += 1)
    buyAtShare[day] = shareOf(buyAt[day - 1] as number, (days[day - 1] as StoppingDay).regular, costPerDay)
  buyAtShare[horizon] = Infinity
  return { ...line, buyAtShare, waitingMinor: waiting, days }
}

/** Where waiting is free a regular price is never bought before the date: a share just under 1 says so. */
const FREE_SHARE = 0.999
const shareOf = (buyAt: number, regular: number, costPerDay: number): number =>
  costPerDay > 0 ? buyAt / regular : Math.min(FREE_SHARE, buyAt / regular)

/**
 * What a shopper who follows the advice does on a day with what she sees: buy each line at its least offer, or wait. A line without a
 * known price (`pairs` empty) and one without an offer that day waits. Offers of stores that are not among the line's `pairs` count for nothing.
 *
 * Lines that are bought already need no offers.
 */
export function decide(plan: Plan, { day, offers }: SeenDay): Array<'buy' | 'wait'> {
  return plan.lines.map((line) => {
    const seen = offers.filter(
      ({ productId, storeId }) => productId === line.productId && line.pairs.some((pair) => pair.storeId === storeId),
    )
    if (seen.length === 0) return 'wait'
    const least = (price: (offer: SeenOffer) => number): number =>
      Math.min(...seen.map((offer) => line.costOf(offer.storeId, price(offer))))
    const share = line.buyAtShare[Math.min(daysBetween(plan.asOf, day), line.buyAtShare.length - 1)] as number
    return least(({ priceMinor }) => priceMinor) <= share * least(({ regularMinor }) => regularMinor) ? 'buy' : 'wait'
  })
}
