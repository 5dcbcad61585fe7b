import { kindInText, KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { parseSpecFilter } from '../../../core/catalog/spec-filter.ts'
import { sayDate } from '../../../core/dates.ts'
import type { Install } from '../../../core/install.ts'
import { sayMoney } from '../../../core/money.ts'
import type { Done, Notice } from '../../../core/pricing/watches/notice.ts'
import type { WatchedCondition, WatchedRequirement, WatchTerms } from '../../../core/pricing/watches/watch.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { sayTests } from '../catalog/spec-filter-words.ts'

type Place = Pick<Install, 'livestock'>

/** What a watch is of. @example sayRequirement({ kind: 'heater', spec: 'powerW:200..', fits: null }, …) // 'Any heater · Power at least 200 W' */
export function sayRequirement(
  { kind, spec, fits }: WatchedRequirement,
  quoteNumber: string | null,
  reader: ReaderUnits,
  place: Place,
): string {
  const tests = parseSpecFilter(kind, spec)
  const fitting = fits && `fits build ${fits.letter} of ${quoteNumber === null ? 'a quote' : quoteNumber}`
  return [`Any ${kindInText(kind)}`, tests.ok ? sayTests(kind, tests.value, reader, place) : KIND_NAMES[kind], fitting]
    .filter(Boolean)
    .join(' · ')
}

/** Where it looks; the name is not known before the list of names is. @example sayPlace('region', 'Shoreline') // 'in Shoreline' */
export const sayPlace = (what: 'store' | 'region', name: string | undefined): string =>
  what === 'store' ? `at ${name ?? 'one store'}` : `in ${name ?? 'one region'}`

/** How many prices a watch told: each is told once. @example sayTold(2) // '2 prices' */
export const sayTold = (told: number): string => (told === 0 ? 'not yet' : told === 1 ? 'one price' : `${told} prices`)

const CONDITION_NAMES: Record<WatchedCondition, string> = { new: 'new', clearance: 'clearance', used: 'used' }

/** Its limit, day, goods and place, as `sayPlace` says it. @example sayTerms({ limitMinor: 16000, byDay: null, … }, 'USD', 2026) // 'at or under $160.00 with tax' */
export function sayTerms(
  { limitMinor, byDay, conditions, storeIds }: WatchTerms,
  currency: string,
  thisYear: number,
  place: string | null = null,
): string {
  const limit = limitMinor === null ? 'at the price to buy at' : `at or under ${sayMoney(limitMinor, currency)} with tax`
  const goods = conditions.length === 3 ? 'new, clearance or used' : conditions.map((one) => CONDITION_NAMES[one]).join(' or ')
  const usual = conditions.length === 2 && !conditions.includes('used')
  const stores = storeIds.length > 1 ? `at ${storeIds.length} stores` : place
  return [limit, byDay && `by ${sayDate(byDay, thisYear)}`, usual ? null : `${goods} only`, stores].filter(Boolean).join(' · ')
}

/**
 * Where a place is a store only its own list is told of: why a watch of that region, or of those stores, can tell nothing; null where it can.
 * `own` is the id of the own store, undefined where none is marked; `inRegion` the stores of the watch's region, undefined where it has none.
 */
export function sayNothingThere(
  { storeIds }: Pick<WatchTerms, 'storeIds'>,
  own: string | undefined,
  inRegion: readonly string[] | undefined,
): string | null {
  if (own === undefined) return 'Tells nothing yet: no store is marked as our own, whose list it would tell of.'
  if (inRegion !== undefined && !inRegion.includes(own))
    return 'Tells nothing: our own store, whose list alone counts here, is not in this region.'
  return storeIds.length > 0 && !storeIds.includes(own)
    ? 'Tells nothing: only the list of our own store counts here, and it is another one.'
    : null
}

/** How the price is meant: the tag, its tax, until when. */
export function sayNotice(notice: Notice, thisYear: number): string {
  const { condition, until, lastDayStated, priceMinor, currency, totalMinor, totalCurrency, seenOn, sightingId } = notice
  const kept = until === null ? null : lastDayStated ? `to ${sayDate(until, thisYear)}` : `taken to hold to ${sayDate(until, thisYear)}`
  const isSame = priceMinor === totalMinor && currency === totalCurrency
  const tag = isSame ? 'as on the tag' : `with tax; ${sayMoney(priceMinor, currency, { home: totalCurrency })} on the tag`
  const source = sightingId === null ? `in its price list from ${sayDate(seenOn, thisYear)}` : `seen ${sayDate(seenOn, thisYear)}`
  return [NOTICE_CONDITIONS[condition], kept, tag, source].filter(Boolean).join(' · ')
}

const NOTICE_CONDITIONS: Record<Notice['condition'], string> = {
  shelf: 'regular price',
  sale: 'sale',
  clearance: 'clearance',
  used: 'used',
}

/** What an answer did to the record. */
export const DONE_WORDS: Record<Done, string> = {
  posted: 'Still there: posted as seen today.',
  confirmed: 'Still there: you confirmed it.',
  said: 'Still there: you said so of today already.',
  ended: 'Gone: this price is over from today, and the regular price there is back.',
  emptied: 'Gone: no price of today is known there until somebody sees one.',
  sold: 'Gone: the used one is no longer among those to be had.',
  passed: 'Noted. The record no longer had this as today’s price there, and stays as it is.',
  listed: 'Noted. It is the store’s own price list: only the store changes it.',
}
