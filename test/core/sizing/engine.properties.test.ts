import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { VERDICTS } from '../../../core/sizing/finding.ts'
import { ConditionsSchema, GearSchema } from '../../../core/sizing/schema.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { anyGear, anyRoom } from './any-subject.ts'
import { one } from './sample-build.ts'

/** Every number anywhere in the report. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (value === null || typeof value !== 'object') return []
  return Object.values(value).flatMap(numbersIn)
}

describe('any build in any room that the validators accept', () => {
  it('is what the validators really accept', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        expect(GearSchema.safeParse(someGear).error?.issues ?? []).toEqual([])
        expect(ConditionsSchema.safeParse(room).error?.issues ?? []).toEqual([])
      }),
      { numRuns: 60 },
    )
  })

  it('gets a report without a NaN, an infinity or a throw, and in words', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        const report = sizingReport({ gear: someGear, conditions: room })
        expect(numbersIn(report).filter((number) => !Number.isFinite(number))).toEqual([])
        for (const finding of report.findings) {
          for (const reader of [METRIC, US]) {
            expect(sayPhrase(finding.reason, reader)).not.toMatch(/NaN|Infinity|undefined|null|\[object/)
            if (finding.action) expect(sayPhrase(finding.action.text, reader)).not.toMatch(/NaN|Infinity|undefined|null|\[object/)
          }
        }
      }),
      { numRuns: 600 },
    )
  })

  it('never calls anything known that is missing something, nor not known without saying what', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        for (const { verdict, missing, check } of sizingReport({ gear: someGear, conditions: room }).findings)
          expect([check, verdict === 'not_known', missing.length > 0]).toEqual([check, verdict === 'not_known', verdict === 'not_known'])
      }),
      { numRuns: 300 },
    )
  })

  it('is the same for the same input, and leaves the input as it was', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        const before = JSON.stringify({ someGear, room })
        const first = JSON.stringify(sizingReport({ gear: someGear, conditions: room }))
        expect(JSON.stringify(sizingReport({ gear: someGear, conditions: room }))).toBe(first)
        expect(JSON.stringify({ someGear, room })).toBe(before)
      }),
      { numRuns: 100 },
    )
  })

  it('puts at most three on page one, none of which fits: all that does not fit before the rest, of each what hurts first', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        const { findings, pageOne } = sizingReport({ gear: someGear, conditions: room })
        expect(pageOne.length).toBeLessThanOrEqual(3)
        const shown = pageOne.map((index) => findings[index])
        expect(shown.every((finding) => finding !== undefined && finding.verdict !== 'fits')).toBe(true)
        const [failing, rest] = [true, false].map((fails) => shown.filter((each) => (each?.verdict === 'does_not_fit') === fails))
        expect(shown).toEqual([...(failing ?? []), ...(rest ?? [])])
        expect(failing).toHaveLength(Math.min(3, findings.filter(({ verdict }) => verdict === 'does_not_fit').length))
        for (const group of [failing, rest]) {
          const ranks = group?.map((finding) => finding?.hurtRank ?? NaN) ?? []
          expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
        }
      }),
      { numRuns: 150 },
    )
  })

  it('tells a margin below zero wherever a limit is broken, and none below where all is well', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        for (const { check, verdict, value, limit, margin } of sizingReport({ gear: someGear, conditions: room }).findings) {
          expect([check, margin !== undefined]).toEqual([check, value !== undefined && limit !== undefined])
          if (margin && verdict === 'does_not_fit') expect([check, margin.value < 0]).toEqual([check, true])
          if (margin && verdict === 'fits') expect([check, margin.value >= 0]).toEqual([check, true])
        }
      }),
      { numRuns: 1500 },
    )
  })

  it('offers only heaters that better the verdict of the check that asks', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        for (const { check, verdict, action } of sizingReport({ gear: someGear, conditions: room }).findings) {
          const want = action?.want
          if (want?.slot !== 'heat' || verdict === 'not_known') continue
          const externalController = someGear.heaters.length > 0 && someGear.heaters.every(({ spec }) => spec.externalController === true)
          for (const powerW of [want.minimum.powerW ?? NaN, want.maximum?.powerW ?? want.minimum.powerW ?? NaN]) {
            const heaters = [one('Torvane', { powerW, externalController }, want.quantity)]
            const after = sizingReport({ gear: { ...someGear, heaters }, conditions: room }).findings.find((found) => found.check === check)
            expect([check, VERDICTS.indexOf(after?.verdict ?? verdict) > VERDICTS.indexOf(verdict)]).toEqual([check, true])
          }
        }
      }),
      { numRuns: 400 },
    )
  })
})
