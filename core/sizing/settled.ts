import type { Finding, Verdict } from './finding.ts'
import { namesOf } from './make-finding.ts'
import { settle } from './verdict.ts'

/**
 * Verdict of a check whose inputs were partly unstated, judged at the worst and at the best that the typical ranges allow.
 * Where both ends agree the unstated inputs are named as assumed, else they are what is missing. Defaults of the room are named in either case.
 */
export function settled(
  worst: Verdict,
  best: Verdict,
  unstated: readonly string[],
  defaults: readonly string[],
): Pick<Finding, 'verdict' | 'assumed' | 'missing'> {
  const verdict = settle(worst, best)
  return worst === best
    ? { verdict, assumed: namesOf(unstated, defaults), missing: [] }
    : { verdict, assumed: namesOf(defaults), missing: namesOf(unstated) }
}
