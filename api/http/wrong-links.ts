import type { Ctx } from '../context.ts'
import { problemBody, ProblemError } from './problem.ts'
import { clientAddress } from './site.ts'

const WINDOW_MS = 15 * 60_000
/** Nobody mistypes a link a hundred times; a whole club behind one address opening old ones stays under it. */
const MOST_WRONG = 100
/** Addresses remembered at once; beyond it the oldest are forgotten, so that a flood costs no memory. */
const MOST_ADDRESSES = 10_000

interface Wrong {
  count: number
  until: number
}
/** Kept in memory, one table an application: a restart forgiving everyone does no harm to links of 128 bits. */
const tables = new WeakMap<object, Map<string, Wrong>>()

function tableOf(c: Ctx): Map<string, Wrong> {
  const deps = c.get('deps')
  const known = tables.get(deps)
  if (known !== undefined) return known
  const made = new Map<string, Wrong>()
  tables.set(deps, made)
  return made
}

/** Refuses with 429 where too many wrong links came from this address. Errors: ProblemError. */
export function demandFewWrongLinks(c: Ctx): void {
  const now = c.get('deps').clock()
  const wrong = tableOf(c).get(clientAddress(c))
  if (wrong === undefined || wrong.until <= now || wrong.count < MOST_WRONG) return
  const seconds = Math.ceil((wrong.until - now) / 1000)
  throw new ProblemError(problemBody(429, 'too_many', 'Too many links that open nothing came from here. Wait a quarter of an hour.'), {
    'Retry-After': String(seconds),
  })
}

/** Counts a link that opened nothing. */
export function noteWrongLink(c: Ctx): void {
  const [table, address, now] = [tableOf(c), clientAddress(c), c.get('deps').clock()]
  const before = table.get(address)
  const wrong = before === undefined || before.until <= now ? { count: 0, until: now + WINDOW_MS } : before
  table.delete(address)
  table.set(address, { ...wrong, count: wrong.count + 1 })
  const oldest = table.keys().next().value
  if (table.size > MOST_ADDRESSES && oldest !== undefined) table.delete(oldest)
}
