import { tankGeometry, type TankFill, type TankGeometry, type TankShape } from '../../../core/sizing/tank-geometry.ts'
import { tankMass } from '../../../core/sizing/tank-mass.ts'

export const INCH = 25.4

/** 48 × 18 × 21 in (75 US gal by its label), 10 mm glass, filled to 40 mm below the rim, 50 mm of gravel. */
export const TANK_A: TankShape = {
  lengthMm: 48 * INCH,
  widthMm: 18 * INCH,
  heightMm: 21 * INCH,
  glassMm: 10,
  bottomMm: 10,
  material: 'glass',
}
export const FILL_A: TankFill = { waterBelowRimMm: 40, substrateDepthMm: 50 }

/** 60 × 30 × 36 cm, 6 mm glass, 324 mm of water, no substrate. */
export const TANK_B: TankShape = { lengthMm: 600, widthMm: 300, heightMm: 360, glassMm: 6, bottomMm: 6, material: 'glass' }
export const FILL_B: TankFill = { waterBelowRimMm: 30, substrateDepthMm: 0 }

export function geometryOf(shape: TankShape, fill: TankFill): TankGeometry {
  const result = tankGeometry(shape, fill)
  if (!result.ok) throw new Error(`the reference tank was refused: ${result.refusal.code}`)
  return result.value
}
export const GEOMETRY_A = geometryOf(TANK_A, FILL_A)
export const GEOMETRY_B = geometryOf(TANK_B, FILL_B)
export const MASS_A = tankMass({ shape: TANK_A, geometry: GEOMETRY_A, grain: 'quartz', water: 'fresh', waterC: 25 })

/** Asserts a relative tolerance and says both figures when it fails. */
export function isNear(actual: number | undefined, expected: number, relative: number): void {
  if (actual === undefined || !(Math.abs(actual - expected) <= Math.abs(expected) * relative))
    throw new Error(`${actual} is not within ${relative} of ${expected}`)
}
