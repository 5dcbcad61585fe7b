import { expect, it } from 'vitest'
import { doneBefore } from '../../../core/startup/done-day.ts'
import type { Step } from '../../../core/startup/setup-plan.ts'
import { stepDates } from '../../../core/startup/step-dates.ts'

const step = (id: string, earliestDay: number) => ({ id, title: `Step ${id}`, earliestDay }) as Step
const plan = { steps: [step('place', 0), step('fill', 1), step('run', 2)] }
const ticks = [
  { stepId: 'fill', on: '2026-11-05' },
  { stepId: 'place', on: '2026-11-03' },
]

/** Own rule: the plan's order, by hand. */
it.each([
  ['place', '2026-11-01', { on: '2026-11-01', title: null }],
  ['place', null, null],
  ['fill', '2026-11-01', { on: '2026-11-03', title: 'Step place' }],
  ['run', '2026-11-01', { on: '2026-11-05', title: 'Step fill' }],
  ['run', '2026-11-07', { on: '2026-11-07', title: null }],
  ['unknown', null, { on: '2026-11-05', title: 'Step fill' }],
])('before %s with a start on %s stands %j', (id, startedOn, before) => expect(doneBefore(id, { plan, startedOn, ticks })).toEqual(before))

it.each([['before', null], ['place', null], ['leak_test', '2026-11-09']] as const)('of the group %s the start on the 9th leaves %s', (group, on) => {
  const dry = { steps: [{ ...step('place', 0), group }] }
  expect(doneBefore('place', { plan: dry, startedOn: '2026-11-09', ticks: [] })?.on ?? null).toBe(on)
}) // prettier-ignore

it('a step that is named to an earlier day brings the dates of the steps to come with it', () => {
  const due = (on: string) =>
    stepDates(plan.steps, {
      startedOn: '2026-11-01',
      ticks: [
        { stepId: 'place', on: '2026-11-03' },
        { stepId: 'fill', on },
      ],
      today: '2026-11-06',
    }).get('run')?.on
  expect([due('2026-11-06'), due('2026-11-04')]).toEqual(['2026-11-07', '2026-11-06'])
})
