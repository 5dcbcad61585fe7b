import { signOf } from '../../core/sizing/count-words.ts'
import { byHurt } from '../../core/sizing/engine.ts'
import { VERDICT_WORDS, VERDICTS, type Finding, type Limit, type ToldFinding } from '../../core/sizing/finding.ts'
import type { AssembledBuild } from '../../core/quote/revision.ts'
import { MOST_QUESTIONS, urgencyOf } from '../../core/sizing/open-questions.ts'
import { sayRange, sayTurns } from '../../core/sizing/range-words.ts'
import { CHECK_TITLES } from '../../core/sizing/check-titles.ts'
import { firstSentence, hasFigure, sentenceWith } from './first-sentence.ts'
import type { FindingPaper, FirstFinding } from './paper.ts'
import type { Teller } from './teller.ts'

/** The floor has its own words and never "fits". */
export const verdictWord = (finding: Finding): string => finding.wording ?? VERDICT_WORDS[finding.verdict]

/** "at most 89.6 °F", in words since the faces of the house lack the signs on the web. */
export function limitWords(limit: Limit | undefined, teller: Teller): string {
  if (limit === undefined) return ''
  if (limit.kind === 'at_most') return `at most ${teller.quantity(limit.high)}`
  if (limit.kind === 'at_least') return `at least ${teller.quantity(limit.low)}`
  return rangeWords(teller.quantity(limit.low), teller.quantity(limit.high))
}

/** A range with its unit said once. @example rangeWords('4 times an hour', '10 times an hour') // '4 to 10 times an hour' */
export function rangeWords(low: string, high: string): string {
  const unit = / [^\d()]+$/.exec(high)?.[0] ?? ''
  return unit !== '' && low.endsWith(unit) ? `${low.slice(0, -unit.length)} to ${high}` : `${low} to ${high}`
}

/** One finding with all that stands behind it. */
export function findingOnPaper(finding: ToldFinding, teller: Teller): FindingPaper {
  return {
    title: CHECK_TITLES[finding.check],
    verdict: signOf(finding),
    word: verdictWord(finding),
    value: finding.value === undefined ? '' : teller.quantity(finding.value),
    limit: limitWords(finding.limit, teller),
    reason: teller.phrase(finding.reason),
    action: finding.action === null ? '' : teller.phrase(finding.action.text),
    range: sayRange(finding, teller.units),
    turns: sayTurns(finding, teller.units).join(', '),
    assumed: finding.assumed.join('; '),
    missing: finding.missing.join(', '),
    caution: cautionWords(finding),
  }
}

const SCREENING = 'Screening only, never an approval.'

/** A floor finding never stands without saying that it is a screening. */
function cautionWords({ caution = '', check }: ToldFinding): string {
  if (check !== 'floor_load' || caution.includes(SCREENING)) return caution
  return `${caution} ${SCREENING}`.trim()
}

const MOST_ON_PAGE_ONE = 3
const isWorse = (a: Finding, b: Finding): boolean => VERDICTS.indexOf(a.verdict) < VERDICTS.indexOf(b.verdict)

interface Met {
  finding: Finding
  letters: string[]
}

const onPageOne = ({ report }: AssembledBuild): Finding[] => report.pageOne.flatMap((index) => report.findings[index] ?? [])

/** Each check of page one over all builds, once: as its worst, with the letters of the builds where it is so. */
function worstOfEach(builds: AssembledBuild[]): Met[] {
  const worst = new Map<Finding['check'], Met>()
  for (const build of builds) {
    for (const finding of onPageOne(build)) {
      const known = worst.get(finding.check)
      if (known?.finding.verdict === finding.verdict) known.letters.push(build.letter)
      else if (known === undefined || isWorse(finding, known.finding)) worst.set(finding.check, { finding, letters: [build.letter] })
    }
  }
  return [...worst.values()].sort((a, b) => byHurt(a.finding, b.finding))
}

/** The three that can hurt first over all builds. Whatever is wrong with the others, what can hurt first in the build that is suggested is one of them. */
export function firstFindings(builds: AssembledBuild[], teller: Teller): FirstFinding[] {
  const first = worstOfEach(builds).slice(0, MOST_ON_PAGE_ONE)
  const suggested = builds.find((build) => build.suggested)
  const own = suggested && onPageOne(suggested)[0]
  if (suggested && own && !first.some(({ letters }) => letters.includes(suggested.letter)))
    first.splice(MOST_ON_PAGE_ONE - 1, 1, { finding: own, letters: [suggested.letter] })
  return first.map(({ finding, letters }) => firstFinding(finding, letters, builds.length, teller))
}

/** Whether a figure lies beyond what it is held against. */
function isPast({ value, limit }: Finding): boolean {
  if (value === undefined || limit === undefined) return false
  return (limit.kind !== 'at_least' && value.value > limit.high.value) || (limit.kind !== 'at_most' && value.value < limit.low.value)
}

/** The first sentence of its reason; of what is past its limit the one with the figure, or the figure beside it. */
function firstReason(finding: Finding, teller: Teller): string {
  const reason = teller.phrase(finding.reason)
  const first = firstSentence(reason)
  const figure = finding.value && isPast(finding) ? teller.quantity(finding.value) : ''
  if (figure === '' || hasFigure(first, figure)) return first
  return sentenceWith(reason, figure) ?? `${first} Value ${figure}, limit ${limitWords(finding.limit, teller)}.`
}

function firstFinding(finding: Finding, letters: string[], buildCount: number, teller: Teller): FirstFinding {
  const reason = firstReason(finding, teller)
  return {
    letters: buildCount === 1 ? '' : letters.join(', '),
    title: CHECK_TITLES[finding.check],
    verdict: finding.verdict,
    word: verdictWord(finding),
    sentence: letters.length > 1 ? `In ${letters[0]}: ${reason}` : reason,
    action: finding.action === null ? '' : firstAction(teller.phrase(finding.action.text)),
  }
}

/** What to find out next over all builds, each question once, what bears on what can hurt soonest in front. */
export function firstQuestions(builds: AssembledBuild[]): string[] {
  const asked = new Map<string, number>()
  for (const { report } of builds)
    for (const question of report.questions ?? [])
      asked.set(question.text, Math.min(asked.get(question.text) ?? Infinity, urgencyOf(question, report.findings)))
  return [...asked]
    .sort(([, a], [, b]) => a - b)
    .slice(0, MOST_QUESTIONS)
    .map(([text]) => text)
}

/** Where no single part would do, an action says so first and then what would: that is the one to do. */
const WHAT_WOULD = 'What would: '

/** @example firstAction('No power holds both. What would: two heaters of 60 W. Ask us.') // 'Two heaters of 60 W.' */
export function firstAction(text: string): string {
  const at = text.indexOf(WHAT_WOULD)
  if (at === -1) return firstSentence(text)
  const would = firstSentence(text.slice(at + WHAT_WOULD.length))
  return would.charAt(0).toUpperCase() + would.slice(1)
}
