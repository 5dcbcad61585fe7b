/** Lengths in mm; the fixture lies centred above the water's rectangle and shines down as a Lambertian strip. */
export interface LightOverWater {
  fixtureLengthMm: number
  fixtureWidthMm: number
  waterLengthMm: number
  waterWidthMm: number
  /** Fixture above the water surface. */
  aboveWaterMm: number
}

/** Five Gauss–Legendre points on 0 to 1: within 2e-4 of a fine sum for every fixture on or above a rim. */
const POINTS = [0.046910077030668, 0.2307653449471585, 0.5, 0.7692346550528415, 0.953089922969332] as const
const WEIGHTS = [0.1184634425280945, 0.2393143352496832, 0.2844444444444444, 0.2393143352496832, 0.1184634425280945] as const

/**
 * Configuration factor from a small element to a parallel rectangle with a corner under it; a and b are its sides over the distance.
 *
 * Source: Howell, A Catalog of Radiation Configuration Factors, B-3 (from memory). Odd in each side.
 *
 * @example cornerFactor(1, 1) // 0.13853
 */
export function cornerFactor(a: number, b: number): number {
  const rootA = Math.sqrt(1 + a * a)
  const rootB = Math.sqrt(1 + b * b)
  return ((a / rootA) * Math.atan(b / rootA) + (b / rootB) * Math.atan(a / rootB)) / (2 * Math.PI)
}

/** Configuration factor of a level rectangle with half sides `a` and `b`, seen from `h` beside it, `x` and `y` off its middle; all of one unit. */
function rectangleFactor(a: number, b: number, x: number, y: number, h: number): number {
  const [right, left, near, far] = [(a - x) / h, (a + x) / h, (b - y) / h, (b + y) / h]
  return cornerFactor(right, near) + cornerFactor(right, far) + cornerFactor(left, near) + cornerFactor(left, far)
}

/**
 * Share of a fixture's light that falls on the water surface.
 *
 * Units:  mm in, 0 to 1 out, unrounded. Range: a fixture at least 1 mm above the water.
 * Source: corner factors summed with sign, averaged over the fixture (Howell C-11, from memory).
 *
 * @example lightUtilisation({ fixtureLengthMm: 1150, fixtureWidthMm: 80, waterLengthMm: 1199.2, waterWidthMm: 437.2, aboveWaterMm: 50 }) // 0.953
 */
export function lightUtilisation({ fixtureLengthMm, fixtureWidthMm, waterLengthMm, waterWidthMm, aboveWaterMm }: LightOverWater): number {
  const h = Math.max(1, aboveWaterMm)
  let sum = 0
  for (let i = 0; i < POINTS.length; i++) {
    const x = ((POINTS[i] ?? 0) * fixtureLengthMm) / 2
    for (let j = 0; j < POINTS.length; j++) {
      const y = ((POINTS[j] ?? 0) * fixtureWidthMm) / 2
      sum += (WEIGHTS[i] ?? 0) * (WEIGHTS[j] ?? 0) * rectangleFactor(waterLengthMm / 2, waterWidthMm / 2, x, y, h)
    }
  }
  return sum
}

/** A level patch under a fixture, lengths in mm: how far along and across from below its middle, and how far down. */
export interface UnderFixture {
  fixtureLengthMm: number
  fixtureWidthMm: number
  alongMm: number
  acrossMm: number
  belowMm: number
}

/**
 * Share of what a level patch sees that is the fixture: its configuration factor.
 *
 * Units:  mm in, 0 to 1 out, unrounded. Range: at least 1 mm below the fixture.
 * Source: corner factors summed with sign (Howell B-3, from memory).
 *
 * @example fixtureFactor({ fixtureLengthMm: 2000, fixtureWidthMm: 2000, alongMm: 0, acrossMm: 0, belowMm: 1000 }) // 0.55413
 */
export const fixtureFactor = ({ fixtureLengthMm, fixtureWidthMm, alongMm, acrossMm, belowMm }: UnderFixture): number =>
  rectangleFactor(fixtureLengthMm / 2, fixtureWidthMm / 2, alongMm, acrossMm, Math.max(1, belowMm))
