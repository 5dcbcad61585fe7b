import { addDays, daysBetween, type CivilDate } from '../dates.ts'
import type { Step } from './setup-plan.ts'

/** When a step can be done as things stand; `late` where its first day has passed. */
export interface StepDate {
  on: CivilDate
  late: boolean
}

/**
 * The day of every open step, planned from the step before it: whoever fills the tank a week late waits out the hold all the same.
 *
 * Units: civil dates. Errors: none; a step that goes by readings, and every step without a first day, has no date.
 *
 * @example // fill ticked on the 9th instead of the 2nd, the hold a day
 * stepDates(steps, { startedOn, ticks, today }).get('leak-hold') // { on: '2026-12-10', late: false }
 */
export function stepDates(
  steps: ReadonlyArray<Pick<Step, 'id' | 'earliestDay'>>,
  { startedOn, ticks, today }: { startedOn: CivilDate | null; ticks: ReadonlyArray<{ stepId: string; on: CivilDate }>; today: CivilDate },
): Map<string, StepDate> {
  const dates = new Map<string, StepDate>()
  if (startedOn === null) return dates
  const doneOn = new Map(ticks.map(({ stepId, on }) => [stepId, on]))
  let before = { on: startedOn, day: 0 }
  for (const { id, earliestDay: day } of steps) {
    if (day === null) continue
    const first = addDays(startedOn, day)
    const done = doneOn.get(id)
    const on = done ?? latest(first, addDays(before.on, Math.max(0, day - before.day)), today)
    if (done === undefined) dates.set(id, { on, late: first < today })
    before = { on: latest(before.on, on), day }
  }
  return dates
}

const latest = (...dates: [CivilDate, ...CivilDate[]]): CivilDate => dates.reduce((a, b) => (daysBetween(a, b) > 0 ? b : a))
