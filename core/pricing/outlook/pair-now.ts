import { daysBetween, type CivilDate } from '../../dates.ts'
import { regularPrice } from '../regular-price.ts'
import type { Sighting } from '../sighting.ts'
import { todayPrice } from '../today.ts'
import { newcomerTrust } from '../trust.ts'
import type { SaleWindow } from './market-record.ts'

/** A window of a sale time as days from today: 0 is today. */
export interface WindowAhead {
  saleTimeId: string
  first: number
  last: number
}

/** How a product stands at a store on the day asked about. */
export interface PairNow {
  storeId: string
  /** Newest known regular price, one unit, as the store prints it. */
  regularMinor: number
  /** Days since it was seen. */
  regularAge: number
  todayMinor: number
  /** The sale that runs today as far as is known: its price, days since it began and was last seen, and its last day if printed. */
  sale: { priceMinor: number; lastDay: number | null; unseenDays: number } | null
  windows: readonly WindowAhead[]
}

/**
 * Today at each of the stores where a regular price is known (design rules 1 and 2), in the order of the store's id.
 */
export function pairsNow(
  sightings: readonly Sighting[],
  storeIds: readonly string[],
  windows: readonly SaleWindow[],
  asOf: CivilDate,
  until: CivilDate,
): PairNow[] {
  const byStore = Map.groupBy(sightings, ({ storeId }) => storeId)
  return [...new Set(storeIds)].toSorted().flatMap((storeId): PairNow[] => {
    const ofStore = byStore.get(storeId) ?? []
    const regular = regularPrice(ofStore, asOf)
    const today = todayPrice(ofStore, regular, asOf, newcomerTrust)
    if (regular === undefined || today === undefined) return []
    const running = today.condition === 'shelf' ? null : today
    return [
      {
        storeId,
        regularMinor: regular.priceMinor,
        regularAge: daysBetween(regular.seenOn, asOf),
        todayMinor: today.priceMinor,
        sale: running && {
          priceMinor: running.priceMinor,
          lastDay: running.lastDayStated && running.holdsUntil !== null ? daysBetween(asOf, running.holdsUntil) : null,
          unseenDays: daysBetween(running.seenOn, asOf),
        },
        windows: windowsAhead(windows, storeId, asOf, until),
      },
    ]
  })
}

function windowsAhead(windows: readonly SaleWindow[], storeId: string, asOf: CivilDate, until: CivilDate): WindowAhead[] {
  return windows
    .filter((window) => window.storeId === storeId && window.last >= asOf && window.first <= until)
    .map(({ saleTimeId, first, last }) => ({ saleTimeId, first: daysBetween(asOf, first), last: daysBetween(asOf, last) }))
    .toSorted((a, b) => a.first - b.first || (a.saleTimeId < b.saleTimeId ? -1 : 1))
}
