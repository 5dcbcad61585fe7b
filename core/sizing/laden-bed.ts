import type { Conditions } from './conditions.ts'
import type { Gear } from './gear.ts'
import { POROSITY, type TankGeometry } from './tank-geometry.ts'
import { GRAIN_DENSITY, type Grain } from './tank-mass.ts'

/**
 * Mass of all substrate of a build as its bags say it, kg; undefined where a bag states no weight, and without any.
 *
 * @example boughtBedKg({ substrates: [{ name: 'gravel', quantity: 2, spec: { packMassKg: 9.07 } }] }) // 18.14
 */
export function boughtBedKg({ substrates }: Pick<Gear, 'substrates'>): number | undefined {
  let kg = 0
  for (const { spec, quantity } of substrates) {
    if (spec.packMassKg === undefined) return undefined
    kg += spec.packMassKg * quantity
  }
  return kg > 0 ? kg : undefined
}

/** A tank with a bed of so many kilograms, and never more of it than fills the tank to its water line. */
function ladenWith(geometry: TankGeometry, kg: number, grain: Grain): TankGeometry {
  const solidShare = 1 - POROSITY
  const substrateSolidL = Math.min((kg * 1000) / GRAIN_DENSITY[grain], geometry.columnVolumeL * solidShare)
  const substrateDepthMm = (substrateSolidL / solidShare / geometry.insidePlanMm2) * 1e6
  return { ...geometry, substrateDepthMm, substrateSolidL, waterVolumeL: geometry.columnVolumeL - substrateSolidL }
}

/**
 * The tank as stand and floor carry it: with the bags that are bought. Where somebody stated a depth too, the heavier of the two; without bags of known weight, the depth.
 *
 * Source: own.
 *
 * @example ladenOf(subject, geometry, 'quartz').substrateSolidL // 6.85: two bags of 9.07 kg, whatever depth a default stands for
 */
export function ladenOf({ gear, conditions }: { gear: Gear; conditions: Conditions }, geometry: TankGeometry, grain: Grain): TankGeometry {
  const kg = boughtBedKg(gear)
  if (kg === undefined) return geometry
  const laden = ladenWith(geometry, kg, grain)
  const stated = !conditions.assumed.includes('substrateDepthMm')
  return stated && geometry.substrateSolidL >= laden.substrateSolidL ? geometry : laden
}
