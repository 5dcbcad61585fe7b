import { addDays, type CivilDate } from '../dates.ts'
import { ageOn } from './age.ts'
import { BEST_SEEN_DAYS } from './best-seen.ts'
import { isGone, productGone } from './gone.ts'
import type { PriceView } from './price-view.ts'
import { printedDays, shelfDays } from './regular-price.ts'
import type { StoreFacts } from './roll-up.ts'
import { saleSpells, type DatedPrice, type SaleSpell } from './sale-spells.ts'
import { shelfBefore, shelfDrift, type ShelfPrice } from './shelf-drift.ts'
import { isAccepted } from './sighting.ts'
import { membersBehind } from './today.ts'
import { newcomerTrust } from './trust.ts'

/** Nothing older than a year and a half before the newest sighting moves any figure. */
export const SUMMARY_DAYS = 550
/** Between the first and the last place of the world to see a day begin lie 26 hours: a store may be two civil days ahead of who asks. */
const CLOCK_DAYS = 2

/** A price that stood on one day, and what says so. */
interface KnownPrice {
  priceMinor: number
  seenOn: CivilDate
  reporters: number
  sightingIds: string[]
}
type KnownSpell = Pick<SaleSpell, 'condition' | 'priceMinor' | 'lastSeenOn' | 'endsOn' | 'lastDayStated'> &
  Pick<KnownPrice, 'reporters' | 'sightingIds'> & { goneOn?: CivilDate }
type Low = NonNullable<PriceView['best']>
type UsedLow = Low & { gone?: true }

/** What the sightings up to a day say, whatever day is asked about from then on: of new goods, but for `used`. */
export interface PairState {
  /** The day from which this holds, until that of the next state. */
  from: CivilDate
  shelf: KnownPrice | null
  printed: KnownPrice | null
  /** First day from which the product is gone from the store; absent where it is not. */
  gone?: CivilDate
  /** The newest sale or clearance, running or over. */
  spell: KnownSpell | null
  /** Lowest first, each newer than the one before: whatever year is asked about, its lowest is among them. */
  lows: Low[]
  /** What the shelf price was about a year before the newest one. */
  before?: ShelfPrice
  /** The same as `lows` of used goods, and of those among them that were not found gone; absent where none was seen. */
  used?: UsedLow[]
}

/** States of one product at one store, oldest first: as many as the days of its newest sightings that a clock elsewhere may not have reached. */
export type PairSummary = PairState[]

/**
 * The time-free facts of one product at one store, from all of its sightings: what `priceViewOf` needs of them for today and any later day. However many sightings there are, they
 * stay about as short. The order of the sightings does not matter.
 *
 * Units: minor units as the store prints them.
 */
export function summarisePair(sightings: readonly DatedPrice[]): PairSummary {
  const accepted = sightings.filter(isAccepted)
  const newest = accepted.reduce<CivilDate | undefined>(
    (last, { seenOn }) => (last === undefined || seenOn > last ? seenOn : last),
    undefined,
  )
  if (newest === undefined) return []
  const since = addDays(newest, -SUMMARY_DAYS)
  const counted = accepted.filter(({ seenOn }) => seenOn >= since).toSorted((a, b) => (a.id < b.id ? -1 : 1))
  const days = [...new Set(counted.map(({ seenOn }) => seenOn))].sort()
  const before = days.findLastIndex((day) => day <= addDays(newest, -CLOCK_DAYS))
  return days.slice(Math.max(0, before)).map((day) => stateOn(counted, day))
}

function stateOn(all: readonly DatedPrice[], from: CivilDate): PairState {
  const counted = all.filter(({ condition }) => condition !== 'used')
  const days = shelfDays(counted, from, newcomerTrust)
  const [shelf, before] = [days.at(-1), shelfBefore(days)]
  const used = usedLows(
    all.filter(({ condition }) => condition === 'used'),
    from,
  )
  const printed = printedDays(counted, from, newcomerTrust).at(-1)
  const spell = saleSpells(counted, from).at(-1)
  const gone = productGone(counted, from)
  return {
    from,
    shelf: shelf ? knownPrice(shelf) : null,
    printed: printed ? knownPrice(printed) : null,
    ...(gone !== null && { gone }),
    spell: spell ? knownSpell(spell) : null,
    lows: lowsUpTo(counted, from),
    ...(before && { before: shelfPriceOf(before.priceMinor, before.seenOn, idsOf(before.sightings)) }),
    ...(used.length > 0 && { used }),
  }
}

const shelfPriceOf = (priceMinor: number, seenOn: CivilDate, ids: readonly string[]): ShelfPrice => ({
  priceMinor,
  seenOn,
  sightingId: ids[0] as string,
})

const idsOf = (sightings: readonly DatedPrice[]): string[] => sightings.map(({ id }) => id)

const knownPrice = ({ priceMinor, seenOn, sightings }: { priceMinor: number; seenOn: CivilDate; sightings: DatedPrice[] }): KnownPrice => ({
  priceMinor,
  seenOn,
  reporters: membersBehind(sightings),
  sightingIds: idsOf(sightings),
})

const knownSpell = ({
  condition,
  priceMinor,
  lastSeenOn,
  endsOn,
  lastDayStated,
  goneOn,
  sightings,
}: SaleSpell<DatedPrice>): KnownSpell => ({
  condition,
  priceMinor,
  lastSeenOn,
  endsOn,
  lastDayStated,
  reporters: membersBehind(sightings.filter((one) => one.priceMinor === priceMinor)),
  sightingIds: idsOf(sightings),
  ...(goneOn !== null && { goneOn }),
})

function lowsUpTo(counted: readonly DatedPrice[], day: CivilDate): Low[] {
  const since = addDays(day, -BEST_SEEN_DAYS)
  const ranked = counted
    .filter(({ seenOn }) => seenOn <= day && seenOn >= since)
    .toSorted((a, b) => a.priceMinor - b.priceMinor || b.seenOn.localeCompare(a.seenOn) || a.id.localeCompare(b.id))
  const lows: Low[] = []
  for (const { priceMinor, seenOn, id } of ranked)
    if (seenOn > (lows.at(-1)?.seenOn ?? '')) lows.push({ priceMinor, seenOn, sightingId: id })
  return lows
}

/** One piece of used goods is sold once: what was found gone is still the best that was seen, and none that can be had. */
function usedLows(used: readonly DatedPrice[], day: CivilDate): UsedLow[] {
  const gone = new Set(used.filter(({ goneOn }) => goneOn).map(({ id }) => id))
  if (gone.size === 0) return lowsUpTo(used, day)
  const there = used.filter(({ id }) => !gone.has(id))
  const lows = new Map([...lowsUpTo(used, day), ...lowsUpTo(there, day)].map((low) => [low.sightingId, low]))
  return [...lows.values()]
    .map((low) => (gone.has(low.sightingId) ? { ...low, gone: true as const } : low))
    .sort((a, b) => a.priceMinor - b.priceMinor || b.seenOn.localeCompare(a.seenOn) || a.sightingId.localeCompare(b.sightingId))
}

/** Whether a summary can tell of a day: not of one before its first state, when some of its sightings had not been made. */
export const tellsOf = (summary: PairSummary, asOf: CivilDate): boolean => summary.length === 0 || (summary[0]?.from ?? '') <= asOf

/**
 * What `priceViewOf` says of the sightings that were summarised; undefined where nothing is known any more. `asOf` is a day that the summary tells of.
 */
export function viewOfSummary(
  summary: PairSummary,
  pair: Pick<PriceView, 'productId' | 'storeId'>,
  asOf: CivilDate,
): PriceView | undefined {
  const state = summary.findLast(({ from }) => from <= asOf)
  if (!state) return undefined
  const regular = regularOf(state, asOf)
  const today = todayOf(state, regular, asOf)
  const since = addDays(asOf, -BEST_SEEN_DAYS)
  const best = state.lows.find(({ seenOn }) => seenOn >= since)
  if ((regular ?? today ?? best) === undefined) return undefined
  return {
    productId: pair.productId,
    storeId: pair.storeId,
    ...(regular && { regular: regular.view }),
    ...(today && { today }),
    ...(state.gone !== undefined && regular && !today && { goneOn: state.gone }),
    ...(best && { best }),
  }
}

/** The same with what rolls up beside it: how the shelf price moved in a year, and used goods. Undefined where nothing is known of either. */
export function factsOfSummary(
  summary: PairSummary,
  pair: Pick<PriceView, 'productId' | 'storeId'>,
  asOf: CivilDate,
): StoreFacts | undefined {
  const state = summary.findLast(({ from }) => from <= asOf)
  if (!state) return undefined
  const view = viewOfSummary(summary, pair, asOf)
  const drift = driftOf(state, view)
  const used = usedOf(state, asOf)
  return (view ?? used) && { storeId: pair.storeId, ...(view && { view }), ...(drift && { drift }), ...(used && { used }) }
}

function driftOf({ shelf, before }: PairState, view: PriceView | undefined): StoreFacts['drift'] {
  if (!shelf || !before || view?.regular?.from !== 'shelf') return undefined
  return shelfDrift(before, shelfPriceOf(shelf.priceMinor, shelf.seenOn, shelf.sightingIds))
}

function usedOf({ used = [] }: PairState, asOf: CivilDate): StoreFacts['used'] {
  const since = addDays(asOf, -BEST_SEEN_DAYS)
  const best = used.find(({ seenOn }) => seenOn >= since)
  const lowest = used.find(({ seenOn, gone }) => !gone && ageOn(seenOn, asOf) !== null)
  return best && { best: lowOf(best), ...(lowest && { lowest: lowOf(lowest) }) }
}

const lowOf = ({ priceMinor, seenOn, sightingId }: UsedLow): Low => ({ priceMinor, seenOn, sightingId })

interface Regular {
  view: NonNullable<PriceView['regular']>
  reporters: number
}

function regularOf({ shelf, printed }: PairState, asOf: CivilDate): Regular | undefined {
  for (const [from, known] of [
    ['shelf', shelf],
    ['printed', printed],
  ] as const) {
    const age = known && ageOn(known.seenOn, asOf)
    if (known && age)
      return {
        view: { priceMinor: known.priceMinor, seenOn: known.seenOn, age, from, sightingIds: known.sightingIds },
        reporters: known.reporters,
      }
  }
  return undefined
}

function todayOf({ spell, gone }: PairState, regular: Regular | undefined, asOf: CivilDate): PriceView['today'] {
  const age = spell && ageOn(spell.lastSeenOn, asOf)
  if (spell && age && spell.endsOn >= asOf && !isGone(spell.goneOn, asOf)) {
    const { priceMinor, condition, lastSeenOn, endsOn, lastDayStated, reporters, sightingIds } = spell
    return { priceMinor, condition, seenOn: lastSeenOn, holdsUntil: endsOn, lastDayStated, age, reporters, sightingIds }
  }
  if (!regular || isGone(gone, asOf)) return undefined
  const { priceMinor, seenOn, age: ageOfRegular, sightingIds } = regular.view
  return {
    priceMinor,
    condition: 'shelf',
    seenOn,
    holdsUntil: null,
    lastDayStated: false,
    age: ageOfRegular,
    reporters: regular.reporters,
    sightingIds,
  }
}

/** The same bytes for the same sightings: keys in the order in which they are made here, ids in theirs. */
export const encodeSummary = (summary: PairSummary): string => JSON.stringify(summary)
/** How each state begins, and nothing within one: no other thing here has a day from which it holds for its first field. */
const STATE = '{"from":"'

/**
 * The state of a summary that tells of a day, alone; where all are of later days the first of them, and none of an empty summary. The others are not read: with many sightings a day
 * there is one of each of the last three days.
 */
export function decodeSummary(text: string, asOf: CivilDate): PairSummary {
  let [start, end] = [text.lastIndexOf(STATE), text.length - 1]
  if (start < 0) return []
  while (start > 1 && text.slice(start + STATE.length, start + STATE.length + asOf.length) > asOf) {
    end = start - 1
    start = text.lastIndexOf(STATE, start - 1)
  }
  return [JSON.parse(text.slice(start, end)) as PairState]
}
