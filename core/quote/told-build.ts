import type { SizingReport, ToldReport } from '../sizing/report.ts'
import { withRanges } from '../sizing/sensitivity.ts'
import { toldReport } from '../sizing/told-report.ts'
import type { QuoteInputs } from './revision.ts'
import { sizedSubject } from './worked-build.ts'

/**
 * A build's report with its sources and cautions, ranges and questions: what is shown and issued, and too much for every keystroke. Without ranges for an index
 * that no build has.
 *
 * @example toldOf(inputs, 0, workBuild(inputs, 0).report).questions?.length // 3
 */
export function toldOf(inputs: QuoteInputs, index: number, report: SizingReport): ToldReport {
  const subject = sizedSubject(inputs, index)
  return subject === undefined ? toldReport(report) : withRanges(subject, report)
}
