import { sayCounts, signOf } from '../../core/sizing/count-words.ts'
import { VERDICT_WORDS, type ToldFinding, type Verdict } from '../../core/sizing/finding.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { documentUnits } from '../../core/quote/document-units.ts'
import { sayBearsOn, sayRange, sayTurns } from '../../core/sizing/range-words.ts'
import { sayPhrase } from '../../core/units/say.ts'
import { plotFigure } from '../plots/finding-plot.ts'
import { PLOT_NAMES, plotsByFinding, type PlotName } from '../plots/plot-of-finding.ts'
import { VERDICT_CLASS, vial } from '../plots/vial.ts'
import { drawing, markup, type Markup } from './markup.ts'

type Counted = Pick<AssembledBuild, 'report'>

const count = (number: number, one: string, several: string): string[] =>
  number === 0 ? [] : [`${number} ${number === 1 ? one : several}`]
const problemsOf = ({ report: { counts } }: Counted): string[] => [
  ...count(counts.does_not_fit, 'problem', 'problems'),
  ...count(counts.not_known, 'check not known', 'checks not known'),
]
const list = (said: string[]): string | null => (said.length === 0 ? null : new Intl.ListFormat('en').format(said))

/** What keeps a build from fitting, and what nobody knows yet, in one phrase; null where there is neither. @example sayProblems(build) // '3 problems and 1 check not known' */
export const sayProblems = (build: Counted): string | null => list(problemsOf(build))

/** The same with what is marginal, where builds are chosen from. @example sayShort(build) // '1 check not known and 2 marginal' */
export const sayShort = (build: Counted): string | null =>
  list([...problemsOf(build), ...count(build.report.counts.marginal, 'marginal', 'marginal')])

/** All that does not fit and all that is not known, for who is about to accept; of the rest what should be known before deciding. */
function shownFindings({ report: { findings, pageOne } }: AssembledBuild): ToldFinding[] {
  const of = (verdict: Verdict): ToldFinding[] => findings.filter((finding) => finding.verdict === verdict)
  const open = [...of('does_not_fit'), ...of('not_known')]
  return [...open, ...pageOne.flatMap((index) => findings[index] ?? []).filter((finding) => !open.includes(finding))]
}

/** How many checks came out how, and the findings that a customer should know before deciding; all of them with their figures stand on a page of their own. */
export function sizingOf(build: AssembledBuild, quote: RevisionDocument, path: string): Markup {
  if (build.report.findings.length === 0) return markup`<div class="sizing"></div>`
  const shown = shownFindings(build)
  const plots = plotsByFinding(shown, build.report.figures)
  return markup`<div class="sizing" id="fit-${build.letter}"><h3>How it fits</h3><p class="counts">${sayCounts(build.report).map(({ verdict, words }) => markup`<span class="verdict ${VERDICT_CLASS[verdict]}">${drawing(vial(verdict))}${words}</span> `)}</p>${questionsOf(build)}
${shown.map((finding) => one(finding, build, quote, path, drawn(build, quote, plots.get(finding))))}<p class="note"><a href="${path}/checks/${build.letter}">All ${build.report.findings.length} checks with their figures</a></p></div>`
}

/** What to find out next, by whoever knows: the customer as well as anybody. */
function questionsOf({ report: { questions = [] } }: AssembledBuild): Markup | '' {
  if (questions.length === 0) return ''
  return markup`<div class="ask"><h4>Worth finding out first</h4><ol>${questions.map((question) => markup`<li>${question.text} <span class="note">${sayBearsOn(question)}</span></li>`)}</ol></div>`
}

/** A third of a page has no room for more; letters keep their size. */
const DRAWN_WIDTH = { few: 340, many: 236 } as const

/** A drawing of its own folds under its finding; the drip loop, which asks for the whole width, where it has that. */
function drawn(build: AssembledBuild, quote: RevisionDocument, plot: PlotName | undefined): Markup | '' {
  const many = quote.builds.length > 2
  if (plot === undefined || (plot === 'loop' && many)) return ''
  const svg = plotFigure(
    plot,
    { figures: build.report.figures, conditions: quote.conditions },
    { id: `${plot}-${build.letter}`, reader: documentUnits(quote.inputs), width: many ? DRAWN_WIDTH.many : DRAWN_WIDTH.few },
  )
  return markup`<details class="drawing-fold"><summary>Show the drawing: ${PLOT_NAMES[plot]}</summary>${drawing(svg)}</details>`
}

function one(finding: ToldFinding, { letter }: AssembledBuild, quote: RevisionDocument, path: string, figure: Markup | ''): Markup {
  const units = documentUnits(quote.inputs)
  const word = finding.wording ?? VERDICT_WORDS[finding.verdict]
  const turns = sayTurns(finding, units).join(', ')
  const told = [sayRange(finding, units), turns === '' ? '' : `What would change this: ${turns}.`].filter((text) => text !== '').join(' ')
  return markup`<div class="finding"><h4>${finding.title}</h4><span class="verdict ${VERDICT_CLASS[signOf(finding)]}">${drawing(vial(signOf(finding)))}${word}</span>
<p>${sayPhrase(finding.reason, units)}</p>${told === '' ? '' : markup`<p class="note">${told}</p>`}${finding.action === null ? '' : markup`<p class="do">${sayPhrase(finding.action.text, units)}</p>`}${figure}${finding.caution === undefined ? '' : markup`<p class="note">${finding.caution}</p>`}<p class="note"><a href="${path}/checks/${letter}#${finding.check}">How it was reckoned<span class="sr">: ${finding.title}</span></a></p></div>`
}
