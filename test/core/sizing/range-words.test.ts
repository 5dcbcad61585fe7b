import { expect, it } from 'vitest'
import { sizingReport } from '../../../core/sizing/engine.ts'
import type { Check, Finding } from '../../../core/sizing/finding.ts'
import { makeFinding, type FindingParts } from '../../../core/sizing/make-finding.ts'
import { sayBearsOn, sayRange, sayTurns, sayWorst } from '../../../core/sizing/range-words.ts'
import { withRanges } from '../../../core/sizing/sensitivity.ts'
import { quantity } from '../../../core/units/quantity.ts'
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

/** A finding with what ranges it has, and nothing else. */
const lid = (more: Partial<FindingParts>): Finding =>
  makeFinding('lid', { verdict: 'fits', reason: ['It closes.'], source: { tag: 'own', text: 'Tarnwick.' }, ...more })
const watts = (low: number, high: number) => ({ low: quantity(low, 'W', 0), high: quantity(high, 'W', 0) })

it('tells value, limit and the worst of all in one sentence or two', () => {
  const [range, limitRange] = [watts(5, 10), watts(-3, 4)]
  expect(sayRange(lid({}), METRIC)).toBe('')
  expect(sayRange(lid({ range }), METRIC)).toBe('Over all that is assumed: 5 to 10 W.')
  expect(sayRange(lid({ limitRange }), METRIC)).toBe('Over all that is assumed: a limit of \u22123 to 4 W.')
  expect(sayRange(lid({ range, limitRange, worst: 'marginal' }), METRIC)).toBe(
    'Over all that is assumed: 5 to 10 W, against a limit of \u22123 to 4 W. All at their worst: marginal.',
  )
  expect(sayRange(lid({ worst: 'does_not_fit' }), METRIC)).toBe('All at their worst: does not fit.')
  const turn = { input: 'cold', at: ['12 °C'], verdict: 'marginal' as const }
  expect(sayRange(lid({ worst: 'does_not_fit', turns: [turn] }), METRIC)).toBe('All at their worst: does not fit.')
  expect(sayRange(lid({ worst: 'marginal', turns: [turn] }), METRIC)).toBe('')
})

it('tells a unit twice where its ends have two, and none where there is none', () => {
  const lengths = { low: quantity(50, 'mm', 0), high: quantity(200, 'mm', 0) }
  expect(sayRange(lid({ range: lengths }), METRIC)).toBe('Over all that is assumed: 50 mm to 20 cm.')
  const counts = { low: quantity(1234, 'count', 0), high: quantity(5678, 'count', 0) }
  expect(sayRange(lid({ range: counts }), METRIC)).toBe('Over all that is assumed: 1,234 to 5,678.')
  const shares = { low: quantity(5, 'percent', 0), high: quantity(12.5, 'percent', 1) }
  expect(sayRange(lid({ range: shares }), METRIC)).toBe('Over all that is assumed: 5 to 12.5 %.')
})

it('puts answers to one question together, in the floor’s words where it has its own', () => {
  const turns = [
    { input: 'cold', at: [quantity(12, 'degC', 0)], verdict: 'does_not_fit' as const },
    { input: 'floor', at: ['wood'], verdict: 'not_known' as const, wording: 'ask before you place it' as const },
    { input: 'cold', at: [quantity(15, 'degC', 0)], verdict: 'marginal' as const },
  ]
  expect(sayTurns(lid({ turns }), METRIC)).toEqual(['cold (12 °C: does not fit; 15 °C: marginal)', 'floor (wood: ask before you place it)'])
  expect(sayTurns(lid({}), METRIC)).toEqual([])
})

it('names two checks whole, and counts from the third on', () => {
  expect(sayBearsOn({ checks: ['heater_stuck', 'warm_room'] })).toBe('Heater stuck on, The warmest room')
  expect(sayBearsOn({ checks: ['lid', 'warm_room', 'tipping', 'outlets'] })).toBe('Lid, The warmest room and 2 more')
})

it('tells the worst that comes of what is assumed in one line, with the answer that turns it alone', () => {
  expect(sayWorst(lid({}), METRIC)).toBe('')
  expect(sayWorst(lid({ worst: 'does_not_fit', turns: [] }), METRIC)).toBe('All at their worst: does not fit')
  const alone = { input: 'warmest room', at: ['33 °C'], verdict: 'does_not_fit' as const }
  expect(sayWorst(lid({ worst: 'does_not_fit', turns: [alone] }), METRIC)).toBe('All at their worst: does not fit (warmest room 33 °C)')
})
