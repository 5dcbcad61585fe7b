import type { ToldFinding } from '../../core/sizing/finding.ts'
import type { AssembledBuild } from '../../core/quote/revision.ts'
import { sayWorst } from '../../core/sizing/range-words.ts'
import { findingOnPaper, limitWords, verdictWord } from './findings-on-paper.ts'
import { firstSentence } from './first-sentence.ts'
import type { FindingPaper, FitPaper, SizingPaper } from './paper.ts'
import type { Teller } from './teller.ts'

/** The floor has its own words, and none of them is *fits*. */
const fits = (finding: ToldFinding): boolean => finding.verdict === 'fits' && finding.wording === undefined

/**
 * What was checked in one build. Told in full: what fits ill with all that stands behind it, what fits in a row each, with its assumptions
 * gathered once; formula, inputs and source of each stand in a section of their own. Where another build was told in full before: only what fits ill and differs from that build, and the rest by name.
 */
export function sizingOnPaper({ report }: AssembledBuild, told: AssembledBuild | null, teller: Teller): SizingPaper {
  const fitting = report.findings.filter(fits)
  const rest = report.findings.filter((finding) => !fits(finding))
  if (told !== null) return differing(rest, fitting, told, teller)
  return {
    findings: rest.map((finding) => findingOnPaper(finding, teller)),
    fits: fitting.map((finding) => fitOnPaper(finding, teller)),
    assumed: [
      ...new Set(fitting.flatMap((finding) => finding.assumed)),
      ...fitting.flatMap((finding) => (finding.worst ? [`${finding.title}: ${sayWorst(finding, teller.units)}`] : [])),
    ].join('; '),
    same: '',
    fitting: '',
  }
}

function differing(rest: ToldFinding[], fitting: ToldFinding[], told: AssembledBuild, teller: Teller): SizingPaper {
  const known = new Set(told.report.findings.map((finding) => JSON.stringify(finding)))
  const same = rest.filter((finding) => known.has(JSON.stringify(finding)))
  return {
    findings: rest.filter((finding) => !same.includes(finding)).map((finding) => differingFinding(finding, told, teller)),
    fits: [],
    assumed: '',
    same: same.map((finding) => `${finding.title} (${verdictWord(finding)})`).join(', '),
    fitting: fitting.map((finding) => finding.title).join(', '),
  }
}

/** Its assumptions stand with the build told before; its caution only where the check did not fit there. */
function differingFinding(finding: ToldFinding, told: AssembledBuild, teller: Teller): FindingPaper {
  const whole = findingOnPaper(finding, teller)
  const before = told.report.findings.find(({ check }) => check === finding.check)
  if (before === undefined) return whole
  return { ...whole, assumed: '', caution: fits(before) ? whole.caution : '' }
}

function fitOnPaper(finding: ToldFinding, teller: Teller): FitPaper {
  const value = finding.value === undefined ? '' : teller.quantity(finding.value)
  const limit = limitWords(finding.limit, teller)
  return {
    title: finding.title,
    value,
    limit,
    said: value === '' && limit === '' ? firstSentence(teller.phrase(finding.reason)) : '',
    assumed: finding.assumed.length > 0,
  }
}
