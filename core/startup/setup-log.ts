import type { CivilDate } from '../dates.ts'
import type { Reading } from '../quote/quote-view.ts'
import type { SetupPlan } from './setup-plan.ts'

/** What a tick is judged by. */
export interface SetupLog {
  plan: Pick<SetupPlan, 'steps' | 'marks'>
  ticks: ReadonlyArray<{ stepId: string; on: CivilDate }>
  readings: readonly Reading[]
  /** The day on which the step is said to be done: as a rule the day itself. */
  today: CivilDate
}

/** The day a step was done; undefined while it is open. */
export const tickedOn = ({ ticks }: Pick<SetupLog, 'ticks'>, stepId: string): CivilDate | undefined =>
  ticks.find((tick) => tick.stepId === stepId)?.on
