import { describe, expect, it } from 'vitest'
import type { FilterSpec } from '../../../core/catalog/spec.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import type { Check } from '../../../core/sizing/finding.ts'
import { flowInputs } from '../../../core/sizing/flow-inputs.ts'
import { isNarrow } from '../../../core/sizing/narrow.ts'
import { openInputs } from '../../../core/sizing/open-inputs.ts'
import type { SizingSubject } from '../../../core/sizing/report.ts'
import { withRanges } from '../../../core/sizing/sensitivity.ts'
import { quantity } from '../../../core/units/quantity.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { conditions, findingOf, gear, one } from './sample-build.ts'

const CURVED: FilterSpec = { type: 'canister', ratedFlowLph: 1400, maxHeadM: 1.9, hoseMm: 16, powerW: 20, cordMm: 1500, mediaVolumeL: 9 }
const withFilter = (spec: FilterSpec, room = {}): SizingSubject => ({
  gear: gear({ filters: [one('Pellick', spec)] }),
  conditions: conditions({ altitudeM: 0, ...room }),
})
const told = (spec: FilterSpec) =>
  flowInputs(withFilter(spec).gear).map(({ name, ends }) => [
    name,
    ...ends.map(({ says }) => sayPhrase(says, METRIC).replaceAll('\u00a0', ' ')),
  ])
const turnsOf = (subject: SizingSubject, check: Check): string[] =>
  withRanges(subject, sizingReport(subject))
    .findings.find((finding) => finding.check === check)!
    .turns!.map(({ input, verdict }) => `${input}: ${verdict}`)

describe('what is not stated of a filter’s flow', () => {
  it('is what its media leave, 0.5 to 0.7 of what is printed, until somebody measures it', () => {
    const plain = { type: 'internal', ratedFlowLph: 1000, powerW: 9, cordMm: 1500, mediaVolumeL: 0.5 } as const
    expect(told(plain)).toEqual([['flow that media leave', '500 L/h', '700 L/h']])
    expect(told({ ...plain, measuredFlowLph: 640 })).toEqual([])
  })

  it('is curve, hoses and fittings of a canister that is held against its hoses', () => {
    // Twice the way from the floor to the rim of a tank 533 mm high on its stand of 760 mm, times 0.7 and 1.2: 1811 and 3104 mm.
    expect(told(CURVED)).toEqual([
      ['form of the pump’s curve', 'a straight line', 'a parabola'],
      ['length of the hoses', '181.1 cm', '310.4 cm'],
      ['fittings in the hoses', 'few', 'usual', 'many'],
    ])
    expect(told({ ...CURVED, midHeadM: 1.2, midFlowLph: 700, hoseLengthMm: 3000, fittings: 'usual' })).toEqual([])
    expect(told({ ...CURVED, measuredFlowLph: 800 })).toEqual([])
  })

  it('is the pipe up from the sump where a return pump has it', () => {
    const questions = flowInputs(withFilter({ ...CURVED, type: 'return_pump' }).gear).map(({ question }) => question)
    expect(questions).toContain('How long is the pipe from the return pump to the tank (Hoses, length)?')
    expect(questions.join()).not.toContain('both hoses')
  })

  it('are the litres of its media, by its kind and flow', () =>
    expect(told({ ...CURVED, measuredFlowLph: 800, mediaVolumeL: undefined })).toEqual([['volume of the media', '4.2 L', '11 L']]))

  it('is asked for where the verdict hangs on it, by the field of the form', () => {
    // 4 times 238 L an hour are 951 L/h: 0.5 of 1600 is too little and 0.7 is enough.
    const subject = withFilter({ type: 'canister', ratedFlowLph: 1600, powerW: 20, cordMm: 1500, mediaVolumeL: 9 })
    expect(turnsOf(subject, 'filter_flow')).toEqual(['flow that media leave: does_not_fit', 'flow that media leave: fits'])
    const asked = withRanges(subject, sizingReport(subject)).questions ?? []
    expect(asked.map(({ text }) => text)).toContain('What flow comes out of the filter’s return, measured with a bucket (Flow, measured)?')
  })

  it('goes by the bucket once it was measured', () => {
    const measured = findingOf('filter_flow', { filters: [one('Pellick', { ...CURVED, measuredFlowLph: 1188.5 })] })
    expect(measured).toMatchObject({ verdict: 'fits', value: { value: 5 } })
    expect(measured.assumed).toEqual([])
  })
})

describe('what is not stated of the place', () => {
  it('is its height above the sea, where the stock eats nearly what the surface carries', () => {
    const { altitudeM: _at, ...bySea } = conditions()
    const eating = (feedGramsPerDay: number) => ({
      gear: gear(),
      conditions: { ...bySea, livestock: { ...bySea.livestock, feedGramsPerDay } },
    })
    const low = findingOf('surface_oxygen').value!.value
    expect(turnsOf(eating(low), 'surface_oxygen')).toContain('height above the sea: marginal')
    expect(turnsOf(eating(low / 3), 'surface_oxygen')).not.toContain('height above the sea: marginal')
  })

  it('is how the tank lies on joists that somebody measured, and whether people sleep there', () => {
    const subject = { gear: gear(), conditions: conditions({ joistSpanMm: 3658, joistSpacingMm: 406 }) }
    const joists = openInputs(subject).filter(({ name }) => findingOf('floor_load', {}, subject.conditions).assumed.includes(name))
    expect(joists.map(({ name, place }) => [name, place])).toEqual([
      ['how the tank lies on the joists', { at: 'need', field: 'joistLie' }],
      ['use of the room', { at: 'need', field: 'floorUse' }],
    ])
    // Against the wall that carries the joists a living room's floor takes it; somewhere along them a bedroom's does not.
    const stated = joists.map(({ ends }) => ends.map(({ state }) => findingOf('floor_load', {}, state(subject).conditions).value?.value))
    expect(stated[0]![0]).toBeLessThan(stated[0]![2]!)
    expect(stated[1]![1]).toBeLessThan(stated[1]![0]!)
  })
})

describe('a range', () => {
  it('is told as one figure where it is one step of its last digit and hardly a share', () => {
    expect(isNarrow(quantity(10.8, 'mg/L', 1), quantity(10.9, 'mg/L', 1))).toBe(true)
    expect(isNarrow(quantity(10.8, 'mg/L', 1), quantity(11, 'mg/L', 1))).toBe(false)
    // One of 50 is just a fiftieth, one of 51 less.
    expect([isNarrow(quantity(49, 'L', 0), quantity(50, 'L', 0)), isNarrow(quantity(50, 'L', 0), quantity(51, 'L', 0))]).toEqual([
      false,
      true,
    ])
    expect(isNarrow(quantity(5, 'count', 0), quantity(6, 'count', 0))).toBe(false)
    expect(isNarrow(quantity(0.2, 'g', 1), quantity(0.3, 'g', 1))).toBe(false)
  })
})

describe('each answer about a canister', () => {
  const canister = { type: 'canister' as const, ratedFlowLph: 1500, maxHeadM: 2, hoseMm: 16 }
  const subject = { gear: gear({ filters: [one('Pellick', canister)] }), conditions: conditions() }
  const inputs = flowInputs(subject.gear)
  const stated = (name: string) =>
    inputs.find((input) => input.name === name)?.ends.map(({ state }) => state(subject).gear.filters[0]?.spec) ?? []

  it('settles its question', () => {
    expect(inputs.length).toBeGreaterThan(3)
    for (const { name, ends } of inputs)
      for (const { state } of ends) expect(flowInputs(state(subject).gear).map((input) => input.name)).not.toContain(name)
  })

  // Half of the flow against half of the head on a straight line, and against three quarters of it on a parabola.
  it('states what it says', () => {
    expect(stated('form of the pump’s curve')).toMatchObject([
      { midFlowLph: 750, midHeadM: 1 },
      { midFlowLph: 750, midHeadM: 1.5 },
    ])
    expect(stated('fittings in the hoses')).toMatchObject([{ fittings: 'few' }, { fittings: 'usual' }, { fittings: 'many' }])
  })
})
