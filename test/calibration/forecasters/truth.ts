import { oracleShares } from '../advice/oracle.ts'
import { atOrUnder, saleCame, shop, sightOf, type Advice } from '../advice/shopper.ts'
import { aheadOf, DAYS_AHEAD, type Ahead, type Market } from '../market/market.ts'
import { futureOf } from '../market/shops.ts'
import { randomOf } from '../random.ts'
import type { Forecast, Forecaster } from './forecast.ts'

/** Fewer draws than the others make: each is a future of the whole market. The transform is exact for any number. */
const FUTURES = 60

/** The oracle's advice: what is true of the market is known, what comes is not. */
export function oracleAdvice(market: Market, line: number, days: number, costShare: number): Advice {
  const asked = market.lines[line]
  if (asked === undefined) throw new RangeError(`The market has no line ${line}`)
  const { priceMinor, regularMinor } = sightOf(asked, market.ahead, 0)
  return atOrUnder(oracleShares(market, asked, days, (costShare * priceMinor) / regularMinor))
}

/** Draws futures from what is true of the market and where its shops stand: the best that can be said, and what the harness is tried with. */
export function truthForecaster(market: Market, seed: string): Forecaster {
  const random = randomOf(`${seed}/${market.index}/futures`)
  const products = new Set(market.lines.map(({ product }) => product))
  const futures = Array.from({ length: FUTURES }, () =>
    aheadOf(market.shops, futureOf(market.truth, market.windows, market.shops, { days: DAYS_AHEAD, products }, random)),
  )
  return {
    name: 'true parameters',
    forecast: (_, days) => forecastFrom(market, futures, days),
    advise: oracleAdvice,
  }
}

function forecastFrom(market: Market, futures: ReadonlyArray<Ahead[][]>, days: number): Forecast {
  const stretch = { from: 1, until: days }
  const total = new Float64Array(futures.length)
  const lines = market.lines.map((line, index) => {
    const advice = oracleAdvice(market, index, days, 0)
    const draws = Float64Array.from(futures, (ahead) => shop(line, ahead, stretch, advice).paidMinor)
    draws.forEach((draw, at) => (total[at] = (total[at] as number) + draw))
    return { draws, chanceOfSale: futures.filter((ahead) => saleCame(line, ahead, stretch)).length / futures.length }
  })
  return { lines, total }
}
