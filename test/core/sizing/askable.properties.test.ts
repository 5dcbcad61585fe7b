import fc from 'fast-check'
import { expect, it } from 'vitest'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { openInputs } from '../../../core/sizing/open-inputs.ts'
import { openQuestions } from '../../../core/sizing/open-questions.ts'
import { withRanges } from '../../../core/sizing/sensitivity.ts'
import { anyGear, anyRoom } from './any-subject.ts'

// Without a tank there is one question: which it will be. What gear that is not chosen would have to bear is told by what to choose, and asked of nobody.
it('asks for something wherever a verdict of a tank is not known for want of it', () => {
  fc.assert(
    fc.property(anyGear, anyRoom, (gear, conditions) => {
      const subject = { gear, conditions }
      const { findings } = withRanges(subject, sizingReport(subject))
      const mute = findings.filter(
        (finding) =>
          finding.verdict === 'not_known' &&
          subject.gear.tank !== null &&
          !(finding.check === 'stand_load' && subject.gear.stand === null && finding.action?.want?.slot === 'carry_tank') &&
          openQuestions([finding], openInputs(subject), subject).length === 0,
      )
      expect(mute.map(({ check, missing }) => [check, ...missing])).toEqual([])
    }),
    { numRuns: 100 },
  )
})
