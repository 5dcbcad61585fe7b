import type { Ctx } from '../context.ts'
import { problemBody, ProblemError } from './problem.ts'
import { clientAddress } from './site.ts'
import { tallies } from './tally.ts'

/** Nobody mistypes a link a hundred times in a quarter of an hour; a whole club behind one address opening old ones stays under it. */
const MOST_WRONG = 100
/** In memory: a restart forgiving everyone does no harm to links of 128 bits. */
const tallyOf = tallies(15 * 60_000)

/** Refuses with 429 where too many wrong links came from this address. Errors: ProblemError. */
export function demandFewWrongLinks(c: Ctx): void {
  const deps = c.get('deps')
  const seconds = tallyOf(deps).waitS(clientAddress(c), MOST_WRONG, deps.clock())
  if (seconds === 0) return
  throw new ProblemError(problemBody(429, 'too_many', 'Too many links that open nothing came from here. Wait a quarter of an hour.'), {
    'Retry-After': String(seconds),
  })
}

/** Counts a link that opened nothing. */
export function noteWrongLink(c: Ctx): void {
  tallyOf(c.get('deps')).add(clientAddress(c), c.get('deps').clock())
}
