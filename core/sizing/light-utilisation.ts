import type { Point } from './plan-outline.ts'

/** Lengths in mm; the fixture shines down as a Lambertian strip. */
export interface LightOverWater {
  fixtureLengthMm: number
  fixtureWidthMm: number
  /** Corners of the water's surface, one way round, from below the middle of the fixture. */
  water: readonly Point[]
  /** Fixture above the water surface. */
  aboveWaterMm: number
}

/** Five Gauss–Legendre points on 0 to 1: within 2e-4 of a fine sum for every fixture on or above a rim. */
const POINTS = [0.04691008, 0.23076534, 0.5, 0.76923466, 0.95308992] as const
const WEIGHTS = [0.11846344, 0.23931434, 0.28444444, 0.23931434, 0.11846344] as const

/** Corners of a rectangle about its middle. */
export function rectangleCorners(length: number, width: number): Point[] {
  const [x, y] = [length / 2, width / 2]
  return [{ x: -x, y: -y }, { x, y: -y }, { x, y }, { x: -x, y }] // prettier-ignore
}

/**
 * Configuration factor from a small level element to a level polygon at a distance of `h` from its plane; `x` and `y` are the element's place among the
 * polygon's corners, all of one unit.
 *
 * Source: the integral round the edge: half of the sum of the angle that each side subtends, times the cosine between the element's normal and that of the
 *         triangle it makes with the side, over π (Lambert 1760; Howell, A Catalog of Radiation Configuration Factors, section B, from memory).
 *
 * @example polygonFactor(rectangleCorners(2, 2), 0, 0, 1) // 0.55413
 */
export function polygonFactor(corners: readonly Point[], x: number, y: number, h: number): number {
  let sum = 0
  let [fromX, fromY] = [(corners.at(-1)?.x ?? 0) - x, (corners.at(-1)?.y ?? 0) - y]
  for (const corner of corners) {
    const [toX, toY] = [corner.x - x, corner.y - y]
    const up = fromX * toY - fromY * toX
    const across = Math.sqrt(h * h * ((fromX - toX) ** 2 + (fromY - toY) ** 2) + up * up)
    if (across > 0) sum += (Math.atan2(across, fromX * toX + fromY * toY + h * h) * up) / across
    ;[fromX, fromY] = [toX, toY]
  }
  return Math.abs(sum) / (2 * Math.PI)
}

/** A rectangle under its middle is alike in all quarters: one stands for four. */
const quartersOf = ({ length }: readonly Point[]): ReadonlyArray<readonly [number, number]> =>
  length === 4 ? [[1, 1]] : [[1, 1], [1, -1], [-1, 1], [-1, -1]] // prettier-ignore

/**
 * Share of a fixture's light that falls on the water surface.
 *
 * Units:  mm in, 0 to 1 out, unrounded. Range: a fixture at least 1 mm above the water; four corners are those of a rectangle about the fixture's middle.
 * Source: the factor of each patch of the fixture to the outline of the water, averaged over the fixture.
 *
 * @example lightUtilisation({ fixtureLengthMm: 1150, fixtureWidthMm: 80, water: rectangleCorners(1199.2, 437.2), aboveWaterMm: 50 }) // 0.953
 */
export function lightUtilisation({ fixtureLengthMm, fixtureWidthMm, water, aboveWaterMm }: LightOverWater): number {
  const h = Math.max(1, aboveWaterMm)
  const quarters = quartersOf(water)
  let sum = 0
  for (const [alongSign, acrossSign] of quarters)
    for (let i = 0; i < POINTS.length; i++) {
      const x = (alongSign * (POINTS[i] ?? 0) * fixtureLengthMm) / 2
      for (let j = 0; j < POINTS.length; j++) {
        const y = (acrossSign * (POINTS[j] ?? 0) * fixtureWidthMm) / 2
        sum += (WEIGHTS[i] ?? 0) * (WEIGHTS[j] ?? 0) * polygonFactor(water, x, y, h)
      }
    }
  return sum / quarters.length
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
 * Source: as `polygonFactor`.
 *
 * @example fixtureFactor({ fixtureLengthMm: 2000, fixtureWidthMm: 2000, alongMm: 0, acrossMm: 0, belowMm: 1000 }) // 0.55413
 */
export const fixtureFactor = ({ fixtureLengthMm, fixtureWidthMm, alongMm, acrossMm, belowMm }: UnderFixture): number =>
  polygonFactor(rectangleCorners(fixtureLengthMm, fixtureWidthMm), alongMm, acrossMm, Math.max(1, belowMm))
