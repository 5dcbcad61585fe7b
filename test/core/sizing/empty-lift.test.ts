import { expect, it } from 'vitest'
import type { TankSpec } from '../../../core/catalog/spec.ts'
import { liftPeople } from '../../../core/sizing/empty-lift.ts'
import { findingOf, one } from './sample-build.ts'
import { figuresOf, told } from './told.ts'

const TANK: TankSpec = { lengthMm: 800, widthMm: 400, heightMm: 400, glassMm: 8, bottomMm: 8, material: 'glass', style: 'rimmed' }
const found = (change: Partial<TankSpec>) => findingOf('empty_lift', { tank: one('Wendlemere', { ...TANK, ...change }) })

/** Common practice, stated: two from 20 kg or from 900 mm on, and 25 kg each beyond two. */
it.each([
  [19.9, 899, 1],
  [20, 600, 2],
  [10, 900, 2],
  [50, 600, 2],
  [50.1, 600, 3],
  [75, 1500, 3],
  [75.1, 1500, 4],
])('%s kg and %s mm long: %s', (massKg, lengthMm, people) => expect(liftPeople(massKg, lengthMm)).toBe(people))

it('says who lifts it, and what to have ready where two are not enough', () => {
  expect(told(found({ emptyMassKg: 18 }))).toEqual({
    verdict: 'fits',
    reason: 'Empty, the tank weighs 18.0 kg and is 80 cm long. One person can lift it.',
    action: null,
    assumed: [],
    missing: [],
  })
  expect(told(found({ emptyMassKg: 50 }))).toMatchObject({
    verdict: 'fits',
    reason: 'Empty, the tank weighs 50.0 kg and is 80 cm long. Two people lift it, one at each end.',
    action: null,
  })
  expect(told(found({ emptyMassKg: 50.1 }))).toMatchObject({
    verdict: 'marginal',
    reason: 'Empty, the tank weighs 50.1 kg and is 80 cm long. It takes 3 people, at 25 kg each.',
    action: 'Have 3 people and gloves ready, and suction lifters for bare glass.',
  })
  expect(figuresOf(found({ emptyMassKg: 50.1 }))).toMatchObject({ value: 50.1, high: 50, margin: -0.1 })
  expect(found({}).source.tag).toBe('common_practice')
})

it('takes the maker’s mass for what it is, whatever the glass may be', () => {
  expect(told(found({ emptyMassKg: 30, glassMm: undefined }))).toMatchObject({ assumed: [], missing: [] })
  expect(told(found({ glassMm: undefined })).assumed).toEqual(['glass thickness'])
})

it('says up to where thin glass would be for two and thick glass for more', () => {
  const open = told(found({ lengthMm: 1000, heightMm: 550, glassMm: undefined, bottomMm: undefined }))
  // Typical glass of that height is 8 to 15 mm, the bottom up to 1.34 times that. At the most 1000 × 400 × 20.1 mm of bottom are 20.1 kg, and 2740 mm
  // around × 529.9 × 15 mm of sides 54.4 kg; at the least 8.0 and 30.0 kg.
  expect(open).toMatchObject({ verdict: 'not_known', missing: ['glass thickness', 'bottom thickness'] })
  expect(open.reason).toBe('Empty, the tank weighs up to 74.5 kg and is 100 cm long. It takes 3 people, at 25 kg each.')
  expect(open.action).toBe('Have 3 people and gloves ready, and suction lifters for bare glass.')
})
