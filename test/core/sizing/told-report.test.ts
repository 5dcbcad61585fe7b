import { expect, it } from 'vitest'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { FINDING_CAUTIONS } from '../../../core/sizing/finding-cautions.ts'
import { toldFinding, toldReport } from '../../../core/sizing/told-report.ts'
import { conditions, gear } from './sample-build.ts'

const bare = sizingReport({ gear: gear(), conditions: conditions() })

it('tells every finding what it rests on and its caution in words, and changes nothing else', () => {
  const told = toldReport(bare)
  expect({ ...told, findings: [] }).toEqual({ ...bare, findings: [] })
  for (const [index, finding] of bare.findings.entries()) {
    const { source, caution, ...rest } = told.findings[index]!
    expect({ ...rest, source: finding.source, ...(finding.caution === undefined ? {} : { caution: finding.caution }) }).toEqual(finding)
    expect(source.text).toMatch(/^[A-Z]\D/)
    expect(caution).toBe(
      finding.caution === undefined ? undefined : Object.entries(FINDING_CAUTIONS).find(([name]) => name === finding.caution)?.[1],
    )
  }
})

it('leaves what is told already as it is', () => {
  const told = toldReport(bare)
  expect(told.findings.map(toldFinding)).toEqual(told.findings)
})
