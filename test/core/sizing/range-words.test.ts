import { expect, it } from 'vitest'
import { sizingReport } from '../../../core/sizing/engine.ts'
import type { Check } from '../../../core/sizing/finding.ts'
import { sayBearsOn, sayRange, sayTurns } from '../../../core/sizing/range-words.ts'
import { withRanges } from '../../../core/sizing/sensitivity.ts'
import { METRIC, US } from '../../../core/units/say.ts'
import { conditions, gear } from './sample-build.ts'

const subject = { gear: gear(), conditions: conditions({ assumed: ['coldestRoomC', 'warmestRoomC', 'otherLoadW'] }) }
const { findings } = withRanges(subject, sizingReport(subject))
const of = (check: Check) => findings.find((finding) => finding.check === check)!

it('tells a range with its unit once, in the reader’s', () => {
  expect(sayRange(of('electrical_load'), METRIC)).toMatch(/^Over all that is assumed: 250 to 1,750 W\.$/)
  expect(sayRange(of('warm_room'), METRIC)).toMatch(/^Over all that is assumed: \d+\.\d to \d+\.\d\s°C\.$/)
  expect(sayRange(of('warm_room'), US)).toMatch(/°F\.$/)
})

it('tells a limit that moves, and nothing where nothing does', () => {
  expect(sayRange(of('heater_holds'), METRIC)).toMatch(/^Over all that is assumed: a limit of \d+ to \d+\sW\./)
  expect(sayRange(of('stand_load'), METRIC)).toBe('')
  expect(sayTurns(of('stand_load'), METRIC)).toEqual([])
})

it('gathers what answers to one question would change', () => {
  expect(sayTurns(of('electrical_load'), METRIC).map((text) => text.replaceAll('\u00a0', ' '))).toEqual([
    'other load on the circuit (1,500 W: does not fit)',
  ])
})

it('says that all together are worse only where no single answer is', () => {
  const one = of('electrical_load')
  expect(sayRange({ ...one, worst: 'does_not_fit' }, METRIC)).not.toContain('worst')
  expect(sayRange({ ...one, worst: 'does_not_fit', turns: [] }, METRIC)).toContain('All at their worst: does not fit.')
})

it('names two of the checks that a question bears on, and counts the rest', () => {
  expect(sayBearsOn({ checks: ['heater_stuck'] })).toBe('Heater stuck on')
  expect(sayBearsOn({ checks: ['heater_stuck', 'warm_room', 'lid'] })).toBe('Heater stuck on, The warmest room and 1 more')
})
