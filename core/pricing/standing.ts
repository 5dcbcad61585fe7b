import type { Store } from '../catalog/store.ts'
import { sayDate, yearOf, type CivilDate } from '../dates.ts'
import { sayMoney, WHOLE_RATE } from '../money.ts'
import { effectiveCondition } from './effective-condition.ts'
import type { PriceView } from './price-view.ts'
import { withTaxExact } from './receipt.ts'
import type { Condition } from './sighting.ts'

/** How good a price is, for the one who stands in front of it. */
export type StandingWord = 'lowest' | 'good' | 'usual' | 'high' | 'first' | 'used'

export interface Standing {
  word: StandingWord
  /** "A good price" */
  title: string
  /** One or two sentences with the figures it is compared with. */
  words: string
  /** For the rule under it, lowest first; minor units as each store prints them. */
  marks: Array<{ label: 'lowest' | 'regular'; priceMinor: number }>
  /** A lower price that can be had today elsewhere; null where there is none. */
  lowerToday: { storeId: string; storeName: string; priceMinor: number; holdsUntil: CivilDate | null } | null
}

export interface StandingInput {
  priceMinor: number
  condition: Condition
  printedRegularMinor: number | null
  storeId: string
  /** Of this product, at all stores, on `asOf`. */
  views: readonly PriceView[]
  stores: readonly Store[]
  currency: string
  /** The install's currency: beside it another is told by its code. */
  home?: string
  asOf: CivilDate
}

/** Under 5 % off, a price is the usual one: shelf prices wander by as much. Common practice. */
const GOOD_SHARE = 0.95
/** More than 2 % above the regular price is dearer; less is rounding of price tags. */
const HIGH_SHARE = 1.02

const TITLES: Record<StandingWord, string> = {
  lowest: 'The lowest in 12 months',
  good: 'A good price',
  usual: 'The usual price',
  high: 'Above the usual price',
  first: 'The first price here',
  used: 'A price for used goods',
}

/**
 * How a price stands against the record: the regular price of this store, the lowest of 12 months anywhere, what it costs elsewhere today.
 * Prices of stores that print tax differently are compared with tax and told as printed.
 *
 * Units: minor units. Range: price above 0. Makes no forecast.
 */
export function judgePrice(input: StandingInput): Standing {
  const stores = new Map(input.stores.map((store) => [store.id, store]))
  const here = input.views.find(({ storeId }) => storeId === input.storeId)
  const regular = here?.regular?.priceMinor ?? input.printedRegularMinor
  const lowest = lowestKnown(input, stores)
  const word = wordFor(input, regular, lowest, stores)
  const lowerToday = lowerElsewhere(input, stores)
  const marks = [
    ...(lowest ? [{ label: 'lowest' as const, priceMinor: lowest.priceMinor }] : []),
    ...(regular === null ? [] : [{ label: 'regular' as const, priceMinor: regular }]),
  ]
  return { word, title: TITLES[word], words: standingWords(input, regular, lowest, lowerToday), marks, lowerToday }
}

interface Known {
  priceMinor: number
  store: Store
  seenOn: CivilDate
}

/** The candidate's store decides how a price is compared; where it is not known, prices are taken as printed. */
const costAt = (priceMinor: number, store: Store | undefined): number => (store ? withTaxExact(priceMinor, store) : priceMinor * WHOLE_RATE)

function lowestKnown({ views }: StandingInput, stores: ReadonlyMap<string, Store>): Known | null {
  const known = views.flatMap(({ storeId, best }): Known[] => {
    const store = stores.get(storeId)
    return store && best ? [{ store, priceMinor: best.priceMinor, seenOn: best.seenOn }] : []
  })
  return (
    known.toSorted((a, b) => costAt(a.priceMinor, a.store) - costAt(b.priceMinor, b.store) || (a.store.id < b.store.id ? -1 : 1))[0] ?? null
  )
}

function wordFor(
  { priceMinor, condition, storeId }: StandingInput,
  regular: number | null,
  lowest: Known | null,
  stores: ReadonlyMap<string, Store>,
): StandingWord {
  if (condition === 'used') return 'used'
  const cost = costAt(priceMinor, stores.get(storeId))
  const isLowest = lowest !== null && cost <= costAt(lowest.priceMinor, lowest.store)
  if (regular === null) return isLowest ? 'lowest' : 'first'
  if (priceMinor > regular * HIGH_SHARE) return 'high'
  if (priceMinor > regular * GOOD_SHARE) return 'usual'
  return isLowest ? 'lowest' : 'good'
}

function lowerElsewhere({ priceMinor, storeId, views }: StandingInput, stores: ReadonlyMap<string, Store>): Standing['lowerToday'] {
  const cost = costAt(priceMinor, stores.get(storeId))
  const lower = views
    .flatMap(({ storeId: other, today }) => {
      const store = stores.get(other)
      return store && today && other !== storeId && costAt(today.priceMinor, store) < cost ? [{ store, today }] : []
    })
    .toSorted((a, b) => costAt(a.today.priceMinor, a.store) - costAt(b.today.priceMinor, b.store) || (a.store.id < b.store.id ? -1 : 1))[0]
  return lower
    ? { storeId: lower.store.id, storeName: lower.store.name, priceMinor: lower.today.priceMinor, holdsUntil: lower.today.holdsUntil }
    : null
}

function standingWords(input: StandingInput, regular: number | null, lowest: Known | null, lower: Standing['lowerToday']): string {
  const say = (minor: number): string => sayMoney(minor, input.currency, { home: input.home ?? input.currency })
  const day = (date: CivilDate): string => sayDate(date, yearOf(input.asOf))
  const { priceMinor } = input
  const shelf = effectiveCondition({ ...input }) === 'shelf' ? 'the last shelf price here' : 'the shelf price here'
  const first =
    regular === null
      ? 'No regular price is known here yet.'
      : priceMinor === regular
        ? `The same as ${shelf}.`
        : `${say(Math.abs(regular - priceMinor))} ${priceMinor < regular ? 'under' : 'above'} ${shelf}, ${say(regular)}.`
  if (lower)
    return `${first} Less today at ${lower.storeName}: ${say(lower.priceMinor)}${lower.holdsUntil ? ` to ${day(lower.holdsUntil)}` : ''}.`
  if (lowest) return `${first} Lowest in 12 months: ${say(lowest.priceMinor)} at ${lowest.store.name}, ${day(lowest.seenOn)}.`
  return first
}
