import { withAllFigures } from '../../core/sizing/all-figures.ts'
import { inspectedReport } from '../../core/sizing/engine.ts'
import type { SizingReport, SizingSubject } from '../../core/sizing/report.ts'
import { benchSubject } from './bench-subject.ts'
import { median, type Measurement } from './measurement.ts'

const ROUNDS = 21
const CALLS_A_ROUND = 400

function timePerCall(subject: SizingSubject, work: (subject: SizingSubject) => unknown): number {
  const started = performance.now()
  for (let call = 0; call < CALLS_A_ROUND; call += 1) work(subject)
  return (performance.now() - started) / CALLS_A_ROUND
}

/** All that is issued of one build: the report and every figure of it. */
function fullReport(subject: SizingSubject): SizingReport {
  const { report, inspected } = inspectedReport(subject)
  return withAllFigures(subject, report, inspected)
}

/** A full report for a twelve-slot build against a structured clone of its own input, in turn in one run. */
export default async function sizingReportBench(): Promise<Measurement[]> {
  const subject = benchSubject()
  timePerCall(subject, fullReport)
  timePerCall(subject, structuredClone)
  const values: number[] = []
  const baselines: number[] = []
  for (let round = 0; round < ROUNDS; round += 1) {
    values.push(timePerCall(subject, fullReport))
    baselines.push(timePerCall(subject, structuredClone))
  }
  const value = median(values)
  const baseline = median(baselines)
  return [{ name: 'sizing.report', value, unit: 'ms', baseline, ratio: value / baseline }]
}
