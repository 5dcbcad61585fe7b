import type { CivilDate } from '../dates.ts'
import type { PriceView } from './price-view.ts'
import { median } from './robust-deviation.ts'
import type { ShelfDrift } from './shelf-drift.ts'

type Seen = NonNullable<PriceView['best']>
type Today = NonNullable<PriceView['today']>

/** What the record says of one product at one store, as far as it rolls up. */
export interface StoreFacts {
  storeId: string
  /** New goods. */
  view?: PriceView
  drift?: ShelfDrift
  /** Used goods: lowest of the last 365 days, and of those young enough to count as a price. */
  used?: { best: Seen; lowest?: Seen }
}

/** A price with where, when and the sightings behind it. */
export interface RolledPrice {
  priceMinor: number
  storeId: string
  seenOn: CivilDate
  sightingIds: string[]
}

/** New goods at several stores. What nobody knows is absent. */
export interface NewRolledUp {
  /** Stores with a price today. */
  stores: number
  today?: RolledPrice & Pick<Today, 'condition' | 'holdsUntil' | 'age'>
  /** The middle of the stores' regular prices, their least and greatest. */
  regular?: { medianMinor: number; lowestMinor: number; highestMinor: number; stores: number; sightingIds: string[] }
  /** Stores where a sale or clearance runs today; absent where none does. */
  onSale?: { stores: number; sightingIds: string[] }
  /** Middle of what shelf prices moved by at the stores that were looked at long enough; `since` the earliest day of these. */
  drift?: ShelfDrift & { stores: number }
  best?: RolledPrice
}

/** Used goods at several stores. */
export interface UsedRolledUp {
  /** Stores where any was seen within 365 days. */
  stores: number
  /** Lowest that was seen within 180 days: each is one item, and may be gone. */
  lowest?: RolledPrice
  best: RolledPrice
}

/** New and used goods apart: neither price says anything of the other. */
export interface RolledUp {
  new?: NewRolledUp
  used?: UsedRolledUp
}

/** Sightings that a figure names of each store: a sale that twenty members report is led to by its first few. */
const NAMED_A_STORE = 3
const few = (ids: readonly string[]): string[] => ids.slice(0, NAMED_A_STORE)

/**
 * One product's prices at several stores together. The order of the stores does not matter; of one store it says what that store's own view says.
 *
 * Units: minor units of one currency and on one basis of tax (`factsWithTax`): leave stores of another currency out. Range: no store gives `{}`.
 * Of stores whose prices are equal the one seen last stands, then the one whose id comes first.
 *
 * @example rollUp([{ storeId: 'kettle', view: at(9000) }, { storeId: 'upriver', view: at(9600) }]).new?.regular // { medianMinor: 9300, lowestMinor: 9000, highestMinor: 9600, … }
 */
export function rollUp(stores: readonly StoreFacts[]): RolledUp {
  const ordered = stores.toSorted((a, b) => (a.storeId < b.storeId ? -1 : 1))
  const ofNew = rollUpNew(ordered)
  const used = rollUpUsed(ordered)
  return { ...(ofNew && { new: ofNew }), ...(used && { used }) }
}

function rollUpNew(stores: readonly StoreFacts[]): NewRolledUp | undefined {
  const views = stores.flatMap(({ view }) => view ?? [])
  if (views.length === 0) return undefined
  const today = least(views.flatMap((view) => (view.today ? { storeId: view.storeId, ...view.today } : [])))
  const best = least(views.flatMap((view) => (view.best ? seenAt(view.storeId, view.best) : [])))
  const regular = regularOf(views)
  const onSale = views.filter((view) => view.today !== undefined && view.today.condition !== 'shelf')
  const drift = driftOf(stores)
  return {
    stores: views.filter((view) => view.today !== undefined).length,
    ...(today && { today: todayOf(today) }),
    ...(regular && { regular }),
    ...(onSale.length > 0 && {
      onSale: { stores: onSale.length, sightingIds: onSale.flatMap((view) => few(view.today?.sightingIds ?? [])) },
    }),
    ...(drift && { drift }),
    ...(best && { best }),
  }
}

const todayOf = ({ priceMinor, storeId, seenOn, condition, holdsUntil, age, sightingIds }: Today & { storeId: string }) => ({
  priceMinor,
  storeId,
  seenOn,
  condition,
  holdsUntil,
  age,
  sightingIds: few(sightingIds),
})

function regularOf(views: readonly PriceView[]): NewRolledUp['regular'] {
  const known = views.flatMap(({ regular }) => regular ?? [])
  if (known.length === 0) return undefined
  const prices = known.map(({ priceMinor }) => priceMinor)
  return {
    medianMinor: Math.round(median(prices)),
    lowestMinor: Math.min(...prices),
    highestMinor: Math.max(...prices),
    stores: known.length,
    sightingIds: known.flatMap(({ sightingIds }) => few(sightingIds)),
  }
}

function driftOf(stores: readonly StoreFacts[]): NewRolledUp['drift'] {
  const known = stores.flatMap(({ drift }) => drift ?? [])
  const [first] = known
  if (!first) return undefined
  return {
    change: Math.round(median(known.map(({ change }) => change)) * 1e4) / 1e4,
    since: known.reduce((earliest, { since }) => (since < earliest ? since : earliest), first.since),
    stores: known.length,
    sightingIds: known.flatMap(({ sightingIds }) => sightingIds),
  }
}

function rollUpUsed(stores: readonly StoreFacts[]): UsedRolledUp | undefined {
  const seen = stores.flatMap(({ storeId, used }) => (used ? { storeId, ...used } : []))
  const best = least(seen.map((one) => seenAt(one.storeId, one.best)))
  if (!best) return undefined
  const lowest = least(seen.flatMap((one) => (one.lowest ? seenAt(one.storeId, one.lowest) : [])))
  return { stores: seen.length, ...(lowest && { lowest }), best }
}

const seenAt = (storeId: string, { priceMinor, seenOn, sightingId }: Seen): RolledPrice => ({
  priceMinor,
  storeId,
  seenOn,
  sightingIds: [sightingId],
})

/** The least price; of stores in the order of their ids. */
const least = <Price extends { priceMinor: number; seenOn: CivilDate }>(prices: readonly Price[]): Price | undefined =>
  prices.toSorted((a, b) => a.priceMinor - b.priceMinor || b.seenOn.localeCompare(a.seenOn))[0]
