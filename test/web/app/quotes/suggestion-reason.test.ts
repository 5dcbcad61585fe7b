import { describe, expect, it } from 'vitest'
import type { AssembledBuild } from '../../../../core/quote/revision.ts'
import { emptyNeed } from '../../../../core/quote/empty-draft.ts'
import { METRIC } from '../../../../core/units/say.ts'
import { titleOf } from '../../../../web/app/quotes/quote-title.ts'
import { reasonFor } from '../../../../web/app/quotes/suggestion-reason.ts'
import { sampleRevision } from '../../../support/sample-revision.ts'

const [sample] = sampleRevision().builds
if (!sample) throw new Error('the sample has a build')

function build(id: string, totalMinor: number | null, lengthMm: number, failing = 0): AssembledBuild {
  const finding = sample!.report.findings[0]!
  const findings = Array.from({ length: failing }, () => ({ ...finding, verdict: 'does_not_fit' as const }))
  const today =
    totalMinor === null ? { complete: false as const, missing: [] } : { ...sample!.cost.today, complete: true as const, totalMinor }
  return {
    ...sample!,
    id,
    report: { ...sample!.report, findings },
    cost: { ...sample!.cost, today: today as AssembledBuild['cost']['today'] },
    drawing: sample!.drawing && { ...sample!.drawing, lengthMm },
  }
}

describe('a first reason for a suggestion', () => {
  const builds = [build('a', 100_000, 900), build('b', 80_000, 900), build('c', 120_000, 1200, 1)]

  it('says what the figures say for it and nothing else', () => {
    expect(reasonFor(builds, 'b', 90_000)).toBe('It costs least today, is within the budget, and no part of it fails a check.')
    expect(reasonFor(builds, 'a', 90_000)).toBe('No part of it fails a check.')
  })

  it('never calls a build sound that fails a check, and never the cheapest where a total is missing or there is one alone', () => {
    expect(reasonFor(builds, 'c', 90_000)).toBe('It has the longest tank.')
    expect(reasonFor([build('a', null, 900), build('b', 80_000, 900)], 'a', null)).toBe('No part of it fails a check.')
    expect(reasonFor([build('a', 80_000, 900)], 'a', null)).toBe('No part of it fails a check.')
    expect(reasonFor(builds, 'gone', null)).toBe('')
  })
})

it('says that the floor asks for an engineer, and then calls nothing sound', () => {
  const [cheap, other] = [build('a', 80_000, 900, 1), build('b', 90_000, 900)]
  const floor = { ...cheap.report.findings[0]!, check: 'floor_load' as const, verdict: 'marginal' as const }
  const on = (wording: NonNullable<typeof floor.wording>) => ({ ...cheap, report: { ...cheap.report, findings: [{ ...floor, wording }] } })
  for (const wording of ['ask before you place it', 'do not place it before an engineer has looked'] as const) {
    expect(reasonFor([on(wording), other], 'a', null)).toBe('It costs least today. Its floor asks for an engineer first.')
    expect(reasonFor([on(wording)], 'a', null)).toBe('Its floor asks for an engineer first.')
  }
  expect(reasonFor([on('within the usual allowance'), other], 'a', null)).toBe('It costs least today, and no part of it fails a check.')
})

describe('a title that nobody wrote', () => {
  it('says the size and the place that were asked for', () => {
    expect(titleOf({ ...emptyNeed(), lengthMm: 900, place: 'hall' }, METRIC)).toBe('A tank about 90 cm long, hall')
    expect(titleOf({ ...emptyNeed(), commonSizeId: 'us-20-long' }, METRIC)).toBe('A tank, 20 long')
    expect(titleOf(emptyNeed(), METRIC)).toBe('A tank')
  })
})
