import type { Step } from '../../core/startup/setup-plan.ts'
import type { Phrase, ReaderUnits } from '../../core/units/quantity.ts'
import { sayPhrase } from '../../core/units/say.ts'
import { dripLoopDrawing } from '../plots/drip-loop.ts'
import { levelDrawing } from '../plots/level.ts'
import { contactLine } from './contact.ts'
import { drawing, markup, type Markup } from './markup.ts'
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
${step.caution === null ? '' : markup`<p class="caution">${step.caution}</p>`}
<div class="told stop"><p class="told-head">${stopSign()}Stop and ask if</p><p>${sayPhrase(step.stopAndAsk, props.units)}</p><p class="ask">${contactLine(props.contact)}</p></div>
<form class="go" method="post" action="${props.path}/tick"><input type="hidden" name="step" value="${step.id}"><input type="hidden" name="done" value="1"><button class="btn main">${step.done}</button></form></article>`
}

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
  return markup`<dl class="how">${step.amounts.map((amount) => markup`<div><dt>${amount.label}</dt><dd>${phraseMarkup(amount.value, units)}</dd></div>`)}${step.howLong === '' ? '' : markup`<div><dt>How long</dt><dd>${step.howLong}</dd></div>`}</dl>`
}

export const actions = (list: readonly Phrase[], units: ReaderUnits): Markup =>
  markup`<ol class="act">${list.map((action) => markup`<li>${phraseMarkup(action, units)}</li>`)}</ol>`
