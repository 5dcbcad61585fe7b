import { VERDICTS, type Verdict } from './finding.ts'
import type { SizingReport } from './report.ts'

/** So many checks with one verdict, or the floor in its own words. */
export interface VerdictCount {
  verdict: Verdict
  words: string
}

const COUNT_WORDS: Record<Verdict, (count: number) => string> = {
  does_not_fit: (count) => (count === 1 ? '1 does not fit' : `${count} do not fit`),
  not_known: (count) => `${count} not known`,
  marginal: (count) => `${count} marginal`,
  fits: (count) => (count === 1 ? '1 fits' : `${count} fit`),
}

/**
 * How many checks came out how, worst first, for screen and paper alike; a floor within its usual allowance follows in its own words, for it is neither
 * marginal nor an approval.
 *
 * @example sayCounts(report).map(({ words }) => words) // ['2 marginal', '21 fit', 'floor: within the usual allowance']
 */
export function sayCounts({ counts, findings }: Pick<SizingReport, 'counts' | 'findings'>): VerdictCount[] {
  const told = VERDICTS.filter((verdict) => counts[verdict] > 0).map((verdict) => ({
    verdict,
    words: COUNT_WORDS[verdict](counts[verdict]),
  }))
  const floor = findings.filter(({ wording }) => wording === 'within the usual allowance')
  return [...told, ...floor.map(({ verdict, wording }) => ({ verdict, words: `floor: ${wording}` }))]
}
