import { daysBetween, sayWeekday, yearOf, type CivilDate } from '../../core/dates.ts'
import type { Reading, StepTick } from '../../core/quote/quote-view.ts'
import type { AssembledBuild } from '../../core/quote/revision.ts'
import type { SizingFigures } from '../../core/sizing/report.ts'
import type { SetupPlan } from '../../core/startup/setup-plan.ts'
import { isDry } from '../../core/startup/done-day.ts'
import { DAY_ONE } from '../../core/startup/step-day.ts'
import type { ReaderUnits } from '../../core/units/quantity.ts'
import { sayPhrase } from '../../core/units/say.ts'
import { cordProgress } from '../plots/cord.ts'
import { contactLine } from './contact.ts'
import { field } from './field.ts'
import { drawing, markup, type Markup } from './markup.ts'
import { pageDocument } from './page-document.ts'
import type { PageFault } from './page-fault.ts'
import { readingAlarm, shortHold } from './setup-alarm.ts'
import { faultsAbove } from './setup-faults.ts'
import { doneSteps, laterSteps } from './setup-lists.ts'
import { logOnPaper, setupOnPaper } from './setup-paper.ts'
import { readingsPart } from './setup-readings.ts'
import { nextStep, nextStepFields } from './setup-step.ts'

export interface SetupPageProps {
  plan: SetupPlan
  /** The quote it was made for was taken back. */
  quoteWithdrawn: boolean
  units: ReaderUnits
  contact: string
  startedOn: CivilDate | null
  ticks: Array<Pick<StepTick, 'stepId' | 'on'> & Partial<StepTick>>
  readings: Reading[]
  /** Of the build that the setup was made from; null draws no cord. */
  dripLoop: SizingFigures['dripLoop'] | null
  /** Its tank, drawn as tall as it is; null where the build has none. */
  tank: AssembledBuild['drawing']
  /** The civil day in the install's zone. */
  today: CivilDate
  /** "/s/<token>". */
  path: string
  /** Id of the next water test, in its form: the form sent twice is one test. */
  readingId: string
  /** Id of the test that was written down just now, where there is one. */
  written?: string
  faults: PageFault[]
  /** What was posted and refused, by the field's name. */
  typed: Partial<Record<string, string>>
}

/**
 * The startup checklist behind the setup link: one next step, then what comes later and what is done. No name and no price.
 * The part for paper follows what it repeats, so that the two are sent for little more than one.
 */
export function setupPage(props: SetupPageProps): Markup {
  const { plan, ticks } = props
  const ticked = new Set(ticks.map((tick) => tick.stepId))
  const done = plan.steps.map((step) => ticked.has(step.id))
  const first = done.indexOf(false)
  const current = first < 0 ? null : first
  const title = sayPhrase(plan.title, props.units)
  return pageDocument({
    title: `${props.faults.length > 0 ? 'Fault · ' : ''}${current === null ? `${title}: all steps done` : `Next: ${plan.steps[current]?.title ?? ''}`}`,
    className: 'setup',
    heading: title,
    main: markup`<div class="on-screen">
${faultsAbove(props.faults, nextStepFields(props, current))}
<div class="progress">${drawing(cordProgress({ done, current }, { id: 'cord' }))}<p class="note">${dayLine(props, ticked.size)}</p></div>
${readingAlarm(props)}
${withdrawnNote(props)}
${shortHoldNow(props)}
${current === null ? allDone() : nextStep(props, current)}
${props.startedOn === null ? startForm(props) : ''}
${laterSteps(props, current)}
</div>
${setupOnPaper(props)}
<div class="on-screen">
${doneSteps(props)}
${readingsPart(props)}
${props.startedOn === null ? '' : changeStart(props)}
${notComputed(plan)}
<p class="note endnote">Electricity and water can kill. The makers’ instructions and your local electrical code come before this list. In doubt, ask a licensed electrician.</p>
<p class="note endnote">To have this list on paper, print this page: every step comes with a box to tick. No signal beside the tank? Save it as a PDF before, and tick later, with “It was another day”: without signal nothing is sent.</p>
</div>
${logOnPaper(props)}`,
  })
}

/** The hold can be made good until the tank has stood full for its day of running. */
const shortHoldNow = (props: SetupPageProps): Markup | '' => (props.ticks.some((tick) => tick.stepId === 'run-in') ? '' : shortHold(props))

/** A tank that is set up goes on needing its list; one that is not should not be bought by an offer that is gone. */
const withdrawnNote = ({ quoteWithdrawn, contact }: SetupPageProps): Markup | '' =>
  quoteWithdrawn
    ? markup`<div class="told warn" role="status"><p class="told-head">The quote for this setup was withdrawn.</p>
<p>Nothing bought yet? Ask before you buy by it. Is the tank set up already? Go on with the steps and tests below: they are as right as before.</p>
<p class="ask">${contactLine(contact)}</p></div>`
    : ''

function dayLine({ startedOn, today, plan, ticks }: SetupPageProps, doneCount: number): string {
  const words = ticks.filter(({ onWord }) => onWord === true).length
  const count = `${doneCount} of ${plan.steps.length} done${words === 0 ? '' : `, ${words} on a word`}`
  if (startedOn === null || startedOn > today) return count
  return `Day ${daysBetween(startedOn, today) + 1}, ${sayWeekday(today, yearOf(today))} · ${count}`
}

const allDone = (): Markup => markup`<article class="step"><p class="label now">All steps are done</p><h1>Keep testing the water</h1>
<p class="lead">Test every week in the first months, and write down what you read below. A reading that changes suddenly is a reason to ask.</p></article>`

function startForm(props: SetupPageProps): Markup {
  return markup`<section class="start" aria-labelledby="h-start"><h2 id="h-start">When did you start?</h2>
<p>With the day on which the stand was put in its place, the steps below get their dates. ${DAY_ONE}</p>${dayForm(props)}</section>`
}

const changeStart = (props: SetupPageProps): Markup =>
  markup`<details class="start"${props.faults.some((fault) => fault.field === 'on') ? markup` open` : ''}><summary>Change the day of the start</summary>${dayForm(props)}</details>`

/** The start is no later than the first step with water that is done. */
const mostStart = ({ plan, ticks }: SetupPageProps): { most?: CivilDate } => {
  const [first] = ticks.filter(({ stepId }) => !isDry(plan, stepId)).map(({ on }) => on).sort() // prettier-ignore
  return first === undefined ? {} : { most: first }
}

const dayForm = (props: SetupPageProps): Markup =>
  markup`<form method="post" action="${props.path}/start" class="day-form">${field({
    id: 'start-on',
    name: 'on',
    label: 'Day of the start',
    type: 'date',
    value: props.typed['on'] ?? props.startedOn ?? props.today,
    required: true,
    ...mostStart(props),
    faults: props.faults,
  })}<button class="btn">Set the day</button></form>`

const notComputed = (plan: SetupPlan): Markup | '' =>
  plan.notComputed.length === 0
    ? ''
    : markup`<section aria-labelledby="h-open"><h2 id="h-open">Not worked out</h2><ul class="plain">${plan.notComputed.map((item) => markup`<li>${item}</li>`)}</ul></section>`
