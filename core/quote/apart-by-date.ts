import { currencyExponent } from '../money.ts'
import type { ByDate } from '../pricing/by-date.ts'

/** Of half the wider range, the share that a difference must come to before it is told. */
const TOLD_FROM = 0.25

/**
 * How far apart two builds are by a day, as far as their expected sums can tell: the other's less the one's; 0, "about the same", where that is less than a whole unit, or less than
 * a quarter of half the wider range. With normal outcomes of one width and nothing in common, a gap of that mark leaves the cheaper one dearer in some four of ten cases. Parts that
 * both hold make a difference better known than two ranges can say; so this is silent sooner than it must be, never too late. Where the advice waits with nothing the sum is today's
 * and has no range.
 *
 * Units: minor units. Source: own; four of ten from the normal distribution: z = 0.25 × 1.2816 / √2 = 0.227.
 *
 * @example apartByDate(500 to 440–570, 497 to 438–569) // 0
 */
export function apartByDate(one: ByDate, other: ByDate, currency: string): number {
  const gap = other.expectedMinor - one.expectedMinor
  const least = Math.max(10 ** currencyExponent(currency) / 2, TOLD_FROM * Math.max(halfRange(one), halfRange(other)))
  return Math.abs(gap) < least ? 0 : gap
}

const halfRange = ({ waits, low10Minor, high90Minor }: ByDate): number => (waits === 0 ? 0 : (high90Minor - low10Minor) / 2)
