import type { Store } from '../../catalog/store.ts'
import type { Kind } from '../../catalog/kinds.ts'
import type { CivilDate } from '../../dates.ts'
import { homeMinor, type CurrencyRate } from '../currency-rate.ts'
import { canReach } from '../delivery.ts'
import { storeCurrency } from '../foreign-stores.ts'
import { receiptOf } from '../receipt.ts'
import type { Condition } from '../sighting.ts'
import { rateIndexOf } from '../store-rates.ts'
import type { StandingPrice } from './standing-price.ts'
import type { Watch, WatchedCondition } from './watch.ts'

/** A price at or under what somebody waits for. */
export interface Deal {
  productId: string
  storeId: string
  condition: Condition
  /** As the store prints it, in `currency`. */
  priceMinor: number
  currency: string
  /** One piece with its tax, in the currency of the install; without delivery. */
  totalMinor: number
  /** Null: of the store's own list. */
  sightingId: string | null
  seenOn: CivilDate
  from: CivilDate
  until: CivilDate
  lastDayStated: boolean
  /** Days on which somebody saw that prices like this one had ended there. */
  brokenOn: CivilDate[]
}

/** A product's price at a store, and what it takes to tell it with tax in the install's currency. */
export interface PricedThere {
  productId: string
  kind: Kind
  store: Store
  price: StandingPrice
  /** Null where the store's currency is the install's, or has no rate. */
  rate: CurrencyRate | null
  home: string
}

const MEANT: Record<Condition, WatchedCondition> = { shelf: 'new', sale: 'new', clearance: 'clearance', used: 'used' }

/**
 * The price of one piece with its tax, as a build's receipt has it, in the install's currency; null where the store's currency has no rate of
 * exchange. Units: minor units.
 *
 * @example totalThere({ …, store: { taxBasisPoints: 600, pricesIncludeTax: false, … } }, 10000) // 10600
 */
export function totalThere({ productId, kind, store, rate, home }: Omit<PricedThere, 'price'>, priceMinor: number): number | null {
  const isHome = storeCurrency(store, home) === home
  if (!isHome && rate === null) return null
  // A price is above 0: the smallest coin stands for less.
  const atHome = isHome || rate === null ? priceMinor : Math.max(1, homeMinor(priceMinor, rate, home))
  const goods = Array<number>(rateIndexOf(store, { productId, kind })).fill(0)
  return receiptOf(store, [...goods, atHome], 0).totalMinor
}

/**
 * The deal that a price is for a watch, or null. The limit is given, since a watch at the price to buy at has another one every day; an amount in a
 * currency that is no longer the install's is met by nothing.
 */
export function dealFor(
  watch: Pick<Watch, 'conditions' | 'currency' | 'storeIds'>,
  limitMinor: number,
  there: PricedThere,
  inRegion: ReadonlySet<string> | null,
): Deal | null {
  const { productId, store, price, home } = there
  if (watch.currency !== home || !watch.conditions.includes(MEANT[price.condition])) return null
  if (store.archived || !canReach(store) || !isWanted(store.id, watch.storeIds, inRegion)) return null
  const totalMinor = totalThere(there, price.priceMinor)
  if (totalMinor === null || totalMinor > limitMinor) return null
  const isOver = (priceMinor: number): boolean => (totalThere(there, priceMinor) ?? Infinity) > limitMinor
  const { shelf, ...rest } = price
  const broken = price.condition === 'shelf' ? shelf.filter(({ priceMinor }) => isOver(priceMinor)) : shelf
  const brokenOn = price.condition === 'used' ? [] : broken.map(({ seenOn }) => seenOn)
  const from = price.condition === 'shelf' ? startUnder(shelf, brokenOn, price.from) : price.from
  return { ...rest, productId, storeId: store.id, currency: storeCurrency(store, home), totalMinor, from, brokenOn }
}

const isWanted = (storeId: string, named: readonly string[], inRegion: ReadonlySet<string> | null): boolean =>
  (named.length === 0 || named.includes(storeId)) && (inRegion === null || inRegion.has(storeId))

/** The first day of the regular prices that are at or under the limit, since one was last seen over it. */
function startUnder(shelf: StandingPrice['shelf'], over: readonly CivilDate[], otherwise: CivilDate): CivilDate {
  const lastOver = over.at(-1)
  return shelf.find(({ seenOn }) => lastOver === undefined || seenOn > lastOver)?.seenOn ?? otherwise
}
