import { sayCounts } from '../../core/sizing/count-words.ts'
import { VERDICT_WORDS, type Finding } from '../../core/sizing/finding.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { sayPhrase } from '../../core/units/say.ts'
import { VERDICT_CLASS, vial } from '../plots/vial.ts'
import { drawing, markup, type Markup } from './markup.ts'

/** How many checks came out how, and the at most three findings that a customer should know before deciding. */
export function sizingOf(build: AssembledBuild, quote: RevisionDocument): Markup {
  const { findings, pageOne } = build.report
  if (findings.length === 0) return markup`<div class="sizing"></div>`
  const shown = pageOne.flatMap((index) => findings[index] ?? [])
  return markup`<div class="sizing"><h3>How it fits</h3><p class="counts">${sayCounts(build.report).map(({ verdict, words }) => markup`<span class="verdict ${VERDICT_CLASS[verdict]}">${drawing(vial(verdict))}${words}</span> `)}</p>
${shown.map((finding) => one(finding, quote))}</div>`
}

function one(finding: Finding, quote: RevisionDocument): Markup {
  const { units } = quote.inputs.install
  const word = finding.wording ?? VERDICT_WORDS[finding.verdict]
  return markup`<div class="finding"><h4>${finding.title}</h4><span class="verdict ${VERDICT_CLASS[finding.verdict]}">${drawing(vial(finding.verdict))}${word}</span>
<p>${sayPhrase(finding.reason, units)}</p>${finding.action === null ? '' : markup`<p class="do">${sayPhrase(finding.action.text, units)}</p>`}${finding.caution === undefined ? '' : markup`<p class="note">${finding.caution}</p>`}</div>`
}
