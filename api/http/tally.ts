/** Keys remembered at once; beyond it the oldest are forgotten, so that a flood costs no memory. */
const MOST_KEYS = 10_000

/** Counts events by key in windows that begin with the first. Kept in memory: a restart forgives everyone. */
export interface Tally {
  add(key: string, nowMs: number): void
  /** Seconds until a key that reached `most` may go on; 0 where it may now. */
  waitS(key: string, most: number, nowMs: number): number
}

/** @example const tally = createTally(60_000); tally.add('a', 0); tally.waitS('a', 1, 0) // 60 */
export function createTally(windowMs: number): Tally {
  const counted = new Map<string, { count: number; until: number }>()
  return {
    add(key, nowMs) {
      const before = counted.get(key)
      const { count, until } = before === undefined || before.until <= nowMs ? { count: 0, until: nowMs + windowMs } : before
      counted.delete(key)
      counted.set(key, { count: count + 1, until })
      const oldest = counted.keys().next().value
      if (counted.size > MOST_KEYS && oldest !== undefined) counted.delete(oldest)
    },
    waitS(key, most, nowMs) {
      const known = counted.get(key)
      return known === undefined || known.until <= nowMs || known.count < most ? 0 : Math.ceil((known.until - nowMs) / 1000)
    },
  }
}

/** One tally an application, told apart by the parts it is made of. */
export function tallies(windowMs: number): (owner: object) => Tally {
  const made = new WeakMap<object, Tally>()
  return (owner) => {
    const known = made.get(owner) ?? createTally(windowMs)
    made.set(owner, known)
    return known
  }
}
