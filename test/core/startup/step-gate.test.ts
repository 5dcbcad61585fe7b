import { describe, expect, it } from 'vitest'
import type { Reading } from '../../../core/quote/quote-view.ts'
import { startupPlan } from '../../../core/startup/startup-plan.ts'
import { sayGate, stepGate } from '../../../core/startup/step-gate.ts'
import type { SetupLog } from '../../../core/startup/setup-log.ts'
import { METRIC, US } from '../../../core/units/say.ts'
import { sampleSubject } from './sample-subject.ts'

const plan = startupPlan(sampleSubject())
const at = (takenOn: string, figures: Partial<Reading>): Reading => ({
  id: takenOn, takenOn, ammoniaMgL: null, nitriteMgL: null, nitrateMgL: null, ph: null, khDegrees: null, temperatureC: null, note: '', ...figures,
}) // prettier-ignore
const both = (takenOn: string, value: number): Reading => at(takenOn, { ammoniaMgL: value, nitriteMgL: value })
const dosed = { stepId: 'first-ammonia', on: '2026-11-02' }
const log = (readings: Reading[], ticks: SetupLog['ticks'] = [dosed]): SetupLog => ({ plan, ticks, readings, today: '2026-12-01' })
const eaten = [at('2026-11-10', { ammoniaMgL: 2 }), both('2026-11-29', 0.25), both('2026-11-30', 0)]

/** Common practice: clean tap water reads zero of both, so only what follows a dose tells of a filter. */
describe.each(['ready', 'first-fish'])('%s', (step) => {
  it('is open after a dose that was seen to be eaten and two good days', () => expect(stepGate(step, log(eaten))).toBeNull())
  it('counts nitrate of a later day as a sign of the dose, and not that of its own day', () => {
    const days = (on: string) => log([at(on, { nitrateMgL: 5 }), both('2026-11-29', 0), both('2026-11-30', 0)])
    expect(stepGate(step, days('2026-11-03'))).toBeNull()
    expect(stepGate(step, days('2026-11-02'))?.lacks).toHaveLength(1)
  })
  it.each([
    ['a tank that was never dosed', log(eaten, []), 'first ammonia dose is not ticked'],
    ['zeros alone', log([both('2026-11-29', 0), both('2026-11-30', 0)]), 'No test since the first dose shows that it was eaten'],
    ['good days before the dose', log([both('2026-10-31', 0), both('2026-11-01', 0), at('2026-11-03', { nitrateMgL: 5 })]), 'The last two days'],
    ['a sign from before the dose', log([both('2026-10-30', 2), both('2026-11-29', 0), both('2026-11-30', 0)]), 'No test since'],
  ])('asks for a word for %s', (_what, lacking, words) => {
    const gate = stepGate(step, lacking)!
    expect(gate.against).toEqual([])
    expect(sayGate(gate, METRIC)).toContain(words)
  }) // prettier-ignore
  it('stays shut against a newer reading, whatever the word', () => {
    const gate = stepGate(step, log([...eaten, at('2026-12-01', { ammoniaMgL: 4.5, nitriteMgL: 4.9 })]))!
    expect(gate.against).toHaveLength(2)
    expect(sayGate(gate, US)).toContain('Ammonia reads 4.5 mg/L')
    expect(sayGate(gate, US)).toContain('Write down a new test first.')
  })
})

describe('the first fish', () => {
  it('waits for nitrate and for a temperature within its band; ready does not', () => {
    const cold = log([...eaten, at('2026-12-01', { nitrateMgL: 160, temperatureC: (60 - 32) / 1.8 })])
    expect(stepGate('ready', cold)).toBeNull()
    const said = sayGate(stepGate('first-fish', cold)!, US)
    expect(said).toContain('Nitrate reads 160 mg/L')
    // The sample's animals are kept between 22 °C and 28 °C: exactly 71.6 °F and 82.4 °F.
    expect(said).toContain('The water reads 60 °F in the newest test. No fish goes in outside 71.6 °F to 82.4 °F.')
  })
  it.each([[21.9, 1], [22, 0], [28, 0], [28.1, 1]])('at %d °C finds %d against it', (temperatureC, count) => {
    expect(stepGate('first-fish', log([...eaten, at('2026-12-01', { temperatureC })]))?.against.length ?? 0).toBe(count)
  }) // prettier-ignore
  it('is judged by the danger mark in a plan without a highest one', () => {
    const { highestC: _none, ...marks } = plan.marks!
    const warm = (temperatureC: number) => ({ ...log([...eaten, at('2026-12-01', { temperatureC })]), plan: { ...plan, marks } })
    expect(stepGate('first-fish', warm(31.9))).toBeNull()
    expect(stepGate('first-fish', warm(32))?.against).toHaveLength(1)
  })
})

it('the large change wants nitrate of 40 or less, read since the tank was ready', () => {
  const ticks = [dosed, { stepId: 'ready', on: '2026-11-30' }]
  const gate = (on: string, nitrateMgL: number) => stepGate('large-change', log([at(on, { nitrateMgL })], ticks))
  expect(gate('2026-12-01', 40)).toBeNull()
  expect(gate('2026-12-01', 41)?.against).toHaveLength(1)
  expect(gate('2026-11-20', 20)?.lacks).toHaveLength(1)
})

it('the hold asks for a word on the day of the fill, and no longer once it has passed', () => {
  const filled = (on: string) => stepGate('leak-hold', log([], [{ stepId: 'leak-fill', on }]))
  expect(sayGate(filled('2026-12-01')!, METRIC)).toContain('Leave it full until Dec 2.')
  expect(filled('2026-11-30')).toBeNull()
  // The sample's tank is new and is held for a day: by the word it was full the day before.
  expect(filled('2026-12-01')?.late).toEqual({ stepId: 'leak-fill', on: '2026-11-30' })
})

/** The steps' own words: dose nothing above 5 mg/L of nitrite, stop dosing under 3 degrees of KH and under pH 6.5. */
it.each([['nitriteMgL', 6, 5], ['khDegrees', 2, 3], ['ph', 6.2, 6.5]] as const)('the second dose is barred by %s at %d, and not at %d', (of, past, held) => {
  const gate = (value: number, takenOn = '2026-11-30') =>
    stepGate('second-dose', log([at('2026-11-10', { ammoniaMgL: 0 }), at(takenOn, { [of]: value })]))
  expect(gate(past)?.against).toHaveLength(1)
  expect(gate(held)).toBeNull()
  // What came after the day that is named says nothing of it.
  expect(gate(past, '2026-12-02')).toBeNull()
}) // prettier-ignore

it('asks for a test only where one helps', () => {
  const hold = stepGate('leak-hold', log([], [{ stepId: 'leak-fill', on: '2026-12-01' }]))!
  expect([hold.tests, sayGate(hold, METRIC).includes('write it down')]).toEqual([false, false])
  const young = stepGate('ready', log(eaten, [dosed, { stepId: 'second-dose', on: '2026-11-30' }]))!
  expect([young.lacks.length, young.tests]).toEqual([1, false])
  const untested = stepGate('ready', log([]))!
  expect([untested.tests, sayGate(untested, METRIC).includes('or write it down first')]).toEqual([true, true])
})

it('other steps stand on no reading and no day, and what is no step on nothing', () => {
  const gated = plan.steps.map(({ id }) => id).filter((id) => stepGate(id, log([], [])) !== null)
  expect(gated).toEqual(['run-in', 'daily-readings', 'second-dose', 'ready', 'large-change', 'first-fish', 'first-month'])
  expect(stepGate('constructor', log([]))).toBeNull()
})
