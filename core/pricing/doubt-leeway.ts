import { trust } from './trust.ts'

/** How much one unit of log-odds moves the limits, as a share of them: half a robust deviation of the three and a half that a newcomer has. Own. */
const LEEWAY_A_LOGIT = 1 / 7
/** Nobody is so careless that a price 2.5 deviations off waits, and nobody so trusted that one 4.5 off does not: an honest slip looks the same from both. Own. */
const LEAST_LEEWAY = 5 / 7
const MOST_LEEWAY = 9 / 7

const logit = (chance: number): number => Math.log(chance / (1 - chance))

/**
 * How far from the record a reporter's price may lie before it waits for a second member, as a multiple of what a newcomer's may. A price that is off is either a true one from the
 * edge of the record or a mistake; trust is the odds of the first before the price was read, and the tails of both fall about evenly with the deviation, so that odds move the limit by
 * adding to it.
 *
 * Units: trust between 0 and 1, by votes of others (`trust`). 1 for a newcomer; between 5/7 and 9/7.
 * Errors: the bounds outside 0 to 1; NaN counts as a newcomer.
 * Source: own.
 *
 * @example doubtLeeway(2 / 3) // 1
 * @example doubtLeeway(9 / 11) // 1.116, after 7 confirmed and 1 disputed
 * @example doubtLeeway(2 / 7) // 0.77, after 4 disputed
 */
export function doubtLeeway(trusted: number): number {
  if (Number.isNaN(trusted)) return 1
  const odds = logit(Math.min(Math.max(trusted, 0), 1)) - logit(trust(0, 0))
  return Math.min(Math.max(1 + LEEWAY_A_LOGIT * odds, LEAST_LEEWAY), MOST_LEEWAY)
}
