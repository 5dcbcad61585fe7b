import { sayMoney } from '../../core/money.ts'
import { sayOpenSlots } from '../../core/quote/open-slots.ts'
import type { AssembledBuild } from '../../core/quote/revision.ts'
import { apart } from './apart.ts'
import { noteField } from './field.ts'
import { markup, type Markup } from './markup.ts'
import { faultLine, faultOf, formFaults } from './page-fault.ts'
import { salesEnd } from './quote-builds.ts'
import { sayProblems, sayShort } from './quote-findings.ts'
import type { QuotePageProps } from './quote-page.ts'

/**
 * Accept one build, or decline. None is chosen beforehand. The button says what it accepts:
 * there is one a build, and the stylesheet shows the one that is chosen.
 * A build without a total cannot be accepted: nobody should agree to an amount that is not there.
 */
export function answerForms(props: QuotePageProps): Markup {
  const { document: quote, path, faults, typed } = props
  const declining = typed.answer === 'declined'
  const note = typed.note ?? ''
  const hidden = (answer: string): Markup =>
    markup`<input type="hidden" name="revision" value="${quote.revision}"><input type="hidden" name="answer" value="${answer}">`
  return markup`<section class="answer" id="answer" aria-labelledby="h-answer"><h2 id="h-answer">Your answer</h2>
${formFaults(faults, ['answer', 'revision'])}
<form method="post" action="${path}/answer#answer" class="accept">${hidden('accepted')}
<fieldset><legend class="label">Which build?</legend><div class="options">${quote.builds.map((build) => option(build, props))}</div>${faultLine('letter', faultOf(faults, 'letter'))}</fieldset>
${noteField({ id: 'note', name: 'note', label: 'A note to your advisor, if you like', value: declining ? '' : note, faults: declining ? [] : faults })}
<div class="go"><p class="choose-first quiet">Choose a build, and a button that accepts it appears here.</p>${quote.builds.filter((build) => build.cost.today.complete).map((build) => confirm(build, props))}</div>
</form>
<details class="decline"${declining ? markup` open` : ''}><summary>None of these</summary>
<form method="post" action="${path}/answer#answer">${hidden('declined')}
${noteField({ id: 'decline-note', name: 'note', label: 'What would suit you better? (optional)', value: declining ? note : '', faults: declining ? faults : [] })}
<button class="btn">Decline this quote</button></form></details></section>`
}

const totalOf = (build: AssembledBuild, currency: string): string | null =>
  build.cost.today.complete ? sayMoney(build.cost.today.totalMinor, currency) : null

function option(build: AssembledBuild, { document: quote, typed }: QuotePageProps): Markup {
  const total = totalOf(build, quote.inputs.install.currency)
  const checked = total !== null && (typed.letter === undefined ? quote.builds.length === 1 : typed.letter === build.letter)
  const problems = sayShort(build)
  const attributes = total === null ? markup` disabled` : checked ? markup` checked` : ''
  return markup`<label class="option"><input type="radio" name="letter" value="${build.letter}" required${attributes}> <span><b>${build.letter}: ${apart(build.name)}</b> <span class="option-total">${total ?? 'no total yet: ask first'}</span>${withoutOpen(build, ' ')}${problems === null ? '' : markup`<span class="option-problems">${problems}</span>`}</span></label>`
}

/** What to know of the chosen build, then the button: what does not fit, and which prices end sooner than the quote. */
function confirm(build: AssembledBuild, { document: quote }: QuotePageProps): Markup {
  const { letter, name } = build
  const problems = sayProblems(build)
  const warning =
    problems === null
      ? ''
      : markup`<div class="told stop"><p><b>${letter} has ${problems}</b>, listed under <a href="#fit-${letter}">how ${letter} fits</a>. Accept only after asking your advisor.</p></div>`
  return markup`<div class="confirm confirm-${letter}">${warning}${salesEnd(build, quote)}<button class="btn main"><span>Accept ${letter}: ${apart(name)}, ${totalOf(build, quote.inputs.install.currency)}${withoutOpen(build, ', ')}</span></button></div>`
}

/** What the total does not hold, on the very thing that is pressed. */
const withoutOpen = (build: AssembledBuild, before: string): Markup | '' => {
  const open = sayOpenSlots(build)
  return open === '' ? '' : markup`<small class="without">${before}${open}</small>`
}
