import { createHash } from 'node:crypto'

/** A stream of numbers from 0 up to 1 that is the same for the same seed: Mulberry32, 32 bits of state, plenty for a scenario. */
export interface Seeded {
  /** From 0 up to 1. */
  next(): number
  /** A whole number from low to high, both included. */
  whole(low: number, high: number): number
  /** True with this chance. */
  chance(share: number): boolean
  pick<T>(from: readonly T[]): T
}

export function seeded(seed: number): Seeded {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
  return {
    next,
    whole: (low, high) => low + Math.floor(next() * (high - low + 1)),
    chance: (share) => next() < share,
    pick: (from) => {
      const one = from[Math.floor(next() * from.length)]
      if (one === undefined) throw new RangeError('There is nothing to pick from.')
      return one
    },
  }
}

/** The id of a thing of the scenario by its name, the same in every demo folder. */
export function demoId(what: string, name: string): string {
  const hex = createHash('sha256').update(`${what} ${name}`).digest('hex')
  return withVersion(hex.slice(0, 32), '4')
}

/** A UUID of version 7 as a phone would have made it at that moment. */
export function phoneIdAt(atMs: number, seed: Seeded): string {
  const random = Array.from({ length: 20 }, () => seed.whole(0, 15).toString(16)).join('')
  return withVersion(atMs.toString(16).padStart(12, '0') + random, '7')
}

function withVersion(hex: string, version: '4' | '7'): string {
  const marked = `${hex.slice(0, 12)}${version}${hex.slice(13, 16)}8${hex.slice(17, 32)}`
  return marked.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5')
}
