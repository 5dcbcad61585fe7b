import { describe, expect, it } from 'vitest'
import type { Reading } from '../../../core/quote/quote-view.ts'
import { leakHoldShortDays, newestFigures, twoGoodDays } from '../../../core/startup/reading-log.ts'
import { startupPlan } from '../../../core/startup/startup-plan.ts'
import { sampleSubject } from './sample-subject.ts'

const at = (takenOn: string, ammoniaMgL: number | null, nitriteMgL: number | null): Reading => ({
  id: `${takenOn} ${ammoniaMgL} ${nitriteMgL}`, takenOn, ammoniaMgL, nitriteMgL, nitrateMgL: null, ph: null, khDegrees: null, temperatureC: null, note: '',
}) // prettier-ignore

/** Common practice, the plan's own criterion: both at 0.25 mg/L or less, two days running. */
describe('two good days', () => {
  it.each([
    ['none', []],
    ['one day', [at('2026-11-20', 0, 0)]],
    ['two tests of one day', [at('2026-11-20', 0, 0), { ...at('2026-11-20', 0, 0), id: 'b' }]],
    ['a day between', [at('2026-11-20', 0, 0), at('2026-11-22', 0, 0)]],
    ['nitrite over', [at('2026-11-20', 0, 0.3), at('2026-11-21', 0, 0)]],
    ['ammonia over on the second', [at('2026-11-20', 0, 0), at('2026-11-21', 0.5, 0)]],
    ['nitrite not read', [at('2026-11-20', 0, 0), at('2026-11-21', 0, null)]],
    ['a bad day after them', [at('2026-11-20', 0, 0), at('2026-11-21', 0, 0), at('2026-11-23', 1, 0)]],
    ['a bad second look', [at('2026-11-20', 0, 0), at('2026-11-21', 0, 0), at('2026-11-21', 2, 0)]],
  ])('are not %s', (_what, readings) => expect(twoGoodDays(readings)).toBe(false))

  it.each([
    ['at the limit', [at('2026-11-20', 0.25, 0.25), at('2026-11-21', 0.25, 0.25)]],
    ['in any order, over a month’s end', [at('2026-12-01', 0, 0), at('2026-11-30', 0, 0)]],
    ['after bad ones', [at('2026-11-10', 6, 8), at('2026-11-20', 0, 0.1), at('2026-11-21', 0.1, 0)]],
    ['with a test of the temperature between', [at('2026-11-20', 0, 0), at('2026-11-21', 0, 0), at('2026-11-22', null, null)]],
  ])('are two %s', (_what, readings) => expect(twoGoodDays(readings)).toBe(true))
})

it('takes of each figure the newest, and of one day the later', () => {
  const figures = newestFigures([at('2026-11-21', 6, null), at('2026-11-20', 1, 2), at('2026-11-21', 0.5, null)])
  expect(figures).toMatchObject({ takenOn: '2026-11-21', ammoniaMgL: 0.5, nitriteMgL: 2, ph: null })
})

describe('a leak hold', () => {
  const ticks = (filled: string, held: string) => [{ stepId: 'leak-fill', on: filled }, { stepId: 'leak-hold', on: held }] // prettier-ignore
  const fresh = startupPlan(sampleSubject())
  const tank = sampleSubject().gear.tank!
  const used = startupPlan(sampleSubject({ gear: { tank: { ...tank, owned: true } } }))
  it('of a new tank lasts until the next day, of a used one three', () => {
    expect(leakHoldShortDays(fresh, ticks('2026-11-01', '2026-11-01'))).toBe(1)
    expect(leakHoldShortDays(fresh, ticks('2026-11-01', '2026-11-02'))).toBe(0)
    expect(leakHoldShortDays(used, ticks('2026-11-01', '2026-11-02'))).toBe(2)
    expect(leakHoldShortDays(used, ticks('2026-11-01', '2026-11-04'))).toBe(0)
    expect(leakHoldShortDays(fresh, [])).toBe(0)
  })
})
