import { addDays, daysBetween, type CivilDate } from '../../dates.ts'
import type { Ask } from './ask.ts'
import { drawFutures } from './future.ts'
import type { Learned } from './learned.ts'
import type { MarketRecord, SaleWindow } from './market-record.ts'
import { likelyPaid, type Likely } from './likely.ts'
import type { SaleNow } from './pair-now.ts'
import { planOf, type LinePlan } from './plan.ts'

export type Advice = 'buy_now' | 'no_hurry' | 'buy_when_convenient' | 'wait'

/** What to expect of one line. Amounts in minor units for the whole line, with tax and its own delivery; NaN where no price is known. */
export interface LineOutlook {
  productId: string
  quantity: number
  advice: Advice
  /** Last day of the sale that runs, at most the date, where it need not be bought at once. */
  noHurryUntil: CivilDate | null
  /** Printed last day of the sale that today's price is of; null where it is of none, or none is printed. Never past. */
  saleLastDay: CivilDate | null
  payTodayMinor: number
  /** Today's price is that of a sale that runs. */
  onSale: boolean
  /** The line at shelf prices, as they are today and as they are expected on the date. */
  regularMinor: number
  regularAtDateMinor: number
  /** What is paid by one who follows the advice: mean, and what one in ten pays less, or more, than. */
  expectedPaidMinor: number
  paid10Minor: number
  paid90Minor: number
  /** Chance that a sale is seen at one of its stores by the date. */
  chanceOfSale: number
  /** Where the advice is to wait: so many in so many pay at most this. */
  likely: Likely | null
  /** What the tag of one then shows at most; null where there is no such share, or where its stores print tax differently. */
  likelyTagMinor: number | null
  /** At or under this one buys, today and on a day of the plan, at regular prices as they are now. */
  priceToBuyAtMinor: number
  priceToBuyAt: (day: CivilDate) => number
  /** The same today as a tag shows it: one unit, as the store prints it; of several stores the lowest that it comes to. NaN where no price is known. */
  buyAtTagMinor: number
  /** The tag says the same at every store where it is sold: none prints tax in it where another adds it, or adds more. */
  tagsAgree: boolean
  /** The next window of a sale time at one of its stores. */
  nextSaleTime: SaleWindow | null
  /** Rests on the product's own record, on its kind's, or on too little to say more than today's price. */
  basis: 'record' | 'kind' | 'too_little'
}

export interface Outlook {
  lines: LineOutlook[]
  /** All lines with a known price together. `draws` are totals under the advice. */
  total: { payTodayMinor: number; expectedPaidMinor: number; paid10Minor: number; paid90Minor: number; draws: Float64Array }
}

/** *Wait* is said only where it is expected to save as much (design rule 6). */
const LEAST_SAVING = 0.03
/** So many sale days of its own are a record; as many of the kind are something to go by. */
const OWN_SALE_DAYS = 3

/** What to expect of a purchase, in figures; `sayAdvice` puts a line into words. The same seed gives the same figures. */
export function outlookOf(learned: Learned, record: MarketRecord, ask: Ask): Outlook {
  const plan = planOf(learned, record, ask)
  const horizon = Math.max(0, daysBetween(record.asOf, ask.until))
  const futures = horizon === 0 ? null : drawFutures(plan, horizon, ask.draws, ask.seed)
  const total = new Float64Array(ask.draws)
  let payTodayMinor = 0
  const lines = plan.lines.map((line, index) => {
    const waited = futures?.paid[index]
    const advice = adviceFor(line, horizon, waited, ask.leastSavingMinor ?? 0)
    const paid = advice === 'wait' && waited ? waited : new Float64Array(ask.draws).fill(line.todayMinor)
    if (line.pairs.length > 0) {
      payTodayMinor += line.todayMinor
      paid.forEach((amount, draw) => (total[draw] = (total[draw] as number) + amount))
    }
    return lineOutlook(record, ask.until, line, { advice, paid, chanceOfSale: futures?.chanceOfSale[index] ?? 0 })
  })
  return { lines, total: { payTodayMinor, ...rangeOf(total), draws: total } }
}

interface Told {
  advice: Advice
  paid: Float64Array
  chanceOfSale: number
}

/**
 * On the date itself nothing is left to wait for, and nobody waits on a guess: of what is recorded too little, today's price stands. The saving
 * must be there both in the plan, with what waiting costs, and in the figures that are told beside the advice.
 */
function adviceFor(line: LinePlan, horizon: number, waited: Float64Array | undefined, leastSavingMinor: number): Advice {
  if (line.pairs.length === 0) return 'buy_when_convenient'
  if (horizon === 0) return 'buy_now'
  const saving = line.todayMinor - Math.max(line.waitingMinor, waited ? meanOf(waited) : -Infinity)
  if (basisOf(line) !== 'too_little' && saving >= LEAST_SAVING * line.todayMinor && saving > leastSavingMinor) return 'wait'
  const sale = saleOfToday(line)
  if (!sale) return 'buy_when_convenient'
  return sale.lastDay !== null && sale.lastDay > 0 ? 'no_hurry' : 'buy_now'
}

/** The sale that today's least cost is a price of, of several the one that lasts longest; undefined where it is a regular price. */
function saleOfToday({ pairs, costOf, todayMinor }: LinePlan): SaleNow | undefined {
  const running = pairs.flatMap(({ storeId, sale, todayMinor: here, regularMinor }) =>
    sale !== null && (sale.lastDay ?? 0) >= 0 && here < regularMinor && costOf(storeId, here) === todayMinor ? [sale] : [],
  )
  return running.toSorted((a, b) => (b.lastDay ?? -1) - (a.lastDay ?? -1))[0]
}

function lineOutlook(record: MarketRecord, until: CivilDate, line: LinePlan, told: Told): LineOutlook {
  const { advice, paid, chanceOfSale } = told
  const sale = saleOfToday(line)
  const lastDay = sale?.lastDay ?? null
  const saleLastDay = lastDay === null ? null : addDays(record.asOf, lastDay)
  const priceToBuyAtMinor = buyAt(line, advice, 0)
  const tags = tagsOf(line, priceToBuyAtMinor)
  const likely = advice === 'wait' ? likelyPaid(paid, line.todayMinor, priceToBuyAtMinor) : null
  return {
    productId: line.productId,
    quantity: line.quantity,
    advice,
    noHurryUntil: advice === 'no_hurry' && saleLastDay !== null ? (saleLastDay < until ? saleLastDay : until) : null,
    saleLastDay,
    payTodayMinor: line.todayMinor,
    onSale: sale !== undefined,
    regularMinor: line.regularMinor,
    regularAtDateMinor: line.days.at(-1)?.regular ?? line.regularMinor,
    ...rangeOf(paid),
    chanceOfSale,
    likely,
    likelyTagMinor: likely && oneTagOf(line, likely.paidMinor),
    priceToBuyAtMinor,
    priceToBuyAt: (day) => buyAt(line, advice, daysBetween(record.asOf, day)),
    buyAtTagMinor: Math.min(...(tags.length === 0 ? [NaN] : tags)),
    tagsAgree: new Set(tags).size === 1,
    nextSaleTime: nextWindow(record, line),
    basis: basisOf(line),
  }
}

/**
 * On the date, and where waiting costs more than it brings, the regular price itself is paid. Where the advice is to wait, today's price is
 * not one to buy at: then it is what waiting comes to, which is less. Where it is not, today's price is one, to the cent that it comes to.
 */
function buyAt({ buyAtShare, regularMinor, todayMinor, waitingMinor }: LinePlan, advice: Advice, day: number): number {
  const at = Math.min(Math.max(0, day), buyAtShare.length - 1)
  const priceMinor = Math.floor(Math.min(1, buyAtShare[at] as number) * regularMinor)
  if (at > 0) return priceMinor
  if (advice !== 'wait') return Math.max(priceMinor, todayMinor)
  return priceMinor >= todayMinor ? Math.floor(waitingMinor) : priceMinor
}

/** What tags show where the line comes to that; null where they differ from store to store, since then no one tag is meant. */
function oneTagOf(line: LinePlan, costMinor: number): number | null {
  const [tag, ...others] = new Set(tagsOf(line, costMinor))
  return tag === undefined || others.length > 0 ? null : tag
}

/** The highest price on a tag at which the whole line comes to no more than that, at each of its stores. */
function tagsOf({ pairs, costOf, quantity }: LinePlan, costMinor: number): number[] {
  return pairs.map(({ storeId }) => {
    let [low, high] = [0, Math.floor(costMinor / quantity)]
    while (low < high) {
      const middle = Math.ceil((low + high) / 2)
      if (costOf(storeId, middle) <= costMinor) low = middle
      else high = middle - 1
    }
    return low
  })
}

function basisOf({ pairs, product, kind }: LinePlan): LineOutlook['basis'] {
  if (pairs.length === 0) return 'too_little'
  if (product.saleDays >= OWN_SALE_DAYS) return 'record'
  return kind.saleDays >= OWN_SALE_DAYS ? 'kind' : 'too_little'
}

function nextWindow({ windows, asOf }: MarketRecord, { pairs }: LinePlan): SaleWindow | null {
  const stores = new Set(pairs.map(({ storeId }) => storeId))
  const coming = windows.filter(({ storeId, last }) => stores.has(storeId) && last >= asOf)
  return coming.toSorted((a, b) => (a.first === b.first ? (a.storeId < b.storeId ? -1 : 1) : a.first < b.first ? -1 : 1))[0] ?? null
}

/** Mean and the tenths at either end, in whole minor units. */
function rangeOf(draws: Float64Array): { expectedPaidMinor: number; paid10Minor: number; paid90Minor: number } {
  const sorted = draws.toSorted()
  const at = (share: number): number => Math.round(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN)
  return { expectedPaidMinor: Math.round(meanOf(draws)), paid10Minor: at(0.1), paid90Minor: at(0.9) }
}

const meanOf = (draws: Float64Array): number => draws.reduce((sum, amount) => sum + amount, 0) / draws.length
