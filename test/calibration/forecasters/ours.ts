import { addDays } from '../../../core/dates.ts'
import { learn, planOf, waitingDraws, type Ask, type AskedLine } from '../../../core/pricing/outlook/outlook.ts'
import { atOrUnder, sightOf } from '../advice/shopper.ts'
import type { Line } from '../market/lines.ts'
import type { Market } from '../market/market.ts'
import { DRAWS, type Forecast, type Forecaster } from './forecast.ts'

/** The product's own outlook, which learns from the record alone: the only place where the two meet. */
export function ourForecaster(market: Market): Forecaster {
  const { record, truth, lines } = market
  const learned = learn(record)
  const asked = ({ product, stores }: Line): AskedLine => ({
    productId: truth.products[product]?.id ?? '',
    quantity: 1,
    storeIds: stores.map((store) => truth.storeIds[store] ?? ''),
  })
  // Of one line only its own product's sightings are asked for again: the rest has been learnt from.
  const byProduct = Map.groupBy(record.sightings, ({ productId }) => productId)
  const ofLine = lines.map(({ product }) => ({ ...record, sightings: byProduct.get(truth.products[product]?.id ?? '') ?? [] }))
  const ask = (some: readonly Line[], days: number, waitingCostPerDayMinor: number): Ask => ({
    lines: some.map(asked),
    until: addDays(record.asOf, days),
    waitingCostPerDayMinor,
    draws: DRAWS,
    seed: market.index,
  })
  return {
    name: 'the outlook',
    forecast: (_, days): Forecast => {
      const drawn = waitingDraws(learned, record, ask(lines, days, 0))
      return {
        lines: drawn.lines.map((draws, line) =>
          Number.isNaN(draws[0]) ? undefined : { draws, chanceOfSale: drawn.chanceOfSale[line] ?? Number.NaN },
        ),
        total: drawn.total,
      }
    },
    advise: (_, line, days, costShare) => {
      const one = lines[line]
      if (one === undefined) throw new RangeError(`The market has no line ${line}`)
      const cost = costShare * sightOf(one, market.ahead, 0).priceMinor
      return atOrUnder(planOf(learned, ofLine[line] ?? record, ask([one], days, cost)).lines[0]?.buyAtShare ?? [])
    },
  }
}
