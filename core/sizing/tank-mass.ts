import { SALINITY } from '../water/sea-salinity.ts'
import { seaWaterDensity } from '../water/density.ts'
import type { TankGeometry, TankShape } from './tank-geometry.ts'

/**
 * Density of the panels, kg/m³. Float glass 2500: EN 572-1 (a handbook has 2520 for window glass); cast acrylic 1190: ISO 7823-1, from memory.
 */
export const PANEL_DENSITY = { glass: 2500, acrylic: 1190 } as const

/**
 * Density of substrate grains, kg/m³. Quartz 2650: mineralogy, from memory. Active soil weighs about 1.0 kg a litre in bulk (common practice); at a
 * porosity of 0.40 that is 1667 for its grains.
 */
export const GRAIN_DENSITY = { quartz: 2650, active_soil: 1667 } as const
export type Grain = keyof typeof GRAIN_DENSITY

/** Kilograms, unrounded. */
export interface TankMass {
  emptyKg: number
  /** Of the bed that is weighed: what stand and floor carry, and what stores heat. */
  substrateKg: number
  /** Of the water that is dosed, over the bed that is planned. */
  waterKg: number
  runningKg: number
  /** Filled to the rim with the substrate in: the worst that stand and floor will meet. */
  brimKg: number
}

/**
 * Masses of a tank empty, running and filled to the rim, without stand, decor and equipment.
 *
 * Units:  litres and degrees Celsius in, kilograms out, unrounded.
 * Source: geometry × density (EOS-80 for the water).
 *
 * @example // 48 × 18 × 21 in, 10 mm glass, 50 mm of gravel, fresh water of 25 °C
 * tankMass({ shape, geometry, grain: 'quartz', water: 'fresh', waterC: 25 }) // emptyKg 57.283, runningKg 335.976, brimKg 356.89
 */
export function tankMass(tank: {
  shape: Pick<TankShape, 'material'>
  geometry: TankGeometry
  /** The same with the bed that is weighed, where that is another one: `ladenWith`. */
  laden?: TankGeometry
  grain: Grain
  water: 'fresh' | 'salt'
  waterC: number
  /** The maker's own figure, where one is stated. */
  statedEmptyKg?: number
}): TankMass {
  const { geometry, laden = geometry } = tank
  const kgPerLitre = seaWaterDensity(SALINITY[tank.water], tank.waterC) / 1000
  const emptyKg = tank.statedEmptyKg ?? (geometry.shellVolumeL * PANEL_DENSITY[tank.shape.material]) / 1000
  const substrateKg = (laden.substrateSolidL * GRAIN_DENSITY[tank.grain]) / 1000
  const waterKg = geometry.waterVolumeL * kgPerLitre
  const runningKg = emptyKg + substrateKg + laden.waterVolumeL * kgPerLitre
  const brimKg = emptyKg + substrateKg + (laden.grossVolumeL - laden.substrateSolidL) * kgPerLitre
  return { emptyKg, substrateKg, waterKg, runningKg, brimKg }
}
