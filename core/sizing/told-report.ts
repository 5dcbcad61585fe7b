import { CHECK_TITLES } from './check-titles.ts'
import { FINDING_CAUTIONS } from './finding-cautions.ts'
import type { Finding, ToldFinding } from './finding.ts'
import type { SizingReport, ToldReport } from './report.ts'
import { SOURCES } from './sources.ts'

const CAUTIONS: ReadonlyMap<string, string> = new Map(Object.entries(FINDING_CAUTIONS))

/** A finding with its title, and the words of its source and caution in place of their names. @example toldFinding(finding).source.tag // 'common_practice' */
export function toldFinding(finding: Finding): ToldFinding {
  const { source, caution, ...rest } = finding
  return {
    ...rest,
    title: CHECK_TITLES[finding.check],
    source: typeof source === 'string' ? SOURCES[source] : source,
    ...(caution === undefined ? {} : { caution: CAUTIONS.get(caution) ?? caution }),
  }
}

/** A report with its titles and the words of its sources and cautions: what is read while nobody has asked for ranges. @example toldReport(sizingReport(subject)) */
export const toldReport = (report: SizingReport): ToldReport => ({ ...report, findings: report.findings.map(toldFinding) })
