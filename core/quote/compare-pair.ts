import { sayDate } from '../dates.ts'
import { sayMoney } from '../money.ts'
import { sayWhole } from '../pricing/by-date.ts'
import type { Tier } from '../pricing/tiers.ts'
import { apartByDate } from './apart-by-date.ts'
import { hasTotal, sayPair, type Compared, type ComparedIn } from './compare-totals.ts'

/** One tier of two builds. */
export interface PairTier {
  tier: 'full' | 'today' | 'byDate' | 'bestSeen'
  /** "Full price", "By Dec 20". */
  label: string
  /** "C is $40.00 less". */
  words: string
}

export interface ComparedPair {
  letters: readonly [string, string]
  /** What of today's difference outlives the sales; empty where one has no total. */
  words: string
  tiers: PairTier[]
}

export interface PairIn extends ComparedIn {
  /** A store's own quote knows of no price elsewhere: nothing was seen best. */
  mode: 'club' | 'store'
}

/**
 * Two builds tier by tier, in the order of water levels, and what of today's difference is a sale. A tier that one of them has no total of says which; by a
 * date is left out where nothing is expected of either.
 *
 * Units: minor units. Errors: none. Source: own.
 *
 * @example comparePair(a, c, said).tiers[1] // { tier: 'today', label: 'Today', words: 'C is $40.00 less' }
 */
export function comparePair(one: Compared, other: Compared, said: PairIn): ComparedPair {
  const row = (tier: 'full' | 'today' | 'bestSeen', label: string): PairTier => ({
    tier,
    label,
    words: sayTier([one.letter, one.cost[tier]], [other.letter, other.cost[tier]], said.currency),
  })
  return {
    letters: [one.letter, other.letter],
    words: hasTotal(one) && hasTotal(other) ? sayPair(one, other, said) : '',
    tiers: [
      row('full', 'Full price'),
      row('today', 'Today'),
      ...byDateRow(one, other, said),
      ...(said.mode === 'store' ? [] : [row('bestSeen', 'Best seen')]),
    ],
  }
}

type Told = readonly [letter: string, tier: Tier]

function sayTier([letter, tier]: Told, [otherLetter, other]: Told, currency: string): string {
  if (!tier.complete || !other.complete) {
    const lacking = [...(tier.complete ? [] : [letter]), ...(other.complete ? [] : [otherLetter])]
    return `no total of ${lacking.join(' and ')}`
  }
  const gap = other.totalMinor - tier.totalMinor
  return gap === 0 ? 'the same' : `${gap > 0 ? letter : otherLetter} is ${sayMoney(Math.abs(gap), currency)} less`
}

function byDateRow(one: Compared, other: Compared, { currency, thisYear }: PairIn): PairTier[] {
  const until = (one.byDate ?? other.byDate)?.until
  if (until === undefined) return []
  const label = `By ${sayDate(until, thisYear)}`
  if (!one.byDate || !other.byDate) return [{ tier: 'byDate', label, words: `not known of ${one.byDate ? other.letter : one.letter}` }]
  const gap = apartByDate(one.byDate, other.byDate, currency)
  const amount = sayWhole(Math.abs(gap), currency)
  const words = gap === 0 ? 'about the same' : `${gap > 0 ? one.letter : other.letter} is about ${amount} less`
  return [{ tier: 'byDate', label, words }]
}

/**
 * Every two of the builds, in the order of their letters; none where fewer than three have a total: of two the comparison with the cheapest says it all.
 *
 * @example comparePairs([a, b, c], said).map(({ letters }) => letters.join('')) // ['AB', 'AC', 'BC']
 */
export function comparePairs(builds: readonly Compared[], said: PairIn): ComparedPair[] {
  const priced = builds.filter(hasTotal)
  if (priced.length < 3) return []
  return priced.flatMap((one, at) => priced.slice(at + 1).map((other) => comparePair(one, other, said)))
}
