/** A stream of numbers between 0 and 1, both exclusive, the same for the same seed and name. */
export type Random = () => number

/** FNV-1a, 32 bit (Fowler, Noll, Vo; IETF draft-eastlake-fnv): turns a name into a number. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5
  for (let index = 0; index < text.length; index += 1) hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193)
  return hash >>> 0
}

/**
 * A seeded stream of its own for each name, so that what is drawn for one store does not shift when a line is added.
 *
 * Source: sfc32, Doty-Humphrey's Small Fast Counting generator of PractRand (public domain), warmed up by 15 rounds; seeded by the seed and
 * the name's FNV-1a hash.
 *
 * @example randomOf(7, 'upriver')() // the same in every run
 */
export function randomOf(seed: number, name: string): Random {
  let a = seed | 0
  let b = hashOf(name) | 0
  let c = hashOf(`${Math.floor(seed / 2 ** 32)} ${name}`) | 0
  let counter = 1
  const next = (): number => {
    const sum = (((a + b) | 0) + counter) | 0
    counter = (counter + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = ((c << 21) | (c >>> 11)) + sum
    c |= 0
    return ((sum >>> 0) + 0.5) / 2 ** 32
  }
  for (let round = 0; round < 15; round += 1) next()
  return next
}

/** Standard normal. Box & Muller, Ann. Math. Statist. 29 (1958). */
export const drawNormal = (random: Random): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random())

/** Gamma with a shape above 0 and scale 1. Marsaglia & Tsang, ACM TOMS 26 (2000). */
export function drawGamma(random: Random, shape: number): number {
  if (shape < 1) return drawGamma(random, shape + 1) * random() ** (1 / shape)
  const d = shape - 1 / 3
  const c = 1 / Math.sqrt(9 * d)
  for (;;) {
    const x = drawNormal(random)
    const v = (1 + c * x) ** 3
    if (v > 0 && Math.log(random()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v
  }
}

/** Beta with both parameters above 0: the share of one gamma in two. */
export function drawBeta(random: Random, alpha: number, beta: number): number {
  const first = drawGamma(random, alpha)
  const sum = first + drawGamma(random, beta)
  return sum > 0 ? first / sum : 0
}

/** Whole days until something with a daily chance happens, at least 1. */
export const drawDaysUntil = (random: Random, chance: number): number =>
  chance >= 1 ? 1 : chance <= 0 ? Infinity : 1 + Math.floor(Math.log(random()) / Math.log1p(-chance))
