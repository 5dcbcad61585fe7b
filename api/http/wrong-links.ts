import { networkOf } from '../auth/network.ts'
import type { Ctx } from '../context.ts'
import { problemBody, ProblemError } from './problem.ts'
import { clientAddress } from './site.ts'
import { tallies } from './tally.ts'

/** Nobody mistypes a link a hundred times in a quarter of an hour; a whole club behind one address opening old ones stays under it. */
const MOST_WRONG = 100
const TOO_MANY =
  'Too many links that open nothing came from here, this one among them. Check it for a missing end; another wrong one is looked at in a quarter of an hour.'
/** In memory: a restart forgiving everyone does no harm to links of 128 bits. */
const tallyOf = tallies(15 * 60_000)

/**
 * Counts a link that opened nothing, by the place it came from, and refuses with 429 where too many did. Asked only once a link is known to
 * be wrong: a right one proves itself, and opens however many wrong ones came from behind the same proxy. Errors: ProblemError.
 */
export function noteWrongLink(c: Ctx): void {
  const deps = c.get('deps')
  const tally = tallyOf(deps)
  const place = networkOf(clientAddress(c))
  const seconds = tally.waitS(place, MOST_WRONG, deps.clock())
  if (seconds > 0) throw new ProblemError(problemBody(429, 'too_many', TOO_MANY), { 'Retry-After': String(seconds) })
  tally.add(place, deps.clock())
}
