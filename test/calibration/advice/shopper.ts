import type { Line } from '../market/lines.ts'
import type { Ahead } from '../market/market.ts'

/** What a shopper sees of a line on a day. */
export interface Sight {
  /** Days from the day of the record. */
  day: number
  /** Least offer over the line's stores, and the least of their regular prices. */
  priceMinor: number
  regularMinor: number
  onSale: boolean
}

/** Whether a shopper buys a line on seeing it. On the last day he buys whatever is said. */
export type Advice = (sight: Sight) => boolean

export interface Trip {
  paidMinor: number
  /** Days that he waited. */
  day: number
}

export function sightOf({ product, stores }: Line, ahead: readonly Ahead[][], day: number): Sight {
  let priceMinor = Number.POSITIVE_INFINITY
  let regularMinor = Number.POSITIVE_INFINITY
  let onSale = false
  for (const store of stores) {
    const path = ahead[product]?.[store] as Ahead
    priceMinor = Math.min(priceMinor, path.price[day] as number)
    regularMinor = Math.min(regularMinor, path.regular[day] as number)
    onSale ||= path.onSale[day] === 1
  }
  return { day, priceMinor, regularMinor, onSale }
}

/** Follows an advice day by day through what the shops ask, from a day to a last day. */
export function shop(line: Line, ahead: readonly Ahead[][], { from, until }: { from: number; until: number }, advice: Advice): Trip {
  for (let day = from; day < until; day += 1) {
    const sight = sightOf(line, ahead, day)
    if (advice(sight)) return { paidMinor: sight.priceMinor, day }
  }
  return { paidMinor: sightOf(line, ahead, until).priceMinor, day: until }
}

/** Whether any of the line's stores has a sale on any of the days. */
export function saleCame({ product, stores }: Line, ahead: readonly Ahead[][], { from, until }: { from: number; until: number }): boolean {
  return stores.some((store) => ahead[product]?.[store]?.onSale.subarray(from, until + 1).includes(1))
}

export const BUY_NOW: Advice = () => true
export const WAIT_TO_DATE: Advice = () => false
export const FIRST_SALE: Advice = ({ onSale }) => onSale

/** Buys at or under a share of the regular price seen that day; one share for each day from day 0 on. */
export const atOrUnder =
  (shares: ArrayLike<number>): Advice =>
  ({ day, priceMinor, regularMinor }) =>
    priceMinor <= (shares[day] as number) * regularMinor
