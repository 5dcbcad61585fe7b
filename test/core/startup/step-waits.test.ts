import { describe, expect, it } from 'vitest'
import { addDays } from '../../../core/dates.ts'
import type { Reading } from '../../../core/quote/quote-view.ts'
import type { SetupLog } from '../../../core/startup/setup-log.ts'
import { startupPlan } from '../../../core/startup/startup-plan.ts'
import { sayGate, stepGate } from '../../../core/startup/step-gate.ts'
import { METRIC } from '../../../core/units/say.ts'
import { sampleSubject } from './sample-subject.ts'

const plan = startupPlan(sampleSubject())
const TODAY = '2026-12-01'
const daysAgo = (days: number): string => addDays(TODAY, -days)
const done = (stepId: string, ago: number): SetupLog['ticks'][number] => ({ stepId, on: daysAgo(ago) })
const at = (ago: number, figures: Partial<Reading>): Reading => ({
  id: `r${ago}`, takenOn: daysAgo(ago), ammoniaMgL: null, nitriteMgL: null, nitrateMgL: null, ph: null, khDegrees: null, temperatureC: null, note: '', ...figures,
}) // prettier-ignore
const both = (ago: number, ammoniaMgL: number, nitriteMgL = ammoniaMgL): Reading => at(ago, { ammoniaMgL, nitriteMgL })
const gate = (stepId: string, ticks: SetupLog['ticks'], readings: Reading[] = [], today = TODAY) =>
  stepGate(stepId, { plan, ticks, readings, today })
const said = (...of: Parameters<typeof gate>): string => {
  const found = gate(...of)
  return found === null ? 'open' : sayGate(found, METRIC)
}

it('nobody gets from the fill to the end of the first month on one day without a word', () => {
  const steps = ['run-in', 'daily-readings', 'second-dose', 'ready', 'large-change', 'first-fish', 'first-month']
  const ticks = plan.steps.map(({ id }) => done(id, 0))
  const gates = steps.map((step) => gate(step, ticks, [both(0, 0), at(0, { nitrateMgL: 5 })]))
  expect(gates.map((each) => each === null)).toEqual([false, false, false, false, true, false, false])
  expect(gates.every((each) => each === null || (each.against.length === 0 && each.word !== ''))).toBe(true)
})

/** Common practice: a day of running, the thermometer read after 24 h. */
describe('the day of running', () => {
  it.each([
    [[done('fill', 0), done('heater', 0)], 'Run it until Dec 2.'],
    [[done('fill', 3), done('heater', 0)], 'Run it until Dec 2.'],
    [[done('heater', 3)], 'The fill is not ticked'],
    [[done('fill', 1), done('heater', 1)], 'open'],
    [[done('fill', 1)], 'open'],
  ])('of %j is told as %s', (ticks, words) => expect(said('run-in', ticks)).toContain(words))
  it('holds nobody up whose plan has no such step', () =>
    expect(stepGate('run-in', { plan: { steps: [] }, ticks: [], readings: [], today: TODAY })).toBeNull())
})

/** Common practice: the day's own readings may be from before the dose, and zero then is tap water. */
describe('what follows the first dose', () => {
  const dose = [done('first-ammonia', 5)]
  it.each([
    ['daily-readings', [], [both(1, 1)], 'The first ammonia dose is not ticked'],
    ['daily-readings', dose, [both(6, 0), both(5, 2)], 'No test of ammonia and nitrite from a day after the first dose'],
    ['daily-readings', dose, [at(4, { ammoniaMgL: 2 })], 'No test of ammonia and nitrite'],
    ['daily-readings', dose, [at(4, { ammoniaMgL: 2 }), at(3, { nitriteMgL: 0 })], 'open'],
    ['second-dose', [], [both(1, 0)], 'The first ammonia dose is not ticked'],
    ['second-dose', dose, [both(5, 0), both(4, 0.5)], 'shows ammonia at 0.25 mg/L or less'],
    ['second-dose', dose, [at(4, { nitriteMgL: 0 })], 'shows ammonia at 0.25 mg/L or less'],
    ['second-dose', dose, [both(4, 0.25, 2)], 'open'],
  ] as const)('%s after %j with %j says %s', (step, ticks, readings, words) =>
    expect(said(step, ticks, [...readings])).toContain(words),
  ) // prettier-ignore
})

/** Common practice: what active soil gives off is waited out before anything is dosed. A plain tank has no such step. */
describe("the soil's own ammonia", () => {
  const filled = [done('fill', 5)]
  it.each([
    [[], 'No test of ammonia from a day after the fill'],
    [[both(5, 0)], 'No test of ammonia from a day after the fill'],
    [[both(4, 3), both(1, 1)], 'Ammonia reads 1 mg/L in the newest test. Dose nothing until it reads under 1 mg/L.'],
    [[both(4, 3), both(1, 0.5)], 'open'],
  ])('with %j is told as %s', (readings, words) => expect(said('soil-ammonia', filled, readings)).toContain(words))
})

/** Common practice: dose, read after 24 h, dose again, read after 24 h. */
describe.each(['ready', 'first-fish'])('%s', (step) => {
  const log = [both(9, 2), both(1, 0), both(0, 0)]
  it.each([
    [0, 'Go on until Dec 3.'],
    [1, 'Go on until Dec 2.'],
    [2, 'open'],
  ])('with the last dose %i days ago is told as %s', (ago, words) =>
    expect(said(step, [done('first-ammonia', 9), done('second-dose', ago)], log)).toContain(words),
  )
})

/** Common practice: a quarter of the animals, two weeks of tests, another quarter, two weeks of tests. */
describe('the first month', () => {
  it.each([
    [27, 'Keep watching until Dec 2.'],
    [28, 'open'],
  ])('of fish %i days in the tank is told as %s', (ago, words) =>
    expect(said('first-month', [done('first-fish', ago)], [both(ago, 0)])).toContain(words),
  )
  it('wants both tested since, and not before', () =>
    expect(said('first-month', [done('first-fish', 40)], [both(41, 0), at(3, { ammoniaMgL: 0 })])).toContain(
      'No test of ammonia and nitrite',
    ))
  it('is not over while the newest test says otherwise, whatever the word', () =>
    expect(gate('first-month', [done('first-fish', 40)], [both(3, 0), both(1, 0, 0.5)])?.against).toHaveLength(1))
})

it('a step of another day is judged by that day, and by the newest reading of all', () => {
  const ticks = [done('first-ammonia', 20), done('second-dose', 12)]
  const good = [both(15, 2), both(9, 0), both(8, 0)]
  expect(said('ready', ticks, good, daysAgo(8))).toBe('open')
  expect(said('ready', ticks, good, daysAgo(10))).toContain('The last two days tested')
  expect(gate('ready', ticks, [...good, both(1, 4)], daysAgo(8))?.against).toHaveLength(2)
  expect(said('run-in', [done('fill', 8)], [], daysAgo(8))).toContain('Run it until Nov 24.')
  // In the year after the one that is named.
  expect(said('run-in', [{ stepId: 'fill', on: '2026-12-31' }], [], '2026-12-31')).toContain('Run it until Jan 1, 2027.')
})
