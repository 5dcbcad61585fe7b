import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../../core/sizing/engine.ts'
import { openInputs } from '../../../core/sizing/open-inputs.ts'
import { reinspection } from '../../../core/sizing/reinspection.ts'
import type { SizingSubject } from '../../../core/sizing/report.ts'
import { anyGear, anyRoom } from './any-subject.ts'
import { conditions, gear } from './sample-build.ts'

const byCheck = ({ findings }: ReturnType<typeof findingsOf>) => new Map(findings.map((finding) => [finding.check, finding]))

/** Every answer to every open question, found again and found from nothing. */
function compare(subject: SizingSubject): number {
  const again = reinspection(subject)
  if (!again) return 0
  const before = byCheck(findingsOf(subject))
  let compared = 0
  for (const { name, ends } of openInputs(subject))
    for (const [index, { state }] of ends.entries()) {
      const changed = state(subject)
      const { usable, ...whole } = findingsOf(changed)
      const moved = again(changed)
      expect([name, index, moved !== null]).toEqual([name, index, usable])
      if (!moved) continue
      for (const [check, finding] of byCheck({ usable, ...whole })) {
        compared++
        expect([name, index, moved.get(check) ?? before.get(check)]).toEqual([name, index, finding])
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
