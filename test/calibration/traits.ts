import { daysBetween } from '../../core/dates.ts'
import { sightOf } from './advice/shopper.ts'
import type { Market } from './market/market.ts'

/** What is peculiar about one line of one market, by which misses are told apart. Each is a word. */
export type Traits = Record<string, string>

function sizeOf(value: number, limits: readonly number[]): string {
  const above = limits.filter((limit) => value >= limit).length
  if (above === 0) return `under ${limits[0]}`
  return above === limits.length ? `${limits.at(-1)} and over` : `${limits[above - 1]} to ${limits[above]}`
}

/** Traits of each line. */
export function traitsOf(market: Market): Traits[] {
  const { truth, record } = market
  return market.lines.map((line) => {
    const product = truth.products[line.product]
    if (product === undefined) throw new RangeError(`The market has no product ${line.product}`)
    const { kind } = product
    const stores = line.stores.map((store) => truth.storeIds[store])
    const mine = record.sightings.filter(({ productId, storeId }) => productId === product.id && stores.includes(storeId))
    const newest = mine.reduce((latest, { seenOn }) => (seenOn > latest ? seenOn : latest), '0000-01-01')
    return {
      'days since a report': sizeOf(daysBetween(newest, record.asOf), [8, 31, 91]),
      'sale today': sightOf(line, market.ahead, 0).onSale ? 'yes' : 'no',
      stores: line.stores.length === 1 ? 'one' : 'several',
      'true sales a year': sizeOf(kind.salesPerYear, [1.5, 3]),
      'family of lengths': kind.lengthFamily,
      'mean length, days': sizeOf(kind.meanLengthDays, [6, 10]),
      'depth in steps': kind.depthInSteps ? 'yes' : 'no',
      'reports a year': sizeOf(kind.reportsPerYear, [6, 15]),
      'sale reported times likelier': sizeOf(truth.reporting.saleRatio, [3, 10, 30]),
      'changes of regular price a year': sizeOf(kind.changesPerYear, [0.8, 1.6]),
      'persistently careless members': String(truth.reporting.persistentlyCareless),
      'years of record': sizeOf(truth.historyDays / 365, [1.67, 2.33]),
      'false was on the shelf': truth.reporting.falseWasOnShelf.some((share) => share > 0) ? 'yes' : 'no',
      'prices end in 99': truth.charmPrices ? 'yes' : 'no',
    }
  })
}
