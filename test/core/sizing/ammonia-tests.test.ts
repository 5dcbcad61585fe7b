import { expect, it } from 'vitest'
import type { TestKitSpec } from '../../../core/catalog/spec.ts'
import { findingOf, one, reportOf } from './sample-build.ts'
import { figuresOf, told } from './told.ts'

const kits = (...specs: TestKitSpec[]) => ({ testKits: specs.map((spec) => one('Lockridge', spec)) })
const both = (lowestAmmoniaMgL?: number): TestKitSpec => ({ measuresAmmonia: true, measuresNitrite: true, lowestAmmoniaMgL })
const found = (...specs: TestKitSpec[]) => findingOf('ammonia_tests', kits(...specs))
const CHOOSE = 'Choose a test kit for ammonia and nitrite.'
const WANT = { slot: 'test_water', quantity: 1, minimum: {} }

/** The figures are common practice: ready at 0.25 mg/L or less of both, for most colour cards have their first step there. */
it('tells a kit that is fine enough at 0.25 mg/L, and one step coarser that it is not', () => {
  expect(told(found(both(0.25)))).toEqual({
    verdict: 'fits',
    reason: 'The tests measure ammonia, down to 0.25 mg/L, and nitrite.',
    action: null,
    assumed: [],
    missing: [],
  })
  expect(figuresOf(found(both(0.25)))).toMatchObject({ value: 0.25, high: 0.25, margin: 0 })
  expect(told(found(both(0.26)))).toMatchObject({
    verdict: 'marginal',
    reason: 'The lowest ammonia step is 0.26 mg/L; ready is told at 0.25 mg/L.',
    action: CHOOSE,
  })
  expect(found(both(0.26))).toMatchObject({ margin: { value: -0.01 }, action: { want: WANT }, source: { tag: 'common_practice' } })
})

it('says what nobody can tell without a kit, or without one of the two', () => {
  const untold = 'nobody could tell when the tank is ready for animals.'
  expect(told(found())).toMatchObject({ verdict: 'does_not_fit', reason: `No test kit is chosen: ${untold}`, action: CHOOSE })
  for (const [spec, what] of [
    [{ measuresAmmonia: false, measuresNitrite: true }, 'ammonia'],
    [{ measuresAmmonia: true, measuresNitrite: false }, 'nitrite'],
    [{ measuresAmmonia: false, measuresNitrite: false }, 'ammonia'],
  ] as const) {
    expect(told(found(spec))).toMatchObject({
      verdict: 'does_not_fit',
      reason: `The tests do not measure ${what}: ${untold}`,
      action: CHOOSE,
    })
    expect(found(spec).action?.want).toEqual(WANT)
  }
  expect(found().action?.want).toEqual(WANT)
})

it('asks what a kit measures where nobody stated it, of the one or of the other', () => {
  for (const spec of [{ measuresAmmonia: true }, { measuresNitrite: true }, {}])
    expect(told(found(spec))).toEqual({
      verdict: 'not_known',
      reason: 'Nobody has stated what the test kit measures; a new tank needs ammonia and nitrite.',
      action: 'Enter what the kit measures.',
      assumed: [],
      missing: ['what the test kit measures'],
    })
  // One of two kits measures no ammonia, of the other nobody knows: it may.
  expect(found({ measuresAmmonia: false, measuresNitrite: true }, { measuresNitrite: true }).verdict).toBe('not_known')
})

it('asks for the lowest step where strips may stop above what says ready', () => {
  const open = found(both())
  expect(told(open)).toEqual({
    verdict: 'not_known',
    reason:
      'The tests measure ammonia and nitrite; ready is told at 0.25 mg/L of ammonia, and the lowest step of the ammonia test is not stated.',
    action: 'Enter the lowest step above zero on the ammonia colour card.',
    assumed: [],
    missing: ['lowest step of the ammonia test'],
  })
  expect(figuresOf(open)).toMatchObject({ value: undefined, high: 0.25 })
})

it('looks at the steps of those kits alone that measure ammonia', () => {
  const nitrite = { measuresAmmonia: false, measuresNitrite: true, lowestAmmoniaMgL: 0.1 }
  expect(figuresOf(found({ measuresAmmonia: true, lowestAmmoniaMgL: 0.5 }, nitrite))).toMatchObject({ value: 0.5, margin: -0.25 })
})

it('is not asked where tests were answered as not needed, unless a kit was chosen all the same', () => {
  const made = (testKits: ReturnType<typeof kits>['testKits']) =>
    reportOf({ testKits, notNeeded: { test_water: 'the club has one' } }).findings.some(({ check }) => check === 'ammonia_tests')
  expect(made([])).toBe(false)
  expect(made(kits(both(0.25)).testKits)).toBe(true)
})
