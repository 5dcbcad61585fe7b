import { createHash } from 'node:crypto'

/** Uniform draws in [0, 1), the same for the same seed. */
export type Random = () => number

/**
 * A stream of its own for a text. The text goes through SHA-256, so that "abc/7" and "abc/8" have nothing in common; the state then runs through
 * the small fast counter generator sfc32 (public domain), which passes the usual batteries.
 *
 * @example randomOf('9f3c/12')() // a number in [0, 1)
 */
export function randomOf(text: string): Random {
  const digest = createHash('sha256').update(text).digest()
  let [a, b, c, d] = [digest.readInt32LE(0), digest.readInt32LE(4), digest.readInt32LE(8), digest.readInt32LE(12)]
  return () => {
    const t = (((a + b) | 0) + d) | 0
    d = (d + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (c << 21) | (c >>> 11)
    c = (c + t) | 0
    return (t >>> 0) / 4294967296
  }
}

export const between = (random: Random, least: number, most: number): number => least + (most - least) * random()

/** Whole number from least to most, both included. */
export const wholeBetween = (random: Random, least: number, most: number): number => least + Math.floor((most - least + 1) * random())

/** As likely between 1 and 10 as between 10 and 100. Range: least above 0. */
export const logBetween = (random: Random, least: number, most: number): number =>
  Math.exp(between(random, Math.log(least), Math.log(most)))

/** Standard normal by the Box–Muller transform. */
export const normal = (random: Random): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

/** Number of events, by counting exponential waits. Range: means to about 30; above, it is only slow. */
export function poisson(random: Random, mean: number): number {
  let count = 0
  for (let reached = -Math.log(1 - random()); reached < mean; reached -= Math.log(1 - random())) count += 1
  return count
}

export function pick<T>(random: Random, values: readonly T[]): T {
  const value = values[Math.floor(random() * values.length)]
  if (value === undefined) throw new RangeError('Nothing to pick from')
  return value
}

export const logistic = (logit: number): number => 1 / (1 + Math.exp(-logit))
export const logitOf = (share: number): number => Math.log(share / (1 - share))
