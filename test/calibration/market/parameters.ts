import { between, logBetween, logistic, logitOf, normal, pick, wholeBetween, type Random } from '../random.ts'

/** Families of sale length. None of them is what an estimator may take for granted in all markets. */
export const LENGTH_FAMILIES = ['stages', 'geometric', 'fixed', 'short_or_long', 'even'] as const
export type LengthFamily = (typeof LENGTH_FAMILIES)[number]

/** What is true of a kind of product in one market. */
export interface KindTruth {
  name: string
  /** Ordinary sales a year and store, median of its products. */
  salesPerYear: number
  lengthFamily: LengthFamily
  meanLengthDays: number
  /** Middle of the depths, and how much one sale differs from another of the same product (in logits). */
  depth: number
  depthSpread: number
  /** True where discounts come in steps of 5 %. */
  depthInSteps: boolean
  /** Changes of the regular price a year; mean and spread of the change of its logarithm. */
  changesPerYear: number
  changeMean: number
  changeSpread: number
  /** Chance that a product takes part in a sale time that its store runs, median. */
  takesPart: number
  /** Shelf reports a year of one product at one store, median. */
  reportsPerYear: number
}

export interface ProductTruth {
  id: string
  kind: KindTruth
  /** Chance a day that an ordinary sale starts, by store. */
  startChance: number[]
  depth: number
  takesPart: number
  /** Regular price on the first day, by store; minor units. */
  firstRegularMinor: number[]
  /** Chance a day of a report while the price is regular, and while it is on sale. */
  reportsRegular: number
  reportsOnSale: number
}

/** A time of the year at which stores hold sales; its day of the year, length, and the chance that each store runs it. */
export interface SaleTimeTruth {
  id: string
  dayOfYear: number
  lengthDays: number
  runs: number[]
}

/** How the members of one market report. */
export interface ReportingTruth {
  /** How many times likelier a report is on a sale day. */
  saleRatio: number
  /** Further reports of the same price, on average. */
  duplicates: number
  members: number
  /** Share of members who are careless now and then; number of those who are so all the time. */
  carelessShare: number
  persistentlyCareless: number
  /** By store: share of printed "was" prices that never were; share of shelf tags that print one. */
  falseWasOnSale: number[]
  falseWasOnShelf: number[]
  /** Stretches of silence a store and year. */
  gapsPerYear: number
}

export interface MarketTruth {
  kinds: KindTruth[]
  products: ProductTruth[]
  storeIds: string[]
  saleTimes: SaleTimeTruth[]
  /** How much deeper sale times go than ordinary sales, as a factor on the depth. */
  saleTimeDepth: number
  reporting: ReportingTruth
  historyDays: number
  /** Prices end in 99. */
  charmPrices: boolean
  /** Days from 1 January of the year that the record ends in. */
  asOfDayOfYear: number
}

function kindTruth(random: Random, index: number): KindTruth {
  return {
    name: `kind-${index}`,
    salesPerYear: logBetween(random, 0.7, 6),
    lengthFamily: pick(random, LENGTH_FAMILIES),
    meanLengthDays: logBetween(random, 4, 16),
    depth: between(random, 0.12, 0.35),
    depthSpread: between(random, 0.15, 0.45),
    depthInSteps: random() < 0.5,
    changesPerYear: logBetween(random, 0.4, 3),
    changeMean: between(random, -0.01, 0.04),
    changeSpread: between(random, 0.03, 0.09),
    takesPart: between(random, 0.08, 0.5),
    reportsPerYear: logBetween(random, 3, 24),
  }
}

/** Spread of products within their kind, and of stores within a product: shares in log for rates, in logits for chances. */
const RATE_SPREAD = 0.4
const STORE_RATE_SPREAD = 0.15
const DEPTH_SPREAD = 0.3
const PART_SPREAD = 0.6
const REPORT_SPREAD = 0.4
const STORE_PRICE_SPREAD = 0.06
/** Even a deal that everybody talks about is not reported every day. */
const MOST_REPORTS_A_DAY = 0.6

function productTruth(random: Random, id: string, kind: KindTruth, stores: number, saleRatio: number): ProductTruth {
  const rate = kind.salesPerYear * Math.exp(RATE_SPREAD * normal(random))
  const price = logBetween(random, 500, 40_000)
  const reportsRegular = 1 - Math.exp((-kind.reportsPerYear * Math.exp(REPORT_SPREAD * normal(random))) / 365)
  return {
    id,
    kind,
    startChance: Array.from({ length: stores }, () => 1 - Math.exp((-rate * Math.exp(STORE_RATE_SPREAD * normal(random))) / 365)),
    depth: logistic(logitOf(kind.depth) + DEPTH_SPREAD * normal(random)),
    takesPart: logistic(logitOf(kind.takesPart) + PART_SPREAD * normal(random)),
    firstRegularMinor: Array.from({ length: stores }, () => price * Math.exp(STORE_PRICE_SPREAD * normal(random))),
    reportsRegular,
    reportsOnSale: Math.min(MOST_REPORTS_A_DAY, reportsRegular * saleRatio),
  }
}

function saleTimeTruth(random: Random, id: string, storeRuns: readonly number[]): SaleTimeTruth {
  const known = 0.6 * normal(random)
  return {
    id,
    dayOfYear: wholeBetween(random, 0, 364),
    lengthDays: wholeBetween(random, 3, 10),
    runs: storeRuns.map((runs) => logistic(logitOf(runs) + known)),
  }
}

function reportingTruth(random: Random, stores: number): ReportingTruth {
  return {
    saleRatio: logBetween(random, 1, 100),
    duplicates: between(random, 0, 1.5),
    members: wholeBetween(random, 8, 40),
    carelessShare: between(random, 0, 0.2),
    persistentlyCareless: random() < 0.5 ? wholeBetween(random, 1, 2) : 0,
    falseWasOnSale: Array.from({ length: stores }, () => between(random, 0, 0.15)),
    falseWasOnShelf: Array.from({ length: stores }, () => (random() < 0.3 ? between(random, 0, 0.03) : 0)),
    gapsPerYear: between(random, 0, 1.5),
  }
}

/** All that is true of one market, drawn from its seed: what an estimator sees only through reports. */
export function drawParameters(random: Random): MarketTruth {
  const storeIds = Array.from({ length: wholeBetween(random, 2, 4) }, (_, index) => `store-${index}`)
  const kinds = Array.from({ length: wholeBetween(random, 2, 3) }, (_, index) => kindTruth(random, index))
  const reporting = reportingTruth(random, storeIds.length)
  const products = kinds.flatMap((kind) =>
    Array.from({ length: wholeBetween(random, 6, 12) }, (_, index) =>
      productTruth(random, `${kind.name}-${index}`, kind, storeIds.length, reporting.saleRatio),
    ),
  )
  const storeRuns = storeIds.map(() => between(random, 0.15, 0.75))
  return {
    kinds,
    products,
    storeIds,
    saleTimes: Array.from({ length: wholeBetween(random, 2, 5) }, (_, index) => saleTimeTruth(random, `time-${index}`, storeRuns)),
    saleTimeDepth: between(random, 1, 1.25),
    reporting,
    historyDays: wholeBetween(random, 365, 900),
    charmPrices: random() < 0.5,
    asOfDayOfYear: wholeBetween(random, 0, 364),
  }
}
