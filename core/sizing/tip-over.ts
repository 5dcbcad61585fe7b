import { FREE_FALL } from './glass-plate.ts'
import type { MassAt } from './mass-centre.ts'

/**
 * Horizontal force that begins to tip a body over an edge of its base: its weight times the edge's distance, over the height of the push.
 *
 * Units:  kg and mm in, newtons out, unrounded. Range: a push above the base, and a base that does not slide.
 * Source: moments about the edge (any statics text, "impending tipping").
 *
 * @example tipForceN({ kg: 100, leverMm: 250 }, 1000) // 245.2
 */
export const tipForceN = (body: { kg: number; leverMm: number }, pushHeightMm: number): number =>
  (body.kg * FREE_FALL * body.leverMm) / pushHeightMm

/**
 * How far a body leans before its centre of mass stands over the edge of its base.
 *
 * Units:  mm in, degrees out, unrounded. Source: as above; tan θ is the lever over the height of the centre.
 *
 * @example tipAngleDeg(250, 1000) // 14.04
 */
export const tipAngleDeg = (leverMm: number, centreHeightMm: number): number => (Math.atan(leverMm / centreHeightMm) * 180) / Math.PI

/**
 * How much higher the centre of mass acts while water runs to the low side: density times the second moment of the free surface over the whole mass.
 *
 * Units:  m² and mm and kg in, mm out. Range: small leans, and a surface that is free: not filled to the rim.
 * Source: free surface effect of naval architecture, from memory. The second moment is that of a rectangle as wide, A·b²/12, which no convex plan exceeds.
 *
 * @example freeSurfaceRiseMm({ areaMm2: 524_290, widthMm: 437.2, waterDensity: 997 }, 336) // 24.8
 */
export function freeSurfaceRiseMm(surface: { areaMm2: number; widthMm: number; waterDensity: number }, body: MassAt['kg']): number {
  const secondMomentM4 = ((surface.areaMm2 / 1e6) * (surface.widthMm / 1000) ** 2) / 12
  return (surface.waterDensity * secondMomentM4 * 1000) / body
}
