import type { Finding, Verdict } from './finding.ts'
import type { SizingReport, SizingSubject } from './report.ts'

export function sizingReport(_subject: SizingSubject): SizingReport {
  const findings: Finding[] = []
  const counts: Record<Verdict, number> = { does_not_fit: 0, not_known: 0, marginal: 0, fits: 0 }
  return { findings, counts, pageOne: [], figures: {} }
}
