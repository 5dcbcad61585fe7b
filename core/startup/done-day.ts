import type { CivilDate } from '../dates.ts'
import type { SetupPlan, StepGroup } from './setup-plan.ts'

/** What comes before a step and was done on that day: the start itself, or a step by its title. */
export interface DoneBefore {
  on: CivilDate
  title: string | null
}

/** What comes before any water may be done before the day of the start: parts are unpacked, and a stand is levelled, when there is time. */
const DRY_GROUPS: readonly StepGroup[] = ['before', 'place']

/** A step that may be done before the start. @example isDry(plan, 'level') // true */
export const isDry = ({ steps }: Pick<SetupPlan, 'steps'>, stepId: string): boolean =>
  steps.some(({ id, group }) => id === stepId && DRY_GROUPS.includes(group))

/**
 * The first day on which a step may have been done: that of the last step done before it in the plan, or of the start, which binds no step before the first water.
 *
 * Units:  civil dates. Errors: null where neither is known; a step that the plan has not comes after all of them.
 * Source: the plan's own order, which keeps people and animals safe.
 *
 * @example doneBefore('fill', { plan, startedOn: '2026-11-01', ticks: [{ stepId: 'place-stand', on: '2026-11-02' }] })?.on // '2026-11-02'
 */
export function doneBefore(
  stepId: string,
  of: { plan: Pick<SetupPlan, 'steps'>; startedOn: CivilDate | null; ticks: ReadonlyArray<{ stepId: string; on: CivilDate }> },
): DoneBefore | null {
  const { steps } = of.plan
  const index = steps.findIndex(({ id }) => id === stepId)
  const start: DoneBefore | null = of.startedOn === null || isDry(of.plan, stepId) ? null : { on: of.startedOn, title: null }
  return steps.slice(0, index < 0 ? steps.length : index).reduce((last, { id, title }) => {
    const on = of.ticks.find((tick) => tick.stepId === id)?.on
    return on !== undefined && (last === null || on >= last.on) ? { on, title } : last
  }, start)
}
