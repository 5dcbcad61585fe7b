import { HORIZONS, WAIT_COSTS, type AdviceCase, type BasketCase, type Case, type MarketResult } from './measure.ts'
import { ratioByMarket, upper95, type Estimate } from './statistics/by-market.ts'
import { uniformDistance } from './statistics/kolmogorov-smirnov.ts'
import { reliabilityBins, reliabilityGaps, type ReliabilityBin } from './statistics/reliability.ts'

/** One aim with what came out. */
export interface Aim {
  what: string
  /** "at most 0.03" */
  aim: string
  value: number
  /** By market; null where a distance has none. */
  standardError: number | null
  cases: number
  met: boolean
  /** What somebody who knows the true parameters reaches on the same markets; null where that makes no sense. */
  truth: number | null
}

export interface Summary {
  aims: Aim[]
  bins: ReliabilityBin[]
  markets: number
  cases: number
  sightings: number
  unanswered: number
}

type Forecasts = Pick<MarketResult, 'cases' | 'baskets'>

/** All aims over all markets. */
export function summarise(results: readonly MarketResult[]): Summary {
  const truth = results.map((result) => result.truth)
  const bins = reliabilityBins(toldOf(results))
  return {
    aims: [
      ...sizeAims(results),
      ...distanceAims(results, truth),
      coverageAim(results, truth),
      ...lossAims(results, truth),
      ...chanceAims(results, truth),
      ...adviceAims(results),
    ],
    bins,
    markets: results.length,
    cases: results.reduce((sum, { cases }) => sum + cases.length, 0),
    sightings: results.reduce((sum, { sightings }) => sum + sightings, 0),
    unanswered: results.reduce((sum, { unanswered }) => sum + unanswered, 0),
  }
}

const casesOf = (results: readonly Forecasts[], days?: number): Case[] =>
  results.flatMap(({ cases }) => cases.filter((each) => days === undefined || each.days === days))
const toldOf = (results: readonly Forecasts[]) =>
  casesOf(results).map(({ chanceOfSale, saleCame }) => ({ chance: chanceOfSale, came: saleCame }))

/** What the others are worth nothing without. */
function sizeAims(results: readonly Forecasts[]): Aim[] {
  const cases = casesOf(results).length
  const size = (what: string, value: number, least: number): Aim => ({
    what,
    aim: `at least ${least}`,
    value,
    standardError: null,
    cases,
    met: value >= least,
    truth: null,
  })
  return [size('Independent markets', results.length, 500), size('Forecasts of a line', cases, 10_000)]
}

const atMost = (limit: number): string => `at most ${limit}`

function distanceAims(results: readonly Forecasts[], truth: readonly Forecasts[]): Aim[] {
  return [undefined, ...HORIZONS].map((days): Aim => {
    const places = (some: readonly Forecasts[]): number[] => casesOf(some, days).map(({ place }) => place)
    const limit = days === undefined ? 0.03 : 0.04
    const value = uniformDistance(places(results))
    return {
      what: `Kolmogorov–Smirnov distance of the transform, ${days === undefined ? 'all' : `${days} days ahead`}`,
      aim: atMost(limit),
      value,
      standardError: null,
      cases: places(results).length,
      met: value <= limit,
      truth: uniformDistance(places(truth)),
    }
  })
}

function coverageAim(results: readonly Forecasts[], truth: readonly Forecasts[]): Aim {
  const covered = (some: readonly Forecasts[]): Estimate =>
    ratioByMarket(some.map(({ baskets }) => ({ above: hits(baskets), below: baskets.length, cases: baskets.length })))
  const { value, standardError, cases } = covered(results)
  return {
    what: 'Sums of 8 lines or more within their 10 to 90 % range',
    aim: '0.76 to 0.84',
    value,
    standardError,
    cases,
    met: value >= 0.76 && value <= 0.84,
    truth: covered(truth).value,
  }
}
const hits = (baskets: readonly BasketCase[]): number => baskets.filter(({ covered }) => covered).length

function lossAims(results: readonly Forecasts[], truth: readonly Forecasts[]): Aim[] {
  const against = [
    { what: 'Pinball loss ÷ that of the record’s own frequencies', limit: 0.92, other: (each: Case) => each.lossByRecord },
    { what: 'Pinball loss ÷ that of the kind’s true frequencies', limit: 0.97, other: (each: Case) => each.lossByKind },
  ]
  return against.map(({ what, limit, other }): Aim => {
    const ratio = (some: readonly Forecasts[]): Estimate =>
      ratioByMarket(some.map(({ cases }) => ({ above: sum(cases, ({ loss }) => loss), below: sum(cases, other), cases: cases.length })))
    const { value, standardError, cases } = ratio(results)
    return { what, aim: atMost(limit), value, standardError, cases, met: value <= limit, truth: ratio(truth).value }
  })
}

function chanceAims(results: readonly Forecasts[], truth: readonly Forecasts[]): Aim[] {
  const ours = reliabilityGaps(reliabilityBins(toldOf(results)))
  const theirs = reliabilityGaps(reliabilityBins(toldOf(truth)))
  const cases = casesOf(results).length
  const aim = (what: string, value: number, limit: number, best: number): Aim => ({
    what,
    aim: atMost(limit),
    value,
    standardError: null,
    cases,
    met: value <= limit,
    truth: best,
  })
  return [
    aim('Chances of a sale, mean gap of bins of 500', ours.mean, 0.03, theirs.mean),
    aim('Chances of a sale, widest gap of a bin of 500', ours.most, 0.12, theirs.most),
  ]
}

const RIVALS = [
  ['buyNow', 'buying now'],
  ['waitToDate', 'waiting to the date'],
  ['firstSale', 'the first sale seen'],
] as const

function adviceAims(results: readonly MarketResult[]): Aim[] {
  return WAIT_COSTS.flatMap((costShare) => {
    const price = costShare === 0 ? 'waiting free' : `${100 * costShare} % of the price a day`
    const of = ({ advice }: MarketResult): AdviceCase[] => advice.filter((each) => each.costShare === costShare)
    const limit = costShare === 0 ? 0.95 : 0.85
    const saved = ratioByMarket(
      results.map((result) => ({
        above: sum(of(result), ({ paid }) => paid.buyNow - paid.advice),
        below: sum(of(result), ({ paid }) => paid.buyNow - paid.oracle),
        cases: of(result).length,
      })),
    )
    const share: Aim = {
      what: `Share of the oracle’s saving, ${price}`,
      aim: `at least ${limit}`,
      value: saved.value,
      standardError: saved.standardError,
      cases: saved.cases,
      met: saved.value >= limit,
      truth: 1,
    }
    return [share, ...RIVALS.map((rival) => rivalAim(results.map(of), rival, price))]
  })
}

function rivalAim(markets: readonly AdviceCase[][], [rival, name]: (typeof RIVALS)[number], price: string): Aim {
  const difference = (way: 'advice' | 'oracle'): Estimate =>
    ratioByMarket(
      markets.map((advice) => ({ above: sum(advice, ({ paid }) => paid[way] - paid[rival]), below: advice.length, cases: advice.length })),
    )
  const ours = difference('advice')
  return {
    what: `Paid more than ${name} (share of today’s price), ${price}: upper 95 % bound`,
    aim: 'below 0',
    value: upper95(ours),
    standardError: ours.standardError,
    cases: ours.cases,
    met: upper95(ours) < 0,
    truth: upper95(difference('oracle')),
  }
}

const sum = <T>(values: readonly T[], of: (value: T) => number): number => values.reduce((total, value) => total + of(value), 0)
