import { sayDate, yearOf } from '../../core/dates.ts'
import type { Step } from '../../core/startup/setup-plan.ts'
import { stepDates } from '../../core/startup/step-dates.ts'
import { sayStepDay } from '../../core/startup/step-day.ts'
import { markup, type Markup } from './markup.ts'
import { shortHold } from './setup-alarm.ts'
import type { SetupPageProps } from './setup-page.ts'
import { stepText } from './setup-step.ts'
import { doneSign } from './signs.ts'

/** When a later step is due, in words: a promise is never made where readings decide. */
export function sayDue(step: Step, props: Pick<SetupPageProps, 'plan' | 'ticks' | 'startedOn' | 'today'>): string {
  const due = stepDates(props.plan.steps, props).get(step.id)
  if (due === undefined) return sayStepDay(step.earliestDay)
  if (due.on > props.today) return sayDate(due.on, yearOf(props.today))
  return due.late ? 'after the step before' : 'today'
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
${stepText(step, props)}<p><b>${step.done}</b></p></details></li>`

/** That a step was ticked without the log bearing it out stays to be seen. */
export const onWord = (tick: SetupPageProps['ticks'][number]): string => (tick.onWord === true ? ', on your word' : '')

/** What is done and when: it opens to be read again, for some of it is done every day, and can be taken back there. */
export function doneSteps(props: SetupPageProps): Markup | '' {
  const done = props.plan.steps.flatMap((step) => {
    const tick = props.ticks.find((candidate) => candidate.stepId === step.id)
    return tick === undefined ? [] : [{ step, tick }]
  })
  if (done.length === 0) return ''
  return markup`<section aria-labelledby="h-done"><h2 id="h-done">Done</h2><p class="note">Open a step to read it again. Was it done on another day? Take “Not done” there, and tick it with that day.</p><form method="post" action="${props.path}/tick"><input type="hidden" name="done" value="0"><ul class="list done">${done.map(
    ({ step, tick }) =>
      markup`<li id="${step.id}"><details><summary>${doneSign()}<span>${step.title}</span><span class="when"><time>${sayDate(tick.on, yearOf(props.today))}</time>${onWord(tick)}</span></summary>
${step.id === 'leak-hold' ? shortHold(props) : ''}${stepText(step, props)}<button class="btn" name="step" value="${step.id}">Not done</button></details></li>`,
  )}</ul></form></section>`
}
