import { addDays, sayDate, yearOf, type CivilDate } from '../../core/dates.ts'
import type { Step } from '../../core/startup/setup-plan.ts'
import { sayPhrase } from '../../core/units/say.ts'
import { markup, type Markup } from './markup.ts'
import type { SetupPageProps } from './setup-page.ts'
import { actions, amounts } from './setup-step.ts'
import { doneSign } from './signs.ts'

/** The day a step is due at the earliest; null without a start or where it depends on readings. */
const dueOn = (startedOn: CivilDate | null, earliestDay: number | null): CivilDate | null =>
  startedOn === null || earliestDay === null ? null : addDays(startedOn, earliestDay)

/** When a later step is due, in words: a promise is never made where readings decide. */
export function sayDue(step: Step, { startedOn, today }: Pick<SetupPageProps, 'startedOn' | 'today'>): string {
  if (step.earliestDay === null) return 'after readings'
  const due = dueOn(startedOn, step.earliestDay)
  if (due === null) return `day ${step.earliestDay + 1}`
  return due <= today ? 'today' : sayDate(due, yearOf(today))
}

/** What comes later: each step opens, to read ahead; only the next one can be ticked, since their order keeps people and animals safe. */
export function laterSteps(props: SetupPageProps, current: number | null): Markup | '' {
  const ticked = new Set(props.ticks.map((tick) => tick.stepId))
  const later = props.plan.steps
    .map((step, index) => ({ step, index }))
    .filter(({ step, index }) => index !== current && !ticked.has(step.id))
  if (later.length === 0) return ''
  return markup`<section aria-labelledby="h-later"><h2 id="h-later">Later</h2><ol class="list">${later.map(({ step, index }) => one(step, index, props))}</ol></section>`
}

const one = (step: Step, index: number, props: SetupPageProps): Markup =>
  markup`<li><details><summary><span class="n">${index + 1}</span><span>${step.title}</span><span class="when">${sayDue(step, props)}</span></summary>
<p>${sayPhrase(step.why, props.units)}</p>${amounts(step, props.units)}${actions(step.actions, props.units)}</details></li>`

/** What is done and when; each can be taken back. */
export function doneSteps(props: SetupPageProps): Markup | '' {
  const done = props.plan.steps.flatMap((step) => {
    const tick = props.ticks.find((candidate) => candidate.stepId === step.id)
    return tick === undefined ? [] : [{ step, on: tick.on }]
  })
  if (done.length === 0) return ''
  return markup`<section aria-labelledby="h-done"><h2 id="h-done">Done</h2><ul class="list done">${done.map(
    ({ step, on }) =>
      markup`<li>${doneSign()}<span>${step.title}<time datetime="${on}">${sayDate(on, yearOf(props.today))}</time></span><form method="post" action="${props.path}/tick"><input type="hidden" name="step" value="${step.id}"><input type="hidden" name="done" value="0"><button class="btn plain">Not done<span class="sr">: ${step.title}</span></button></form></li>`,
  )}</ul></section>`
}
