import { openShops, LEAD_DAYS } from './market/shops.ts'
import { drawReports, type Report } from './market/reports.ts'
import type { KindTruth, MarketTruth } from './market/parameters.ts'
import { randomOf } from './random.ts'
import { ratioByMarket, type Estimate } from './statistics/by-market.ts'

/** One row of the table of what counting makes of true rates. */
export interface CountingCase {
  salesPerYear: number
  /** Shelf reports a year, and the chance a day of a report while a sale is on. */
  reportsPerYear: number
  reportsOnSale: number
}

const PRODUCTS = 400
const DAYS = 730
/** Sales of a week. */
const SALE_DAYS = 7
/**
 * A report is taken to vouch for the month behind it. The reference does not say what its counting took as exposure; a month is the reading that
 * gives its figures in both ways of reporting.
 */
const VOUCHED_DAYS = 30

/**
 * Sales a year as they are counted from reports: spells that were seen, over the days that reports vouch for. 400 products at one store for two years,
 * nothing in the way but the odd slip of a careful member: no sale times, no changes, no gaps. The standard error is by product.
 */
export function countedRate(setting: CountingCase, seed: string): Estimate {
  const truth = plainMarket(setting)
  const days = LEAD_DAYS + DAYS
  const shops = openShops(truth, [], days, randomOf(`${seed}/shops`))
  const reports = drawReports(truth, shops, { from: LEAD_DAYS, to: days - 1 }, randomOf(`${seed}/reports`))
  const byProduct = Map.groupBy(reports, ({ product }) => product)
  return ratioByMarket(
    truth.products.map((_, product) => {
      const own = byProduct.get(product) ?? []
      return { above: spellsSeen(own), below: vouchedDays(own, days) / 365, cases: own.length }
    }),
  )
}

function spellsSeen(reports: readonly Report[]): number {
  let spells = 0
  let last = Number.NEGATIVE_INFINITY
  for (const { day, condition } of reports) {
    if (condition === 'shelf' || condition === 'used') continue
    if (day > last + SALE_DAYS) spells += 1
    last = day
  }
  return spells
}

function vouchedDays(reports: readonly Report[], end: number): number {
  let vouched = 0
  let reached = 0
  for (const { day } of reports) {
    const until = Math.min(end, day + VOUCHED_DAYS)
    vouched += Math.max(0, until - Math.max(day, reached))
    reached = Math.max(reached, until)
  }
  return vouched
}

function plainMarket({ salesPerYear, reportsPerYear, reportsOnSale }: CountingCase): MarketTruth {
  const kind: KindTruth = {
    name: 'kind-0',
    salesPerYear,
    lengthFamily: 'fixed',
    meanLengthDays: SALE_DAYS,
    depth: 0.25,
    depthSpread: 0.2,
    depthInSteps: false,
    changesPerYear: 0,
    changeMean: 0,
    changeSpread: 0,
    takesPart: 0,
    reportsPerYear,
  }
  const product = {
    kind,
    startChance: [1 - Math.exp(-salesPerYear / 365)],
    depth: 0.25,
    takesPart: 0,
    firstRegularMinor: [10_000],
    reportsRegular: 1 - Math.exp(-reportsPerYear / 365),
    reportsOnSale,
  }
  return {
    kinds: [kind],
    products: Array.from({ length: PRODUCTS }, (_, index) => ({ ...product, id: `product-${index}` })),
    storeIds: ['store-0'],
    saleTimes: [],
    saleTimeDepth: 1,
    reporting: {
      saleRatio: 1,
      duplicates: 0,
      members: 1,
      carelessShare: 0,
      persistentlyCareless: 0,
      falseWasOnSale: [0],
      falseWasOnShelf: [0],
      gapsPerYear: 0,
    },
    historyDays: DAYS,
    charmPrices: false,
    asOfDayOfYear: 0,
  }
}

/** The table of the reference: setting, and what counting made of it there. */
export const COUNTING_TABLE: ReadonlyArray<CountingCase & { there: number }> = [
  { salesPerYear: 1, reportsPerYear: 2, reportsOnSale: 0.3, there: 4.4 },
  { salesPerYear: 3, reportsPerYear: 2, reportsOnSale: 0.3, there: 7.9 },
  { salesPerYear: 6, reportsPerYear: 2, reportsOnSale: 0.3, there: 9.8 },
  { salesPerYear: 1, reportsPerYear: 12, reportsOnSale: 0.05, there: 0.47 },
  { salesPerYear: 3, reportsPerYear: 12, reportsOnSale: 0.05, there: 1.4 },
  { salesPerYear: 6, reportsPerYear: 12, reportsOnSale: 0.05, there: 2.5 },
]
