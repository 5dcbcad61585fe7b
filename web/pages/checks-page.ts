import { explainFinding } from '../../core/explanation/explain-finding.ts'
import { INPUT_SOURCE_WORDS } from '../../core/explanation/explanation.ts'
import { issuedSubject } from '../../core/explanation/issued-subject.ts'
import { sayLimit } from '../../core/explanation/limit-words.ts'
import { documentUnits } from '../../core/quote/document-units.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { signOf } from '../../core/sizing/count-words.ts'
import { SOURCE_WORDS, VERDICT_WORDS, type Finding, type ToldFinding } from '../../core/sizing/finding.ts'
import { sayWorst } from '../../core/sizing/range-words.ts'
import type { SizingSubject } from '../../core/sizing/report.ts'
import { sayPhrase, sayQuantity } from '../../core/units/say.ts'
import { VERDICT_CLASS, vial } from '../plots/vial.ts'
import { apart } from './apart.ts'
import { cordList } from './cord-list.ts'
import { drawing, markup, type Markup } from './markup.ts'
import { pageDocument } from './page-document.ts'

/** Every check of one build with its formula in words and what went in: for whoever wants to know why. */
export function checksPage(quote: RevisionDocument, build: AssembledBuild, path: string): Markup {
  const subject = issuedSubject(quote, build)
  const { findings } = build.report
  const list = findings.map(
    (finding) => markup`<li><a href="#${finding.check}">${finding.title}</a> <span class="quiet">${wordOf(finding)}</span></li>`,
  )
  return pageDocument({
    title: `How build ${build.letter} was checked, quote ${quote.number}`,
    className: 'checks',
    heading: quote.inputs.install.name,
    main: markup`<p class="label"><a href="${path}#fit-${build.letter}">Back to quote ${quote.number}</a></p>
<h1>How ${build.letter}, ${apart(build.name)}, was checked</h1>
<p class="lead">Each check with its formula in words, the figures that went into it and where they come from. Worst first.</p>
<nav aria-label="Checks"><ul class="plain check-list">${list}</ul></nav>
${findings.map((finding) => one(finding, build, quote, subject))}
<p class="note">Water, glass, mains electricity, floors and heavy lifting can hurt. The makers’ instructions and the local electrical and building code come first; in doubt, ask a licensed electrician or structural engineer.</p>`,
  })
}

const wordOf = (finding: Finding): string => finding.wording ?? VERDICT_WORDS[finding.verdict]

function one(finding: ToldFinding, build: AssembledBuild, quote: RevisionDocument, subject: SizingSubject | undefined): Markup {
  const units = documentUnits(quote.inputs)
  const { check, title, value, limit, source, caution } = finding
  const reading = [value && sayQuantity(value, units), limit && sayLimit(limit, units)].filter(Boolean).join(', ')
  const worst = sayWorst(finding, units)
  return markup`<section class="reckoned" id="${check}" aria-labelledby="h-${check}"><h2 id="h-${check}">${title}</h2>
<p><span class="verdict ${VERDICT_CLASS[signOf(finding)]}">${drawing(vial(signOf(finding)))}${wordOf(finding)}</span>${reading === '' ? '' : markup` <b>${reading}</b>`}</p>
<p>${sayPhrase(finding.reason, units)}</p>${worst === '' ? '' : markup`<p class="note">${worst}.</p>`}${subject === undefined || check !== 'cord_length' ? '' : cordList(subject, units)}${subject === undefined ? '' : reckoned(finding, build, subject, quote)}
<p class="note">Source (${SOURCE_WORDS[source.tag]}): ${source.text.replace(/\.?$/, '.')}</p>${caution === undefined ? '' : markup`<p class="note">${caution}</p>`}</section>`
}

function reckoned(finding: Finding, build: AssembledBuild, subject: SizingSubject, quote: RevisionDocument): Markup {
  const units = documentUnits(quote.inputs)
  const { formula, inputs } = explainFinding(finding, subject, build.report.figures)
  const rows = inputs.map(
    ({ name, value, from }) =>
      markup`<div><dt>${name}</dt><dd>${sayPhrase(value, units)} <span class="note">${INPUT_SOURCE_WORDS[from]}</span></dd></div>`,
  )
  return markup`<p><b>How it was reckoned:</b> ${sayPhrase(formula, units)}</p>${rows.length === 0 ? '' : markup`<dl>${rows}</dl>`}`
}
