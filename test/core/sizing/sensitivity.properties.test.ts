import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { signOf } from '../../../core/sizing/count-words.ts'
import { hurtRankOf, isOfHarm } from '../../../core/sizing/hurt-rank.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { VERDICTS, type Check } from '../../../core/sizing/finding.ts'
import { openInputs } from '../../../core/sizing/open-inputs.ts'
import { withRanges } from '../../../core/sizing/sensitivity.ts'
import { anyGear, anyRoom } from './any-subject.ts'

/**
 * Where a finding may turn by something that it does not name. A floor that was answered "wood" with its joists measured is no default any more; and a strip of which
 * nobody said whether it protects is asked about before the circuit that would do as well.
 */
const NAMED_ELSEWHERE = new Set(['floor_load kind of floor', 'outlet_protection protection of the circuit'])

describe('what is assumed, in any build and any room', () => {
  it('is named by every finding that it would turn: nothing is assumed silently', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (gear, conditions) => {
        const subject = { gear, conditions }
        for (const { check, turns = [], assumed, missing } of withRanges(subject, sizingReport(subject)).findings)
          for (const { input } of turns)
            expect([check, input, [...assumed, ...missing].includes(input) || NAMED_ELSEWHERE.has(`${check} ${input}`)]).toEqual([
              check,
              input,
              true,
            ])
      }),
      { numRuns: 60 },
    )
  })

  it('carries a value within its range, whose worst corner is never better than what is told', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (gear, conditions) => {
        const subject = { gear, conditions }
        for (const { check, verdict, worst = verdict, value, range } of withRanges(subject, sizingReport(subject)).findings) {
          expect([check, VERDICTS.indexOf(worst) <= VERDICTS.indexOf(verdict)]).toEqual([check, true])
          if (value && range) expect([check, range.low.value <= value.value && value.value <= range.high.value]).toEqual([check, true])
        }
      }),
      { numRuns: 60 },
    )
  })

  it('has every answer to one question inside the range that is told without it', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, fc.nat(), fc.nat(), (gear, conditions, which, side) => {
        const subject = { gear, conditions }
        const report = sizingReport(subject)
        const inputs = openInputs(subject)
        const ends = inputs[which % inputs.length]?.ends ?? []
        const answered = ends[side % ends.length]?.state(subject) ?? subject
        const made = sizingReport(answered)
        if ((made.figures.waterVolumeL === undefined) !== (report.figures.waterVolumeL === undefined)) return
        for (const { check, value, range } of withRanges(subject, report).findings) {
          const after = made.findings.find((finding) => finding.check === check)?.value
          if (!value || after?.unit !== value.unit) continue
          const { low, high } = range ?? { low: value, high: value }
          expect([check, low.value <= after.value && after.value <= high.value]).toEqual([check, true])
        }
      }),
      { numRuns: 80 },
    )
  })

  it('asks at most three questions, what can hurt first in front, each once', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (gear, conditions) => {
        const subject = { gear, conditions }
        const { questions = [], findings } = withRanges(subject, sizingReport(subject))
        const isOpen = (check: Check) => isOfHarm(check) && findings.some((each) => each.check === check && signOf(each) !== 'fits')
        const ranks = questions.map(({ checks }) => hurtRankOf(checks.find(isOpen) ?? checks[0]!) + (checks.some(isOpen) ? 0 : 100))
        expect(questions.length).toBeLessThanOrEqual(3)
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
        expect(new Set(questions.map(({ text }) => text)).size).toBe(questions.length)
      }),
      { numRuns: 60 },
    )
  })
})
