import { sayDate, yearOf } from '../../core/dates.ts'
import type { Step } from '../../core/startup/setup-plan.ts'
import { sayPhrase } from '../../core/units/say.ts'
import { sayContact } from './contact.ts'
import { markup, type Markup } from './markup.ts'
import { sayDue } from './setup-lists.ts'
import type { SetupPageProps } from './setup-page.ts'
import { actions, amounts, stepDrawing } from './setup-step.ts'

/** Lines of the water-test log on paper: a test every other day of the weeks a cycle usually takes, and a few to spare. */
const LOG_LINES = 18

/** The whole list for paper, every step with a box to tick. It is not shown on a screen. */
export function setupOnPaper(props: SetupPageProps): Markup {
  return markup`<div class="on-paper"><h1>${sayPhrase(props.plan.title, props.units)}: startup</h1>
<p>Electricity and water can kill. The makers’ instructions and your local electrical code come before this list. In doubt, ask a licensed electrician. ${sayContact(props.contact)}</p>
<ol>${props.plan.steps.map((step, index) => one(step, index, props))}</ol>
<h2>Water tests</h2><table class="log"><thead><tr><th scope="col">Day</th><th scope="col">Ammonia</th><th scope="col">Nitrite</th><th scope="col">Nitrate</th><th scope="col">pH</th><th scope="col">Temperature</th></tr></thead><tbody>${Array.from({ length: LOG_LINES }, () => markup`<tr><td></td><td></td><td></td><td></td><td></td><td></td></tr>`)}</tbody></table></div>`
}

function one(step: Step, index: number, props: SetupPageProps): Markup {
  const tick = props.ticks.find((candidate) => candidate.stepId === step.id)
  const ticked = tick !== undefined
  const when = tick === undefined ? sayDue(step, props) : `done ${sayDate(tick.on, yearOf(props.today))}`
  return markup`<li><span class="box${ticked ? ' ticked' : ''}">${ticked ? markup`<span class="sr">done</span>` : ''}</span><div><h3>${index + 1}. ${step.title} <small>${when}</small></h3><p>${sayPhrase(step.why, props.units)}</p>${stepDrawing(step, props, `paper-${step.id}`)}${amounts(step, props.units)}${actions(step.actions, props.units)}${step.caution === null ? '' : markup`<p><b>${step.caution}</b></p>`}<p><b>Stop and ask if</b> ${sayPhrase(step.stopAndAsk, props.units)}</p><p><b>${step.done}</b></p></div></li>`
}
