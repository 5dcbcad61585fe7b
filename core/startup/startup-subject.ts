import type { Install } from '../install.ts'
import type { Conditions } from '../sizing/conditions.ts'
import type { Gear } from '../sizing/gear.ts'
import type { SizingReport } from '../sizing/report.ts'
import type { Step } from './setup-plan.ts'

/** What a setup plan is made from: what was bought or owned, the room and the tap, and what the sizing worked out. */
export interface StartupSubject {
  gear: Gear
  conditions: Conditions
  report: SizingReport
  /** Tells which name a protective device goes by and which unit is told first; nothing else of it is printed. */
  install?: Pick<Install, 'country'> & Partial<Pick<Install, 'units'>>
}

/** What one group of steps gives back: its steps, and the amounts it could not work out with the reason. */
export interface StepsMade {
  steps: Step[]
  notComputed: string[]
}

/** The fields every step states; the rest is empty unless given. */
export type StepDraft = Pick<Step, 'id' | 'title' | 'why' | 'howLong' | 'stopAndAsk' | 'done'> & Partial<Step>

/** Fills a draft up to a whole step of its group. */
export function stepOf(group: Step['group'], draft: StepDraft): Step {
  return { group, amounts: [], actions: [], earliestDay: null, drawing: null, caution: null, ...draft }
}
