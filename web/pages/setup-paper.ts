import { sayDate, yearOf } from '../../core/dates.ts'
import { cautionTitle } from '../../core/startup/cautions.ts'
import type { Step } from '../../core/startup/setup-plan.ts'
import { DAY_ONE } from '../../core/startup/step-day.ts'
import { displayUnit, sayPhrase } from '../../core/units/say.ts'
import { sayContact } from './contact.ts'
import { markup, type Markup } from './markup.ts'
import { onWord, sayDue } from './setup-lists.ts'
import type { SetupPageProps } from './setup-page.ts'
import { figuresOf } from './setup-readings.ts'
import { stepDrawing, stepText } from './setup-step.ts'

/** Lines of the water-test log on paper: a test every other day of the weeks a cycle usually takes, and a few to spare. */
const LOG_LINES = 18
/** However full the log is: a week to go on by hand. */
const LEAST_EMPTY = 7

/** The whole list for paper, every step with a box to tick. It is not shown on a screen. */
export function setupOnPaper(props: SetupPageProps): Markup {
  return markup`<div class="on-paper"><h1>${sayPhrase(props.plan.title, props.units)}: startup</h1>
<p>Electricity and water can kill. The makers’ instructions and your local electrical code come before this list. In doubt, ask a licensed electrician. ${sayContact(props.contact)}</p>
<ol>${props.plan.steps.map((step, index) => one(step, index, props))}</ol></div>`
}

const LOG_HEADS = ['Ammonia', 'Nitrite', 'Nitrate', 'pH', 'KH', 'Temperature'] as const

/** What was read so far with its units, oldest first, and empty lines to go on by hand. */
export function logOnPaper({ readings, units, today }: SetupPageProps): Markup {
  const empty = Math.max(LEAST_EMPTY, LOG_LINES - readings.length)
  const written = readings.map((reading) => {
    const figures = figuresOf(reading, units)
    return markup`<tr><td>${sayDate(reading.takenOn, yearOf(today))}</td>${LOG_HEADS.map((head) => markup`<td>${figures.find(({ label }) => label === head)?.value ?? ''}</td>`)}<td>${reading.note}</td></tr>`
  })
  const line = markup`<tr><td></td>${LOG_HEADS.map(() => markup`<td></td>`)}<td></td></tr>`
  return markup`<div class="on-paper"><h2>Water tests</h2><p>Ammonia, nitrite and nitrate in mg/L, KH in ${displayUnit('dKH', units)}, temperature in ${displayUnit('degC', units)}. ${DAY_ONE}</p><table class="log"><thead><tr><th scope="col">Day</th>${LOG_HEADS.map((head) => markup`<th scope="col">${head}</th>`)}<th scope="col">Note</th></tr></thead><tbody>${written}${Array.from({ length: empty }, () => line)}</tbody></table></div>`
}

/** A caution in full where it first comes, by its name after that. */
function cautionOnce(step: Step, index: number, { plan }: SetupPageProps): Step {
  const first = plan.steps.findIndex(({ caution }) => caution === step.caution)
  const title = step.caution === null || first === index ? undefined : cautionTitle(step.caution)
  return title === undefined ? step : { ...step, caution: `${title}: as in step ${first + 1}.` }
}

function one(step: Step, index: number, props: SetupPageProps): Markup {
  const tick = props.ticks.find((candidate) => candidate.stepId === step.id)
  const ticked = tick !== undefined
  const when = tick === undefined ? sayDue(step, props) : `done ${sayDate(tick.on, yearOf(props.today))}${onWord(tick)}`
  return markup`<li><span class="box${ticked ? ' ticked' : ''}">${ticked ? markup`<span class="sr">done</span>` : ''}</span><div><h3>${index + 1}. ${step.title} <small>${when}</small></h3>${stepText(cautionOnce(step, index, props), props, stepDrawing(step, props, `paper-${step.id}`))}<p><b>${step.done}</b></p></div></li>`
}
