import { allInputs } from '../../core/explanation/all-inputs.ts'
import { cordRows } from '../../core/explanation/cord-rows.ts'
import { explainFinding } from '../../core/explanation/explain-finding.ts'
import { INPUT_SOURCES, type InputSource } from '../../core/explanation/explanation.ts'
import { issuedSubject } from '../../core/explanation/issued-subject.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { SOURCE_WORDS, type ToldFinding } from '../../core/sizing/finding.ts'
import type { SizingSubject } from '../../core/sizing/report.ts'
import { limitWords } from './findings-on-paper.ts'
import type { ReckonedPaper } from './paper.ts'
import type { Teller } from './teller.ts'

/** What was worked out stands with the check that it is of: line after line it is one sum. */
const HEADS: Record<Exclude<InputSource, 'reckoned'>, string> = {
  entered: 'Entered with the products',
  answered: 'Answered, or set for this place',
  assumed: 'Assumed: what is usual',
  missing: 'Not stated',
  group: 'Marks of the animals',
}

/** A law of physics is reckoned in the units it is written in; said once, for a reader of others. NIST SP 811 (2008), appendix B. */
const SUMS_IN_SI = 'Sums of heat are in SI units: 1 m² is 10.76 square feet, 1 K is 1.8 °F, 1 L is 0.264 US gallons, 1 kJ is 0.948 Btu.'

/** How the findings of the build told in full came about: what went in, each thing once, then each check with its formula in words and its source. */
export function reckonedOnPaper(build: AssembledBuild, document: RevisionDocument, teller: Teller): ReckonedPaper | null {
  const subject = issuedSubject(document, build)
  const { findings, figures } = build.report
  if (subject === undefined || findings.length === 0) return null
  const inputs = allInputs(findings, subject, figures)
  return {
    went: INPUT_SOURCES.flatMap((from) => {
      if (from === 'reckoned') return []
      const rows = inputs.filter((input) => input.from === from).map(({ name, value }) => ({ name, value: teller.phrase(value) }))
      return rows.length === 0 ? [] : [{ head: HEADS[from], rows }]
    }),
    units: teller.units.system === 'us' ? SUMS_IN_SI : '',
    checks: findings.map((finding) => checkOnPaper(finding, subject, build, teller)),
  }
}

function checkOnPaper(
  finding: ToldFinding,
  subject: SizingSubject,
  build: AssembledBuild,
  teller: Teller,
): ReckonedPaper['checks'][number] {
  const { formula, inputs } = explainFinding(finding, subject, build.report.figures)
  const worked = inputs.filter(({ from }) => from === 'reckoned')
  const others = inputs.filter(({ from }) => from !== 'reckoned')
  const { tag, text } = finding.source
  return {
    title: finding.title,
    value: finding.value === undefined ? '' : teller.quantity(finding.value),
    limit: limitWords(finding.limit, teller),
    formula: [teller.phrase(formula), ...(finding.check === 'cord_length' ? cordWords(subject, teller) : [])].join(' '),
    worked: worked.map(({ name, value }) => ({ name, value: teller.phrase(value) })),
    from: [...new Set(others.map(({ name }) => shortName(name)))].join(', '),
    source: `${capital(SOURCE_WORDS[tag])}. ${text.replace(/\.?$/, '.')}`,
  }
}

/** Every cord in a clause: "Torvane 100 W wants 165 cm and has 197 cm." */
const cordWords = (subject: SizingSubject, teller: Teller): string[] =>
  cordRows(subject).map(
    ({ name, wanted, has }) => `${name}: wants ${wanted ? teller.phrase(wanted) : 'room for a loop'}, has ${teller.phrase(has)}.`,
  )

/** @example shortName('2 × Heater (Torvane 100 W)') // 'heater' */
const shortName = (name: string): string =>
  name
    .replace(/^\d+ × /, '')
    .replace(/ \(.*\)$/, '')
    .toLowerCase()
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
