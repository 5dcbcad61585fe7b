import { daysBetween } from '../../dates.ts'
import type { Ask } from './ask.ts'
import { drawFutures } from './future.ts'
import type { Learned } from './learned.ts'
import type { MarketRecord } from './market-record.ts'
import { planOf } from './plan.ts'

export interface WaitingDraws {
  /** What is paid for each line, in the order asked; NaN where no price is known. One entry a future, the same futures for all lines. */
  lines: Float64Array[]
  /** The same for all lines with a known price together. */
  total: Float64Array
  /** Share of futures in which a sale is seen at any of the line's stores from tomorrow to the date. */
  chanceOfSale: number[]
}

/**
 * What is paid by one who waits from today and follows `decide` from tomorrow on (design rule 7): what a forecast is held against.
 * The price of waiting is not in it. Range: `ask.until` after `record.asOf`. Errors: RangeError where there is no day to wait.
 */
export function waitingDraws(learned: Learned, record: MarketRecord, ask: Ask): WaitingDraws {
  const horizon = daysBetween(record.asOf, ask.until)
  if (horizon < 1) throw new RangeError(`Nobody can wait from ${record.asOf} to ${ask.until}`)
  const { paid, chanceOfSale } = drawFutures(planOf(learned, record, ask), horizon, ask.draws, ask.seed)
  const total = new Float64Array(ask.draws)
  for (const line of paid) if (!Number.isNaN(line[0])) line.forEach((amount, draw) => (total[draw] = (total[draw] as number) + amount))
  return { lines: paid, total, chanceOfSale }
}
