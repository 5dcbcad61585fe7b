import { addDays, type CivilDate } from '../../dates.ts'
import { CURRENT_DAYS } from '../age.ts'
import { priceInForce, saleOn, type ListPrice, type StockItem } from '../price-list.ts'
import type { StandingPrice } from './standing-price.ts'

/**
 * What the store's own list asks on a day, as a price that stands; undefined where none is in force, or none of it is in stock. It does not age: a price without a last day is
 * taken to stand on. Nobody saw it: no sighting is behind it. A sale that the next list repeats before it is over is one sale, and stands from its first
 * day on.
 *
 * @example standingListPrice({ stockCount: null, prices: [{ validFrom: '2026-11-01', priceMinor: 900, saleMinor: 800, saleUntil: '2026-11-30' }] }, '2026-11-26')?.priceMinor // 800
 */
export function standingListPrice(
  { prices, stockCount }: Pick<StockItem, 'prices' | 'stockCount'>,
  asOf: CivilDate,
): StandingPrice | undefined {
  if (stockCount === 0) return undefined
  const price = priceInForce(prices, asOf)
  if (!price) return undefined
  const sale = saleOn(price, asOf)
  const before = prices.filter(({ validFrom }) => validFrom <= asOf).toSorted((a, b) => (a.validFrom < b.validFrom ? -1 : 1))
  const listed = before.map(({ validFrom, priceMinor }) => ({ seenOn: validFrom, priceMinor }))
  return {
    condition: sale ? 'sale' : 'shelf',
    priceMinor: sale?.priceMinor ?? price.priceMinor,
    sightingId: null,
    seenOn: price.validFrom,
    from: sale ? startOfSale(before) : price.validFrom,
    until: sale?.until ?? addDays(asOf, CURRENT_DAYS),
    lastDayStated: sale !== undefined && sale.until !== null,
    shelf: sale ? withoutSale(before) : listed,
  }
}

/** The first day of the sale that the last of some prices has, back over those before whose sale had not ended when the next began. */
function startOfSale(before: readonly ListPrice[]): CivilDate {
  const first = before.findLastIndex((_, place) => place === 0 || regularFrom(before, place - 1) !== undefined)
  return before[first]?.validFrom ?? ''
}

/** Days from which on the regular price was asked, no sale beside it: what ends a sale. */
const withoutSale = (before: readonly ListPrice[]): StandingPrice['shelf'] =>
  before.flatMap(({ priceMinor }, place) => {
    const seenOn = regularFrom(before, place)
    return seenOn === undefined ? [] : [{ seenOn, priceMinor }]
  })

/** The first day on which a price was asked without its sale, before the next one began; of the last price, whose sale runs, there is none. */
function regularFrom(before: readonly ListPrice[], place: number): CivilDate | undefined {
  const [price, next] = [before[place], before[place + 1]]
  if (!price || !next) return undefined
  if (price.saleMinor === null) return price.validFrom
  if (price.saleUntil === null) return undefined
  const day = addDays(price.saleUntil, 1)
  return day < next.validFrom ? day : undefined
}
