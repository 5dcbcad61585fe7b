/** How a pane is held along its upper edge; the sides and the bottom are always held by their joints. */
export type TopEdge = 'held' | 'free'

/** A glass pane with water on one side. Metres and pascals. */
export interface LoadedPane {
  /** Horizontal length; the outside one is on the safe side. */
  lengthM: number
  /** Depth of the water at the pane. */
  depthM: number
  thicknessM: number
  topEdge: TopEdge
  /** kg/m³ */
  waterDensity: number
}

export interface PlateResult {
  /** Largest tensile bending stress, Pa, from the principal moments with the twist counted. */
  stressPa: number
  /** Largest outward bow, m. */
  bowM: number
  /** Pressure of the water at the bottom, Pa. */
  bottomPressurePa: number
}

/** Standard acceleration of free fall, m/s²: CGPM 1901, NIST SP 811. */
export const FREE_FALL = 9.80665
/** Young's modulus of float glass, Pa: EN 572-1. */
export const GLASS_MODULUS_PA = 70e9

/**
 * Coefficients at Poisson's ratio 0.22 by length over depth: of the bow with four edges held, its stress, of the bow with a free top, its stress.
 *
 * Own, from the Lévy series of a simply supported plate under a triangular load (Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed.,
 * 1959, articles 29 to 31 and 48), which gives the uniform and hydrostatic values printed in Roark's Formulas for Stress and Strain, table 11.4.
 */
const COEFFICIENTS: ReadonlyArray<readonly [ratio: number, heldBow: number, heldStress: number, freeBow: number, freeStress: number]> = [
  [0.5, 0.0039, 0.0821, 0.004, 0.0838],
  [0.667, 0.009, 0.1102, 0.0101, 0.12],
  [0.8, 0.0144, 0.1256, 0.0181, 0.1497],
  [1, 0.0235, 0.1538, 0.0399, 0.1972],
  [1.25, 0.0346, 0.2068, 0.0898, 0.2775],
  [1.5, 0.0443, 0.2514, 0.1646, 0.3506],
  [1.75, 0.052, 0.2865, 0.2644, 0.4105],
  [2, 0.058, 0.3132, 0.3886, 0.4579],
  [2.25, 0.0625, 0.333, 0.5363, 0.4947],
  [2.5, 0.0658, 0.3475, 0.7064, 0.5542],
  [3, 0.07, 0.3658, 1.1114, 0.6798],
  [3.5, 0.0722, 0.3752, 1.5989, 0.8051],
  [4, 0.0733, 0.3801, 2.1663, 0.9302],
  [5, 0.0742, 0.3837, 3.5348, 1.1802],
  [6, 0.0744, 0.3846, 5.2111, 1.4301],
]
/** Four edges held and very long: a strip under a triangular load, `M = q₀h²/(9√3)`, so 6/(9√3); its bow 0.00652·12·(1 − 0.22²). */
const LONG_HELD = { stress: 0.3849, bow: 0.0744 }
/** A long pane with a free top twists about its bottom: the stress grows by a quarter for each unit of length over depth. */
const TWIST_SLOPE = 0.25

interface Pair {
  bow: number
  stress: number
}
const pairOf = ([, heldBow, heldStress, freeBow, freeStress]: (typeof COEFFICIENTS)[number], topEdge: TopEdge): Pair =>
  topEdge === 'held' ? { bow: heldBow, stress: heldStress } : { bow: freeBow, stress: freeStress }

/** Coefficients between the rows; below the first its own, which is more than the pane has; beyond the last the long pane's. */
function coefficients(ratio: number, topEdge: TopEdge): Pair {
  const after = COEFFICIENTS.findIndex(([at]) => at >= ratio)
  const last = COEFFICIENTS[COEFFICIENTS.length - 1] as (typeof COEFFICIENTS)[number]
  if (after < 0) return beyond(ratio, pairOf(last, topEdge), last[0], topEdge)
  const upper = COEFFICIENTS[after] as (typeof COEFFICIENTS)[number]
  const lower = COEFFICIENTS[after - 1] ?? upper
  const share = lower === upper ? 0 : (ratio - lower[0]) / (upper[0] - lower[0])
  const [a, b] = [pairOf(lower, topEdge), pairOf(upper, topEdge)]
  return { bow: a.bow + share * (b.bow - a.bow), stress: a.stress + share * (b.stress - a.stress) }
}

function beyond(ratio: number, last: Pair, lastRatio: number, topEdge: TopEdge): Pair {
  if (topEdge === 'held') return LONG_HELD
  // A flap hinged along its bottom and held at both ends bows as the square of its length.
  return { stress: last.stress + TWIST_SLOPE * (ratio - lastRatio), bow: last.bow * (ratio / lastRatio) ** 2 }
}

/**
 * Bending of a pane under still water, `σ = β·q₀·h²/t²` and `w = α·q₀·h⁴/(E·t³)` with `q₀ = ρ·g·h`.
 *
 * Units:  metres, kg/m³; pascals and metres out, unrounded.
 * Range:  a thin plate that bows by less than half its thickness; beyond that the real stress is less than told. Length over depth from 0.5;
 *         a narrower pane is told the stress of 0.5, which is more than it has.
 * Errors: none; every length must be above 0.
 * Source: as the coefficients say. Silicone joints neither clamp nor pin a pane: a screening.
 *
 * @example // 1.2192 m long, 0.4834 m of water, 10 mm, free top
 * glassPlate({ lengthM: 1.2192, depthM: 0.4834, thicknessM: 0.01, topEdge: 'free', waterDensity: 997.05 }).stressPa // 6.18e6
 */
export function glassPlate(pane: LoadedPane): PlateResult {
  const { lengthM, depthM, thicknessM, topEdge, waterDensity } = pane
  const bottomPressurePa = waterDensity * FREE_FALL * depthM
  const { bow, stress } = coefficients(lengthM / depthM, topEdge)
  return {
    stressPa: (stress * bottomPressurePa * depthM ** 2) / thicknessM ** 2,
    bowM: (bow * bottomPressurePa * depthM ** 4) / (GLASS_MODULUS_PA * thicknessM ** 3),
    bottomPressurePa,
  }
}

/**
 * Thickness at which the pane's stress is the given one, m. Units and range as `glassPlate`.
 *
 * @example thicknessFor({ lengthM: 1.2192, depthM: 0.4834, topEdge: 'free', waterDensity: 997.05 }, 5.053e6) // 0.01106
 */
export function thicknessFor(pane: Omit<LoadedPane, 'thicknessM'>, stressPa: number): number {
  return Math.sqrt(glassPlate({ ...pane, thicknessM: 1 }).stressPa / stressPa)
}
