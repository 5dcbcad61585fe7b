import type { Step } from '../../../core/startup/setup-plan.ts'
import { startupPlan } from '../../../core/startup/startup-plan.ts'
import type { StartupSubject } from '../../../core/startup/startup-subject.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'

/** One step of the plan of a subject. */
export function stepFor(subject: StartupSubject, id: string): Step {
  const { steps } = startupPlan(subject)
  const found = steps.find((step) => step.id === id)
  if (!found) throw new Error(`no step ${id} in ${steps.map((step) => step.id).join(', ')}`)
  return found
}

/** An amount as a reader sees it. */
export const amountIn = (step: Step, label: string, reader: ReaderUnits = METRIC): string =>
  sayPhrase(step.amounts.find((each) => each.label === label)?.value ?? ['(no such amount)'], reader)

export const actionsIn = (step: Step): string => step.actions.map((each) => sayPhrase(each, METRIC)).join('\n')

/** All that a step says. */
export const textOf = (step: Step, reader: ReaderUnits = METRIC): string =>
  [
    step.title,
    ...[step.why, step.stopAndAsk, ...step.actions, ...step.amounts.map((each) => each.value)].map((each) => sayPhrase(each, reader)),
    step.done,
  ].join(' ')
