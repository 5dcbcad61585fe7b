import type { Ctx } from '../context.ts'
import { problemBody, ProblemError } from './problem.ts'
import { tallies } from './tally.ts'

/** Nobody ticks, tests and answers once a second for a minute; a phone that sends a day's ticks at once stays under it. */
const MOST_WRITES = 60
const tallyOf = tallies(60_000)
const READS = new Set(['GET', 'HEAD'])

/** Counts a write through an opened link, whoever holds it, and refuses the sixty-first of a minute with 429. Errors: ProblemError. */
export function demandFewWrites(c: Ctx, linkedId: string): void {
  if (READS.has(c.req.method)) return
  const { clock } = c.get('deps')
  const tally = tallyOf(c.get('deps'))
  const seconds = tally.waitS(linkedId, MOST_WRITES, clock())
  if (seconds > 0) {
    const detail = `More than ${MOST_WRITES} changes came through this link within a minute. Wait a minute and send this one again.`
    throw new ProblemError(problemBody(429, 'too_many', detail), { 'Retry-After': String(seconds) })
  }
  tally.add(linkedId, clock())
}
