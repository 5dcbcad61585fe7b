import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { WITHIN_TO_KG } from '../../../core/sizing/floor-load.ts'
import { findingOf, one } from './sample-build.ts'

const nano = {
  tank: one('Wendlemere', { lengthMm: 400, widthMm: 250, heightMm: 250, glassMm: 5, bottomMm: 5, material: 'glass' as const }),
  stand: null,
}
const FLOORS: Conditions['floor'][] = ['ground_slab', 'timber_upper', 'concrete_upper', 'unknown']

it('calls a slab on the ground within the usual allowance', () => {
  expect(findingOf('floor_load', {}, { floor: 'ground_slab' }).wording).toBe('within the usual allowance')
})

it.each(FLOORS.filter((floor) => floor !== 'ground_slab'))('asks first on a %s floor under a full-size tank', (floor) => {
  const found = findingOf('floor_load', {}, { floor })
  expect(found).toMatchObject({ verdict: 'not_known', wording: 'ask before you place it' })
  expect(found.missing.length).toBe(1)
  expect(found.action).not.toBeNull()
})

it('leaves a small tank within the allowance wherever it stands', () => {
  expect(findingOf('floor_load', nano).wording).toBe('within the usual allowance')
})

/** EN 1991-1-1 table 6.2, recommended concentrated load of a dwelling’s floor 2.0 kN (from memory): half of it over g. */
it('takes half of the published concentrated load as the mark', () => {
  expect(Math.round(1000 / 9.80665)).toBe(WITHIN_TO_KG)
})

it('says from 450 kg on to ask whatever the floor', () => {
  const large = one('Wendlemere', { lengthMm: 1500, widthMm: 600, heightMm: 600, glassMm: 12, bottomMm: 12, material: 'glass' as const })
  const found = findingOf('floor_load', { tank: large })
  expect(found.limit).toMatchObject({ high: { value: 450 } })
  expect(found.margin?.value).toBeLessThan(0)
})

it('never says that a floor fits, and always that it is a screening', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...FLOORS),
      fc.integer({ min: 200, max: 2500 }),
      fc.integer({ min: 200, max: 800 }),
      fc.boolean(),
      (floor, lengthMm, heightMm, small) => {
        const tank = one('Wendlemere', { lengthMm, widthMm: 300, heightMm, glassMm: 6, bottomMm: 6, material: 'glass' as const })
        const found = findingOf('floor_load', small ? nano : { tank, stand: null }, { floor })
        expect(found.verdict).not.toBe('fits')
        expect(found.wording).toBeDefined()
        expect(found.caution).toMatch(/^Screening only, never an approval/)
        expect(found.caution).toMatch(/licensed structural engineer/)
      },
    ),
    { numRuns: 50 },
  )
})
