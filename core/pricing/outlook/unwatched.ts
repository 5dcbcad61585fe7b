import type { StateDay } from './echoes.ts'

/** Days on which nobody looked at a store, both inclusive, as day numbers. */
export interface Unwatched {
  first: number
  last: number
}

/** A silence that chance would bring once in so many records is taken for absence: one that is taken so wrongly loses a few quiet days. */
const CHANCE_ONCE_IN = 30

/**
 * Stretches in which no product of a store was reported at all, too long for chance: whoever reports there was away. Silence then says nothing of sales.
 *
 * By a Poisson process: at `r` report days a day, a silence of L days follows a report with chance e^(−r L); `r` is taken outside the
 * stretches found. Units: day numbers; reports of one store, product by product, up to `asOf`.
 */
export function unwatchedOf(products: Iterable<readonly StateDay[]>, asOf: number): Unwatched[] {
  const seen = new Set<number>()
  for (const reports of products) for (const { day } of reports) seen.add(day)
  const days = [...seen].sort((a, b) => a - b)
  const first = days[0]
  if (first === undefined) return []
  const silences = [...days, asOf + 1].slice(1).map((day, index) => ({ first: (days[index] as number) + 1, last: day - 1 }))
  let found: Unwatched[] = []
  // Taking a stretch out raises the rate, which may show another: three rounds settle it.
  for (let round = 0; round < 3; round += 1) {
    const away = found.reduce((sum, { first, last }) => sum + last - first + 1, 0)
    const rate = days.length / (asOf - first + 1 - away)
    const longest = Math.log(CHANCE_ONCE_IN * days.length) / rate
    found = silences.filter(({ first, last }) => last - first + 1 > longest)
  }
  return found
}
