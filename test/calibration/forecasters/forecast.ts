import type { Advice } from '../advice/shopper.ts'
import type { Market } from '../market/market.ts'

/** Draws of what following an advice from day 1 will cost, whole minor units, and what was said of a sale. */
export interface Forecast {
  /** By line of the market; undefined where the forecaster knows no price. */
  lines: Array<LineForecast | undefined>
  /** Draws of the sum of all lines that have a forecast. */
  total: Float64Array
}

export interface LineForecast {
  draws: Float64Array
  /** Chance that a sale is on at any of the line's stores on any day from day 1 to the last. */
  chanceOfSale: number
}

/** Somebody who looks at a market and says what waiting will cost, and what to do. `days` is the number of days ahead. */
export interface Forecaster {
  name: string
  /** Draws of costs where a day's wait costs nothing. */
  forecast: (market: Market, days: number) => Forecast
  /** Advice for one line, where a day's wait costs a share of today's price. */
  advise?: (market: Market, line: number, days: number, costShare: number) => Advice
}

/** A forecaster for one market: whatever it learns once. */
export type Learn = (market: Market) => Forecaster
export const DRAWS = 400
