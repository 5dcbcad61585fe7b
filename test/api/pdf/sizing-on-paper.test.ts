import { describe, expect, it } from 'vitest'
import { sizingOnPaper } from '../../../api/pdf/sizing-on-paper.ts'
import { tellerOf } from '../../../api/pdf/teller.ts'
import type { AssembledBuild } from '../../../core/quote/revision.ts'
import type { ToldFinding } from '../../../core/sizing/finding.ts'
import { makeFinding } from '../../../core/sizing/make-finding.ts'
import { toldFinding } from '../../../core/sizing/told-report.ts'
import { phrase, quantity } from '../../../core/units/quantity.ts'
import { METRIC } from '../../../core/units/say.ts'
import { sampleRevision } from '../../support/sample-revision.ts'

const document = sampleRevision({ builds: 1 })
const [build] = document.builds
const teller = { ...tellerOf(document), units: METRIC }

const assumed = ['warmest room temperature']
const found = (check: 'warm_room' | 'stand_load', parts: Partial<ToldFinding>): ToldFinding => ({
  ...toldFinding(makeFinding(check, { verdict: 'fits', reason: phrase`It holds.` })),
  ...parts,
})
const warm = found('warm_room', {
  assumed,
  worst: 'does_not_fit',
  turns: [{ input: 'warmest room temperature', at: phrase`${quantity(33, 'degC', 0)}`, verdict: 'does_not_fit' }],
})

function paperOf(findings: ToldFinding[], told: AssembledBuild | null = null) {
  if (build === undefined) throw new Error('The sample has a build')
  return sizingOnPaper({ ...build, report: { ...build.report, findings } }, told, teller)
}

describe('what fits as assumed, on paper', () => {
  it('is told with the worst that all answers together may make of it, and the answer that does', () => {
    const words = `${warm.title}: All at their worst: does not fit (warmest room temperature 33 °C)`
    expect(paperOf([warm]).assumed.replaceAll('\u00a0', ' ')).toBe(`warmest room temperature; ${words}`)
  })

  it('tells what is assumed once, and no worst where none is worse', () => {
    expect(paperOf([found('warm_room', { assumed }), found('stand_load', { assumed })]).assumed).toBe('warmest room temperature')
    expect(paperOf([found('stand_load', {})]).assumed).toBe('')
  })

  it('leaves what fits ill to its own lines, and a build told after another to that one', () => {
    expect(paperOf([{ ...warm, verdict: 'marginal' }]).assumed).toBe('')
    expect(paperOf([warm], build).assumed).toBe('')
  })
})
