import { BUY_NOW, FIRST_SALE, saleCame, shop, sightOf, WAIT_TO_DATE, type Advice } from './advice/shopper.ts'
import type { Forecast, Forecaster } from './forecasters/forecast.ts'
import { byPair, forecastByFrequencies, kindFrequencies, recordFrequencies } from './forecasters/frequencies.ts'
import { oracleAdvice, truthForecaster } from './forecasters/truth.ts'
import type { Market } from './market/market.ts'
import { randomOf } from './random.ts'
import { isCovered, pinballLoss } from './statistics/quantile.ts'
import { randomisedTransform } from './statistics/transform.ts'
import { traitsOf, type Traits } from './traits.ts'

export const HORIZONS = [30, 60, 120] as const
/** Waiting is free, or costs 0.2 % of today's price a day. */
export const WAIT_COSTS = [0, 0.002] as const

/** What one forecast of one line came to. */
export interface Case {
  days: number
  line: number
  /** Place of the outcome among the draws. */
  place: number
  chanceOfSale: number
  saleCame: boolean
  /** Pinball loss as a share of today's regular price: of the forecaster, and of the two that go by frequencies. */
  loss: number
  lossByRecord: number
  lossByKind: number
}

/** What a sum of lines came to. */
export interface BasketCase {
  days: number
  lines: number
  place: number
  covered: boolean
}

/** What was paid for one line under each advice, waiting included; shares of today's price. */
export interface AdviceCase {
  days: number
  line: number
  costShare: number
  paid: { advice: number; oracle: number; buyNow: number; waitToDate: number; firstSale: number }
}

export interface MarketResult {
  index: number
  seconds: number
  sightings: number
  /** Lines that were asked about and got no forecast. */
  unanswered: number
  traits: Traits[]
  cases: Case[]
  baskets: BasketCase[]
  advice: AdviceCase[]
  /** The same for a forecaster who knows what is true, beside it. */
  truth: { cases: Case[]; baskets: BasketCase[] }
}

/** Everything that is measured on one market. */
export function measureMarket(market: Market, forecaster: Forecaster, seed: string): MarketResult {
  const started = performance.now()
  const measured = measureForecasts(market, forecaster, seed)
  const truth = measureForecasts(market, truthForecaster(market, seed), seed)
  return {
    index: market.index,
    sightings: market.record.sightings.length,
    traits: traitsOf(market),
    ...measured,
    advice: measureAdvice(market, forecaster),
    truth: { cases: truth.cases, baskets: truth.baskets },
    seconds: (performance.now() - started) / 1000,
  }
}

export function measureForecasts(
  market: Market,
  forecaster: Forecaster,
  seed: string,
): { cases: Case[]; baskets: BasketCase[]; unanswered: number } {
  const random = randomOf(`${seed}/${market.index}/places`)
  const pairs = byPair(market)
  const [ofRecord, ofKind] = [recordFrequencies(market, pairs), kindFrequencies(market)]
  const cases: Case[] = []
  const baskets: BasketCase[] = []
  let unanswered = 0
  for (const days of HORIZONS) {
    const forecast = forecaster.forecast(market, days)
    const byRecord = forecastByFrequencies(market, pairs, ofRecord, days, `${seed}/by-record`)
    const byKind = forecastByFrequencies(market, pairs, ofKind, days, `${seed}/by-kind`)
    let paid = 0
    let answered = 0
    market.lines.forEach((line, index) => {
      const said = forecast.lines[index]
      if (said === undefined) return void (unanswered += 1)
      const advice = forecaster.advise?.(market, index, days, 0) ?? FIRST_SALE
      const outcome = shop(line, market.ahead, { from: 1, until: days }, advice).paidMinor
      const scale = sightOf(line, market.ahead, 0).regularMinor
      const loss = (other: Forecast): number => pinballLoss(other.lines[index]?.draws.toSorted() ?? [], outcome) / scale
      paid += outcome
      answered += 1
      cases.push({
        days,
        line: index,
        place: randomisedTransform(said.draws, outcome, random()),
        chanceOfSale: said.chanceOfSale,
        saleCame: saleCame(line, market.ahead, { from: 1, until: days }),
        loss: loss(forecast),
        lossByRecord: loss(byRecord),
        lossByKind: loss(byKind),
      })
    })
    if (answered >= 8)
      baskets.push({
        days,
        lines: answered,
        place: randomisedTransform(forecast.total, paid, random()),
        covered: isCovered(forecast.total.toSorted(), paid),
      })
  }
  return { cases, baskets, unanswered }
}

function measureAdvice(market: Market, forecaster: Forecaster): AdviceCase[] {
  const { advise } = forecaster
  if (advise === undefined) return []
  return HORIZONS.flatMap((days) =>
    WAIT_COSTS.flatMap((costShare) =>
      market.lines.map((line, index): AdviceCase => {
        const { priceMinor } = sightOf(line, market.ahead, 0)
        const paid = (advice: Advice): number => {
          const trip = shop(line, market.ahead, { from: 0, until: days }, advice)
          return trip.paidMinor / priceMinor + costShare * trip.day
        }
        return {
          days,
          line: index,
          costShare,
          paid: {
            advice: paid(advise(market, index, days, costShare)),
            oracle: paid(oracleAdvice(market, index, days, costShare)),
            buyNow: paid(BUY_NOW),
            waitToDate: paid(WAIT_TO_DATE),
            firstSale: paid(FIRST_SALE),
          },
        }
      }),
    ),
  )
}
