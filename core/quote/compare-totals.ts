import { sayDate } from '../dates.ts'
import { sayMoney } from '../money.ts'
import { sayWhole } from '../pricing/by-date.ts'
import type { LineCost } from '../pricing/tiers.ts'
import { apartByDate } from './apart-by-date.ts'
import { sayLacks } from './open-slots.ts'
import type { AssembledBuild } from './revision.ts'

/** Without its rows nobody knows what a build leaves out, and nothing is told of it. */
export type Compared = Pick<AssembledBuild, 'letter' | 'cost' | 'byDate'> & Partial<Pick<AssembledBuild, 'rows'>>

export interface ComparedTotals {
  /** The build that is told of; the other is the cheapest today. */
  letter: string
  words: string
}

export interface ComparedIn {
  currency: string
  thisYear: number
}

/**
 * What each build costs more than the cheapest of today, and what of that outlives the sales: at full price, and by the day of the need where that is
 * expected. A build without a total is compared with none; empty where fewer than two have one.
 *
 * @example compareTotals([a, b], { currency: 'USD', thisYear: 2026 })[0].words // 'A is cheaper by $30.00 today. $22.00 of that is a sale that ends Nov 30; $8.00 remains at full price.'
 */
export function compareTotals(builds: readonly Compared[], said: ComparedIn): ComparedTotals[] {
  const priced = builds.filter(hasTotal)
  const [first, ...others] = priced.toSorted((a, b) => todayOf(a) - todayOf(b))
  if (!first) return []
  return others
    .map((other) => ({ letter: other.letter, words: sayPair(first, other, said) }))
    .toSorted((a, b) => (a.letter < b.letter ? -1 : 1))
}

/**
 * The suggested build against each that it was not held against yet: where it is the cheapest itself, and where there are two builds, nothing is left to say.
 *
 * @example compareSuggested([a, suggestedB, c], said)[0] // { letter: 'C', words: 'B is cheaper by $491.88 today. So it is at full price.' }, of the suggested B
 */
export function compareSuggested(builds: ReadonlyArray<Compared & Pick<AssembledBuild, 'suggested'>>, said: ComparedIn): ComparedTotals[] {
  const priced = builds.filter(hasTotal)
  const [cheapest] = priced.toSorted((a, b) => todayOf(a) - todayOf(b))
  const suggested = priced.find((build) => build.suggested)
  if (!suggested || suggested === cheapest) return []
  return priced
    .filter((other) => other !== suggested && other !== cheapest)
    .map((other) => ({ letter: other.letter, words: sayPair(suggested, other, said) }))
}

/** Whether a build has something in it and a price for all of it. */
export const hasTotal = ({ cost }: Compared): boolean => cost.today.complete && cost.lines.length > 0

/**
 * The cheapest of today, with what it is without and others with a total have.
 *
 * @example sayCheapest(a, [a, b]) // 'the cheapest today, without lid and light'
 */
export function sayCheapest(build: Compared, builds: readonly Compared[]): string {
  const lacks = sayLacks(build, builds.filter(hasTotal))
  return lacks === '' ? 'the cheapest today' : `the cheapest today, without ${lacks}`
}

/** What the cheaper of two, both with a total, is cheaper by, and what of that outlives the sales. */
export function sayPair(one: Compared, other: Compared, said: ComparedIn): string {
  const [cheap, dear] = todayOf(other) < todayOf(one) ? [other, one] : [one, other]
  return [...sayGap(cheap, dear, said), ...sayGapByDate(cheap, dear, said), ...sayUnequal(cheap, dear)].join(' ')
}

/** What one of them has and the other has not: a difference that is no saving. */
function sayUnequal(cheap: Compared, dear: Compared): string[] {
  const lacking = [cheap, dear].flatMap((one) => {
    const lacks = sayLacks(one, [one === cheap ? dear : cheap])
    return lacks === '' ? [] : [`${one.letter} is without ${lacks}`]
  })
  return lacking.length === 0 ? [] : [`They are not alike: ${lacking.join('; ')}.`]
}

const todayOf = ({ cost: { today } }: Compared): number => (today.complete ? today.totalMinor : Infinity)

function sayGap(cheap: Compared, dear: Compared, { currency, thisYear }: ComparedIn): string[] {
  const money = (minor: number): string => sayMoney(minor, currency)
  const gap = todayOf(dear) - todayOf(cheap)
  const today = gap === 0 ? `${cheap.letter} costs the same today.` : `${cheap.letter} is cheaper by ${money(gap)} today.`
  const [cheapFull, dearFull] = [cheap.cost.full, dear.cost.full]
  if (!cheapFull.complete || !dearFull.complete) return [today]
  const left = dearFull.totalMinor - cheapFull.totalMinor
  const gone = gap - left
  if (gone === 0) return gap === 0 ? [today] : [today, 'So it is at full price.']
  const own = gone > 0 ? cheap : dear
  const why = sayWhy(own, thisYear)
  if (left < 0) return [today, `That is ${why}: at full price ${dear.letter} is cheaper by ${money(-left)}.`]
  if (gone < 0) return [today, `At full price it is cheaper by ${money(left)}: ${dear.letter} has ${why}.`]
  if (left === 0) return [today, `All of that is ${why}; at full price they cost the same.`]
  return [today, `${money(gone)} of that is ${why}; ${money(left)} remains at full price.`]
}

/** What makes today less than full, with its end; "about" where a store prints none. @example 'a sale that ends Nov 30' */
function sayWhy({ cost }: Compared, thisYear: number): string {
  const discounted = cost.today.complete && (cost.today.discountMinor ?? 0) > 0
  const sales = cost.lines.filter(isReduced)
  if (sales.length === 0) return discounted ? 'the discount' : 'sale prices'
  const days = sales.flatMap(({ holdsUntil }) => holdsUntil ?? []).sort()
  const about = sales.some(({ lastDayStated }) => !lastDayStated) ? 'about ' : ''
  const [from, to] = [days[0], days.at(-1)]
  const span = from && to ? (from === to ? sayDate(to, thisYear) : `${sayDate(from, thisYear)} to ${sayDate(to, thisYear)}`) : ''
  const all = days.length === sales.length
  const one = sales.length === 1
  const ends = all
    ? `that ${one ? 'ends' : 'end'} ${about}${span}`
    : one
      ? 'whose last day is not known'
      : 'whose last days are not all known'
  return `${one ? 'a sale' : 'sales'} ${ends}${discounted ? ', and the discount' : ''}`
}

const isReduced = ({ fullMinor, todayMinor }: LineCost): boolean => fullMinor !== null && todayMinor !== null && fullMinor > todayMinor

function sayGapByDate(cheap: Compared, dear: Compared, { currency, thisYear }: ComparedIn): string[] {
  if (!cheap.byDate || !dear.byDate || cheap.byDate.waits + dear.byDate.waits === 0) return []
  const gap = apartByDate(cheap.byDate, dear.byDate, currency)
  const by = `By ${sayDate(cheap.byDate.until, thisYear)}, following the advice,`
  if (gap === 0) return [`${by} they come to about the same.`]
  return [`${by} ${gap > 0 ? cheap.letter : dear.letter} is cheaper by about ${sayWhole(Math.abs(gap), currency)}.`]
}
