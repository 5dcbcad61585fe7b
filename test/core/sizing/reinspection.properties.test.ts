import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../../core/sizing/engine.ts'
import { openInputs } from '../../../core/sizing/open-inputs.ts'
import { reinspection } from '../../../core/sizing/reinspection.ts'
import type { SizingSubject } from '../../../core/sizing/report.ts'
import { anyGear, anyRoom } from './any-subject.ts'
import { conditions, gear } from './sample-build.ts'

const byCheck = ({ findings }: ReturnType<typeof findingsOf>) => new Map(findings.map((finding) => [finding.check, finding]))

interface Answered {
  /** "glass thickness at its end 0" */
  says: string
  state: (subject: SizingSubject) => SizingSubject
}

/** Every answer to every open question. */
const answersTo = (subject: SizingSubject): Answered[] =>
  openInputs(subject).flatMap(({ name, ends }) => ends.map(({ state }, end) => ({ says: `${name} at its end ${end}`, state })))

/** Answers two at a time: to neighbouring questions, or two to one, of which the later stands. So many pairs, spread over all. */
function pairsOf(answers: readonly Answered[], most: number): Answered[] {
  const step = Math.max(1, Math.ceil((answers.length - 2) / most))
  return answers.flatMap((first, index) => {
    const second = answers[index + 2]
    if (second === undefined || index % step !== 0) return []
    return [{ says: `${first.says}, ${second.says}`, state: (subject: SizingSubject) => second.state(first.state(subject)) }]
  })
}

/** What is found again after each of the answers, and what is found from nothing. */
function compare(subject: SizingSubject, answers: readonly Answered[] = answersTo(subject)): number {
  const again = reinspection(subject)
  if (!again) return 0
  const before = byCheck(findingsOf(subject))
  let compared = 0
  for (const { says, state } of answers) {
    const changed = state(subject)
    const { usable, ...whole } = findingsOf(changed)
    const moved = again(changed)
    expect([says, moved !== null]).toEqual([says, usable])
    if (!moved) continue
    for (const [check, finding] of byCheck({ usable, ...whole })) {
      compared++
      expect([says, moved.get(check) ?? before.get(check)]).toEqual([says, finding])
    }
  }
  return compared
}

describe('what is found again after an answer', () => {
  it('is, with what did not move, all that the whole report finds: in any build and any room', () => {
    let compared = 0
    fc.assert(
      fc.property(anyGear, anyRoom, (drawnGear, room) => {
        compared += compare({ gear: drawnGear, conditions: room })
      }),
      { numRuns: 25 },
    )
    expect(compared).toBeGreaterThan(0)
  })

  it('is so after two answers at once', () => {
    let compared = 0
    fc.assert(
      fc.property(anyGear, anyRoom, (drawnGear, room) => {
        const subject = { gear: drawnGear, conditions: room }
        compared += compare(subject, pairsOf(answersTo(subject), 6))
      }),
      { numRuns: 15 },
    )
    expect(compared).toBeGreaterThan(0)
  })

  it('is little where little hangs on it: what else runs on the circuit moves the load on it alone', () => {
    const subject: SizingSubject = { gear: gear(), conditions: conditions({ assumed: ['otherLoadW'] }) }
    const busy = { ...subject, conditions: { ...subject.conditions, otherLoadW: 1500, assumed: [] } }
    expect([...(reinspection(subject)?.(busy)?.keys() ?? [])]).toEqual(['electrical_load'])
    expect(compare(subject)).toBeGreaterThan(0)
  })

  it('is nothing where no tank holds water, before or after', () => {
    const subject: SizingSubject = { gear: gear(), conditions: conditions() }
    expect(reinspection({ ...subject, gear: gear({ tank: null }) })).toBeUndefined()
    expect(reinspection(subject)?.({ ...subject, gear: gear({ tank: null }) })).toBeNull()
  })
})
