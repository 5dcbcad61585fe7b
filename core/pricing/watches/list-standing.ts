import { addDays, type CivilDate } from '../../dates.ts'
import { CURRENT_DAYS } from '../age.ts'
import { priceInForce, saleOn, type StockItem } from '../price-list.ts'
import type { StandingPrice } from './standing-price.ts'

/**
 * What the store's own list asks on a day, as a price that stands; undefined where none is in force. It does not age: a price without a last day is
 * taken to stand on. Nobody saw it: no sighting is behind it.
 *
 * @example standingListPrice({ prices: [{ validFrom: '2026-11-01', priceMinor: 900, saleMinor: 800, saleUntil: '2026-11-30' }] }, '2026-11-26')?.priceMinor // 800
 */
export function standingListPrice({ prices }: Pick<StockItem, 'prices'>, asOf: CivilDate): StandingPrice | undefined {
  const price = priceInForce(prices, asOf)
  if (!price) return undefined
  const sale = saleOn(price, asOf)
  const before = prices.filter(({ validFrom }) => validFrom <= asOf).toSorted((a, b) => (a.validFrom < b.validFrom ? -1 : 1))
  return {
    condition: sale ? 'sale' : 'shelf',
    priceMinor: sale?.priceMinor ?? price.priceMinor,
    sightingId: null,
    seenOn: price.validFrom,
    from: price.validFrom,
    until: sale?.until ?? addDays(asOf, CURRENT_DAYS),
    lastDayStated: sale !== undefined && sale.until !== null,
    shelf: before.map(({ validFrom, priceMinor }) => ({ seenOn: validFrom, priceMinor })),
  }
}
