import { isCivilDate, type CivilDate } from '../../core/dates.ts'
import { doneBefore } from '../../core/startup/done-day.ts'
import type { Step } from '../../core/startup/setup-plan.ts'
import { phraseReaderFirst, readerFirst } from '../../core/startup/reader-first.ts'
import { stepGate, type StepGate } from '../../core/startup/step-gate.ts'
import type { Phrase, ReaderUnits } from '../../core/units/quantity.ts'
import { sayPhrase } from '../../core/units/say.ts'
import { dripLoopDrawing } from '../plots/drip-loop.ts'
import { levelDrawing } from '../plots/level.ts'
import { contactLine } from './contact.ts'
import { field } from './field.ts'
import { drawing, markup, type Markup } from './markup.ts'
import { faultLine, faultOf } from './page-fault.ts'
import { phraseMarkup } from './phrase-markup.ts'
import type { SetupPageProps } from './setup-page.ts'
import { stopSign } from './signs.ts'

/** The one next step in full, with one large button that repeats its criterion. */
export function nextStep(props: SetupPageProps, index: number): Markup | '' {
  const step = props.plan.steps[index]
  if (step === undefined) return ''
  return markup`<article class="step" aria-labelledby="h-step"><p class="label now">Your next step</p>
<h1 id="h-step">${step.title}</h1>
<p class="lead">${sayPhrase(step.why, props.units)}</p>
${stepDrawing(step, props, 'now')}
${amounts(step, props.units)}
${actions(step.actions, props.units)}
${step.caution === null ? '' : markup`<p class="caution">${readerFirst(step.caution, props.units)}</p>`}
<div class="told stop"><p class="told-head">${stopSign()}Stop and ask if</p><p>${sayPhrase(step.stopAndAsk, props.units)}</p><p class="ask">${contactLine(props.contact)}</p></div>
${tickForm(step, props)}</article>`
}

/** The day that a step was said to be done on, where the page comes back with that; else today. */
function judgedOn({ typed, today }: SetupPageProps): CivilDate {
  const day = typed['doneOn'] ?? ''
  return isCivilDate(day) && day < today ? day : today
}

const gateOf = (step: Step, props: SetupPageProps): StepGate | null => stepGate(step.id, { ...props, today: judgedOn(props) })

/** Fields of the next step's form, as it stands: a fault of another has no place in it. */
export function nextStepFields(props: SetupPageProps, index: number | null): string[] {
  const step = index === null ? undefined : props.plan.steps[index]
  if (step === undefined) return []
  const gate = gateOf(step, props)
  return gate === null ? ['doneOn'] : gate.against.length > 0 ? [] : ['doneOn', 'tested']
}

/** The button; before it what the log lacks and the word that stands for it, or in its place what the newest readings say against it. */
function tickForm(step: Step, props: SetupPageProps): Markup {
  const gate = gateOf(step, props)
  if (gate !== null && gate.against.length > 0)
    return markup`<div class="told stop"><p class="told-head">${stopSign()}Not yet: the newest readings say otherwise.</p><ul class="plain">${gate.against.map((each) => markup`<li>${sayPhrase(each, props.units)}</li>`)}</ul><p>When it is put right, write down a new test first.</p>${judgedOn(props) < props.today ? markup`<p><a href="${props.path}">Name another day</a></p>` : ''}</div>
<p class="go"><a class="btn main" href="#readings">Write down a new test</a></p>`
  return markup`<form class="go" method="post" action="${props.path}/tick"><input type="hidden" name="step" value="${step.id}"><input type="hidden" name="done" value="1">${gate === null ? '' : askForWord(gate, props)}<button class="btn main">${step.done}</button>${anotherDay(step, props)}</form>`
}

/** For who ticks later than she did it: the days of the steps to come count from the day that she names. */
function anotherDay(step: Step, props: SetupPageProps): Markup {
  const value = props.typed['doneOn'] ?? ''
  const least = doneBefore(step.id, props)?.on ?? ''
  const open = value !== '' || faultOf(props.faults, 'doneOn') !== undefined
  return markup`<details class="another-day"${open ? markup` open` : ''}><summary>It was another day</summary>${field({
    id: 'done-on',
    name: 'doneOn',
    label: 'Day on which it was done',
    type: 'date',
    hint: 'Then press the button above. Left empty it is today.',
    value,
    ...(least === '' || least > props.today ? {} : { least }),
    most: props.today,
    faults: props.faults,
  })}</details>`
}

/** A step that the log does not bear out is ticked only with a word for it. */
function askForWord({ lacks, word, tests }: StepGate, { faults, units, typed }: SetupPageProps): Markup {
  const fault = faultOf(faults, 'tested')
  return markup`<div class="told warn"><p class="told-head">The log does not bear this out yet.</p><ul class="plain">${lacks.map((each) => markup`<li>${sayPhrase(each, units)}</li>`)}</ul><p>It keeps people and animals safe. Wait, ${tests ? 'or write the tests down below first, ' : ''}or say:</p></div>
<label class="check"><input type="checkbox" name="tested" id="tested" value="1"${typed['tested'] === '1' ? markup` checked` : ''}${fault === undefined ? '' : markup` aria-invalid="true" aria-describedby="tested-fault"`}><span>${word}</span></label>${faultLine('tested', fault)}`
}

/** A step to read, on paper, before it is due or after it is done: all of its words but for the criterion. */
export const stepText = (step: Step, { units }: SetupPageProps, picture: Markup | '' = ''): Markup =>
  markup`<p>${sayPhrase(step.why, units)}</p>${picture}${amounts(step, units)}${actions(step.actions, units)}${step.caution === null ? '' : markup`<p class="caution">${readerFirst(step.caution, units)}</p>`}<p><b>Stop and ask if</b> ${sayPhrase(step.stopAndAsk, units)}</p>`

/** The drawing of a step whose hands must do something; null where the heights are not known. */
export function stepDrawing(step: Step, props: SetupPageProps, id: string): Markup | '' {
  if (step.drawing === 'level') return drawing(levelDrawing({ id: `level-${id}` }))
  if (step.drawing === 'drip_loop' && props.dripLoop)
    return drawing(
      dripLoopDrawing(props.dripLoop, {
        id: `loop-${id}`,
        reader: props.units,
        what: 'cord',
        ...(props.tank === null ? {} : { tankHeightMm: props.tank.heightMm }),
      }),
    )
  return ''
}

export function amounts(step: Step, units: ReaderUnits): Markup {
  return markup`<dl class="how">${step.amounts.map((amount) => markup`<div><dt>${amount.label}</dt><dd>${phraseMarkup(phraseReaderFirst(amount.value, units), units)}</dd></div>`)}${step.howLong === '' ? '' : markup`<div><dt>How long</dt><dd>${step.howLong}</dd></div>`}</dl>`
}

export const actions = (list: readonly Phrase[], units: ReaderUnits): Markup =>
  markup`<ol class="act">${list.map((action) => markup`<li>${phraseMarkup(action, units)}</li>`)}</ol>`
