import { describe, expect, it } from 'vitest'
import { stepDates } from '../../../core/startup/step-dates.ts'

/** Place, fill and hold a day, fit out, then by readings. */
const STEPS = [
  { id: 'level', earliestDay: 0 },
  { id: 'fill', earliestDay: 0 },
  { id: 'hold', earliestDay: 1 },
  { id: 'fit-out', earliestDay: 1 },
  { id: 'run-in', earliestDay: 2 },
  { id: 'ready', earliestDay: null },
]
const startedOn = '2026-11-01'
const datesOf = (ticks: Array<[string, string]>, today: string) =>
  [...stepDates(STEPS, { startedOn, ticks: ticks.map(([stepId, on]) => ({ stepId, on })), today })].map(([id, { on, late }]) => [
    id,
    on,
    late,
  ])

describe('the dates of the steps', () => {
  it('are those of the plan while it is kept', () => {
    expect(datesOf([['level', '2026-11-01']], '2026-11-01')).toEqual([
      ['fill', '2026-11-01', false],
      ['hold', '2026-11-02', false],
      ['fit-out', '2026-11-02', false],
      ['run-in', '2026-11-03', false],
    ])
  })

  it('follow the step before them after a pause, with the wait between them', () => {
    expect(datesOf([['level', '2026-11-01']], '2026-11-20')).toEqual([
      ['fill', '2026-11-20', true],
      ['hold', '2026-11-21', true],
      ['fit-out', '2026-11-21', true],
      ['run-in', '2026-11-22', true],
    ])
  })

  it('follow a step that was done late, and never lie in the past', () => {
    expect(datesOf([['level', '2026-11-01'], ['fill', '2026-11-09']], '2026-11-09')[0]).toEqual(['hold', '2026-11-10', true]) // prettier-ignore
    expect(datesOf([['level', '2026-11-01'], ['fill', '2026-11-09']], '2026-11-15')[0]).toEqual(['hold', '2026-11-15', true]) // prettier-ignore
    // Done before its day: the plan's own days stay.
    expect(datesOf([['level', '2026-10-30'], ['fill', '2026-10-30']], '2026-10-30')[0]).toEqual(['hold', '2026-11-02', false]) // prettier-ignore
  })

  it('are none without a start, and none where readings decide', () => {
    expect(stepDates(STEPS, { startedOn: null, ticks: [], today: '2026-11-01' }).size).toBe(0)
    expect(stepDates(STEPS, { startedOn, ticks: [], today: '2026-11-01' }).has('ready')).toBe(false)
  })
})
