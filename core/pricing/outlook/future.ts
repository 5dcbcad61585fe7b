import { clampDepth } from './days-ahead.ts'
import { STAGES } from './gap-tables.ts'
import type { KindLearned } from './learned.ts'
import { statedNow, type PairNow, type WindowAhead } from './pair-now.ts'
import { LONGEST_WAIT_DAYS, type LinePlan, type Plan } from './plan.ts'
import { regularStart, type RegularStart } from './printed-regular.ts'
import { drawBeta, drawDaysUntil, drawGamma, drawNormal, randomOf, type Random } from './random.ts'
import { gridPoint, startChance } from './sale-grid.ts'
import { runsOf } from './takes-part.ts'

/** What is common to a kind in one future. */
interface KindDraw {
  changeChance: number
  sizeShift: number
  depthShift: number
  rateShift: number
}

/** Draws of what is paid for each line under the advice by one who does not buy today. */
export interface Futures {
  paid: Float64Array[]
  /** Share of futures in which a sale is seen at any of the line's stores by the date, 0 to 1. */
  chanceOfSale: number[]
}

/**
 * Futures of all lines at once: in each, a store runs a sale time for all its lines or for none, and what is uncertain about a kind is the
 * same for all lines of the kind. Parameters are drawn from what is believed of them.
 *
 * The same seed gives the same figures; a further line does not shift those of the others. A horizon of more than `LONGEST_WAIT_DAYS` counts as so
 * many, as it does in the plan.
 */
export function drawFutures(plan: Plan, horizon: number, draws: number, seed: number): Futures {
  const kinds = new Map(plan.lines.map(({ kindName, kind }) => [kindName, { kind, random: randomOf(seed, `kind ${kindName}`) }]))
  const runs = windowRuns(plan, seed)
  const paths = plan.lines.map((line) => linePath(line, Math.min(horizon, LONGEST_WAIT_DAYS), seed))
  const paid = plan.lines.map(() => new Float64Array(draws))
  const sales = plan.lines.map(() => 0)
  for (let draw = 0; draw < draws; draw += 1) {
    const kindDraws = new Map([...kinds].map(([name, { kind, random }]) => [name, drawKind(kind, random)]))
    const running = runs()
    plan.lines.forEach((line, index) => {
      const one = paths[index]?.(kindDraws.get(line.kindName) as KindDraw, running)
      ;(paid[index] as Float64Array)[draw] = one?.paid ?? NaN
      if (one?.sale) sales[index] = (sales[index] as number) + 1
    })
  }
  return { paid, chanceOfSale: sales.map((count) => count / draws) }
}

function drawKind({ changes, depth, logRate }: KindLearned, random: Random): KindDraw {
  return {
    changeChance: Math.min(0.2, drawGamma(random, changes.shape) / changes.days),
    sizeShift: drawNormal(random) * changes.meanError,
    depthShift: drawNormal(random) * depth.meanError,
    rateShift: drawNormal(random) * logRate.error,
  }
}

const windowKey = (storeId: string, { saleTimeId, first }: WindowAhead): string => `${storeId} ${saleTimeId} ${first}`

/** For each future, which windows their stores run. */
function windowRuns(plan: Plan, seed: number): () => Map<string, boolean> {
  const stores = new Map<string, { random: Random; windows: Map<string, WindowAhead> }>()
  for (const { pairs } of plan.lines)
    for (const { storeId, coming } of pairs)
      for (const window of coming) {
        const name = `${storeId} ${window.saleTimeId}`
        const store = stores.get(name) ?? { random: randomOf(seed, `runs ${name}`), windows: new Map<string, WindowAhead>() }
        store.windows.set(windowKey(storeId, window), window)
        stores.set(name, store)
      }
  return () => {
    const running = new Map<string, boolean>()
    for (const [name, { random, windows }] of stores) {
      const [storeId = '', saleTimeId = ''] = name.split(' ')
      const chance = drawBeta(random, ...runsOf(plan.learned, storeId, saleTimeId))
      for (const [key, { first }] of windows) running.set(key, random() < (first <= 0 ? (plan.learned.running[name] ?? chance) : chance))
    }
    return running
  }
}

/** Days of a sale ahead that has so many stages before it, today counted. */
const saleDays = (random: Random, lengthDays: number, stages: number): number =>
  Math.max(1, Math.ceil((drawGamma(random, stages) * lengthDays) / STAGES))

type LinePath = (kind: KindDraw, running: ReadonlyMap<string, boolean>) => { paid: number; sale: boolean }

function linePath(line: LinePlan, horizon: number, seed: number): LinePath {
  const { product, pairs, costOf, buyAtShare } = line
  const random = randomOf(seed, `product ${line.productId}`)
  const streams = pairs.map(({ storeId }) => randomOf(seed, `pair ${line.productId} ${storeId}`))
  const starts = pairs.map(({ regularMinor, regularAge, printed }) =>
    regularStart({ minor: regularMinor, age: regularAge }, printed, line.kind.changes),
  )
  // What is uncertain of the kind's depth moves a product by what it has of the kind's.
  const depthShare = Math.min(1, (product.depth.sd / line.kind.depth.betweenSd) ** 2)
  const least = new Float64Array(horizon + 1)
  const leastRegular = new Float64Array(horizon + 1)
  const regular = new Float64Array(horizon + 1)
  const offer = new Float64Array(horizon + 1)
  return (kind, running) => {
    if (pairs.length === 0) return { paid: NaN, sale: false }
    const point = product.points[Math.floor(random() * product.points.length)]
    const { ratePerYear, lengthDays } = point === undefined ? strangePoint(line.kind, random) : gridPoint(point)
    const own: OwnDraw = {
      point,
      chance: startChance(ratePerYear * Math.exp(kind.rateShift * product.kindShare)),
      lengthDays,
      depth: product.depth.mean + drawNormal(random) * product.depth.sd + kind.depthShift * depthShare,
      part: drawBeta(random, ...product.part),
    }
    least.fill(Infinity)
    leastRegular.fill(Infinity)
    let sale = false
    pairs.forEach((pair, index) => {
      const stream = streams[index] as Random
      drawRegular(stream, starts[index] as RegularStart, line.kind, kind, regular)
      sale = drawOffers(stream, pair, line.kind, own, running, regular, offer) || sale
      for (let day = 1; day <= horizon; day += 1) {
        least[day] = Math.min(least[day] as number, costOf(pair.storeId, offer[day] as number))
        leastRegular[day] = Math.min(leastRegular[day] as number, costOf(pair.storeId, regular[day] as number))
      }
    })
    let day = 1
    while (day < horizon && (least[day] as number) > (buyAtShare[day] as number) * (leastRegular[day] as number)) day += 1
    return { paid: least[Math.min(day, horizon)] as number, sale }
  }
}

interface OwnDraw {
  /** Place in the grid; none for a product without a record. */
  point: number | undefined
  chance: number
  lengthDays: number
  depth: number
  part: number
}

function strangePoint({ logRate }: KindLearned, random: Random): { ratePerYear: number; lengthDays: number } {
  return { ratePerYear: Math.exp(logRate.mean + drawNormal(random) * logRate.sd), lengthDays: 8 }
}

/** A regular price rises or falls within a year to no more than so many times, or one in so many, of what it is: from memory, and generous. */
const MOST_CHANGE = 4

/** The regular price on each day ahead: it may have changed since it was seen, and goes on changing (design rule 1). */
function drawRegular(
  random: Random,
  { shelf, printed, chance }: RegularStart,
  { changes }: KindLearned,
  kind: KindDraw,
  into: Float64Array,
): void {
  const sizes = changes.sizesLog
  const size = (): number => Math.exp((sizes[Math.floor(random() * sizes.length)] ?? 0) + kind.sizeShift)
  const start = random() < chance ? printed : shelf
  let price = start.minor
  let next = drawDaysUntil(random, kind.changeChance) - start.age
  for (let day = 0; day < into.length; day += 1) {
    while (next <= day) {
      price = Math.min(start.minor * MOST_CHANGE, Math.max(start.minor / MOST_CHANGE, price * size()))
      next += drawDaysUntil(random, kind.changeChance)
    }
    into[day] = Math.max(1, Math.round(price))
  }
}

/** What the store asks on each day ahead: the regular price, or less while a sale runs. True where any sale is seen. */
function drawOffers(
  random: Random,
  pair: PairNow,
  { depth }: KindLearned,
  own: OwnDraw,
  running: ReadonlyMap<string, boolean>,
  regular: Float64Array,
  offer: Float64Array,
): boolean {
  let seen = false
  offer.set(regular)
  const lower = (first: number, last: number, price: number): void => {
    for (let day = Math.max(0, first); day <= last && day < offer.length; day += 1) {
      offer[day] = Math.min(offer[day] as number, price)
      if (day > 0) seen = true
    }
  }
  const priceOn = (day: number): number => {
    const residual = depth.residuals[Math.floor(random() * depth.residuals.length)] ?? 0
    return Math.max(1, Math.round((regular[Math.max(0, day)] as number) * (1 - clampDepth(own.depth + residual))))
  }
  const now = saleNow(random, pair, own)
  if (now >= 0) lower(0, now, pair.sale?.priceMinor ?? priceOn(0))
  let day = Math.max(0, now)
  for (day += drawDaysUntil(random, own.chance); day < offer.length; day += drawDaysUntil(random, own.chance)) {
    const last = day + saleDays(random, own.lengthDays, STAGES) - 1
    lower(day, last, priceOn(day))
    day = last
  }
  for (const window of pair.coming)
    if (running.get(windowKey(pair.storeId, window)) === true && random() < own.part)
      lower(window.first, window.last, priceOn(window.first))
  return seen
}

/** Last day of the sale that runs today, reported or not, 0 being today; −1 where none runs. */
function saleNow(random: Random, { sale, believed, open }: PairNow, { point, lengthDays }: OwnDraw): number {
  const stated = statedNow(sale)
  if (stated === 'runs') return sale?.lastDay ?? 0
  const filtered = point === undefined ? undefined : believed.get(point)
  if (stated === 'over' || filtered === undefined) return -1
  let left = random() - filtered.inWindow
  if (left < 0) return Math.max(0, ...open.map(({ last }) => last))
  for (let stage = 1; stage <= STAGES; stage += 1) {
    left -= filtered.state[stage] as number
    if (left < 0) return saleDays(random, lengthDays, STAGES + 1 - stage) - 1
  }
  return -1
}
