import { expect, it } from 'vitest'
import { COLOURED_UMOL_PER_J, LUMENS_PER_UMOL_S } from '../../core/sizing/typical-ranges.ts'
import { JOULE_NM, luxPerUmol, umolPerJoule } from './photon-units.ts'

it('is 119.627 J nm a micromole', () => expect(JOULE_NM).toBeCloseTo(119.627, 3))

/** Arithmetic on exact constants: tolerance 1e-4. */
it.each([
  [450, 3.762],
  [660, 5.517],
])('light of %s nm has so many photons in a joule', (nm, expected) => {
  expect(Math.abs(umolPerJoule(nm) / expected - 1)).toBeLessThan(1e-4)
})

it('light of 555 nm is 147.22 lx for each µmol/m²s', () => expect(Math.abs(luxPerUmol(555) / 147.22 - 1)).toBeLessThan(1e-4))

/** Own, with V(λ) from memory to two digits. */
it.each([
  [450, 6.9],
  [660, 7.55],
] as const)('light of %s nm looks ten times dimmer than white of as many photons', (nm, expected) => {
  expect(luxPerUmol(nm)).toBeCloseTo(expected, 1)
  expect(LUMENS_PER_UMOL_S.low / luxPerUmol(nm)).toBeGreaterThan(7)
})

it('bounds what is taken for white and for coloured light', () => {
  expect(LUMENS_PER_UMOL_S.high).toBeLessThan(luxPerUmol(555))
  // No diode gives more photons than its energy has, and one of red alone has the most.
  expect(COLOURED_UMOL_PER_J.high).toBeLessThan(umolPerJoule(450))
  expect(COLOURED_UMOL_PER_J.low).toBeGreaterThan(0)
})
