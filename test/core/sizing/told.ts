import type { Finding } from '../../../core/sizing/finding.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'

/** What a metric reader is told by a finding: its sentences whole, and what it names as assumed and missing. */
export const told = (finding: Finding) => ({
  verdict: finding.verdict,
  reason: sayPhrase(finding.reason, METRIC),
  action: finding.action && sayPhrase(finding.action.text, METRIC),
  assumed: finding.assumed,
  missing: finding.missing,
})

/** The same of a quantity or a limit: the bare figures. */
export const figuresOf = ({ value, limit, margin }: Finding) => ({
  value: value?.value,
  low: limit && 'low' in limit ? limit.low.value : undefined,
  high: limit && 'high' in limit ? limit.high.value : undefined,
  margin: margin?.value,
})
