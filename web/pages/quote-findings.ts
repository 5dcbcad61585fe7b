import { VERDICTS, VERDICT_WORDS, type Finding, type Verdict } from '../../core/sizing/finding.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { sayPhrase } from '../../core/units/say.ts'
import { VERDICT_CLASS, vial } from '../plots/vial.ts'
import { drawing, markup, type Markup } from './markup.ts'

/** A count in a heading: "2 marginal", "6 fit". */
const COUNT_WORDS: Record<Verdict, (count: number) => string> = {
  does_not_fit: (count) => (count === 1 ? '1 does not fit' : `${count} do not fit`),
  not_known: (count) => `${count} not known`,
  marginal: (count) => `${count} marginal`,
  fits: (count) => (count === 1 ? '1 fits' : `${count} fit`),
}

/** How many checks came out how, and the at most three findings that a customer should know before deciding. */
export function sizingOf(build: AssembledBuild, quote: RevisionDocument): Markup {
  const { counts, findings, pageOne } = build.report
  if (findings.length === 0) return markup`<div class="sizing"></div>`
  const shown = pageOne.flatMap((index) => findings[index] ?? [])
  return markup`<div class="sizing"><h3>How it fits</h3><p class="counts">${VERDICTS.filter((verdict) => counts[verdict] > 0).map((verdict) => markup`<span class="verdict ${VERDICT_CLASS[verdict]}">${drawing(vial(verdict))}${COUNT_WORDS[verdict](counts[verdict])}</span> `)}</p>
${shown.map((finding) => one(finding, quote))}</div>`
}

function one(finding: Finding, quote: RevisionDocument): Markup {
  const { units } = quote.inputs.install
  const word = finding.wording ?? VERDICT_WORDS[finding.verdict]
  return markup`<div class="finding"><h4>${finding.title}</h4><span class="verdict ${VERDICT_CLASS[finding.verdict]}">${drawing(vial(finding.verdict))}${word}</span>
<p>${sayPhrase(finding.reason, units)}</p>${finding.action === null ? '' : markup`<p class="do">${sayPhrase(finding.action.text, units)}</p>`}${finding.caution === undefined ? '' : markup`<p class="note">${finding.caution}</p>`}</div>`
}
