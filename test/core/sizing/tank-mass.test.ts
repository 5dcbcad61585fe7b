import { it } from 'vitest'
import { tankMass } from '../../../core/sizing/tank-mass.ts'
import { GEOMETRY_A, MASS_A, TANK_A, isNear } from './reference-tanks.ts'

/** Own: independent computation of the 75 gallon reference tank, tolerance 1e-5; density of the water by EOS-80, which the handbook matches. */
it.each([
  ['emptyKg', 57.2834],
  ['waterKg', 237.011],
  ['substrateKg', 41.681],
  ['runningKg', 335.976],
] as const)('weighs the 75 gallon tank: %s', (figure, expected) => isNear(MASS_A[figure], expected, 1e-5))

/** Own: 356.9 kg filled to the rim with its gravel. */
it('weighs it filled to the rim', () => isNear(MASS_A.brimKg, 356.9, 1e-4))

it('weighs it in acrylic', () => {
  isNear(
    tankMass({ shape: { material: 'acrylic' }, geometry: GEOMETRY_A, grain: 'quartz', water: 'fresh', waterC: 25 }).emptyKg,
    27.2669,
    1e-5,
  )
})

it('weighs it with sea water', () => {
  isNear(tankMass({ shape: TANK_A, geometry: GEOMETRY_A, grain: 'quartz', water: 'salt', waterC: 25 }).waterKg, 243.262, 1e-5)
})

it('takes the maker’s own empty mass where it is stated', () => {
  const mass = tankMass({ shape: TANK_A, geometry: GEOMETRY_A, grain: 'quartz', water: 'fresh', waterC: 25, statedEmptyKg: 63.5 })
  isNear(mass.runningKg - MASS_A.runningKg, 63.5 - MASS_A.emptyKg, 1e-9)
})
