import type { TankMass } from './tank-mass.ts'

/**
 * J/(kg K). Water 4180, sand and gravel 830, glass 840: handbook values, from memory (EN 572-1 has 720 for glass: 0.6 % of a tank's whole);
 * acrylic 1470: handbook, from memory.
 */
const SPECIFIC_HEAT = { water: 4180, grain: 830, glass: 840, acrylic: 1470 } as const

/** Heat that warms so many kilograms of water by one kelvin, J/K. @example waterCapacity(10) // 41 800 */
export const waterCapacity = (waterKg: number): number => waterKg * SPECIFIC_HEAT.water

/**
 * Heat that warms water, substrate and panels by one kelvin, J/K: all of one bed, the one that is weighed. More of it leaves less water, and warms sooner.
 *
 * @example heatCapacity(mass, 'glass') // 1 073 386 for a 75 gallon tank
 */
export function heatCapacity({ runningKg, emptyKg, substrateKg }: TankMass, material: 'glass' | 'acrylic'): number {
  const waterKg = runningKg - emptyKg - substrateKg
  return waterCapacity(waterKg) + emptyKg * SPECIFIC_HEAT[material] + substrateKg * SPECIFIC_HEAT.grain
}
