import { describe, expect, it } from 'vitest'
import type { LightSpec, TankSpec } from '../../../core/catalog/spec.ts'
import type { ConditionField, Conditions } from '../../../core/sizing/conditions.ts'
import type { Appliance, Gear } from '../../../core/sizing/gear.ts'
import type { OpenInput } from '../../../core/sizing/open-input.ts'
import { openInputs } from '../../../core/sizing/open-inputs.ts'
import type { SizingSubject } from '../../../core/sizing/report.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { conditions, gear, one } from './sample-build.ts'

/** A filter of which somebody measured the flow, in a place by the sea: nothing of either is open. */
const measured = [
  one('Pellick canister', {
    type: 'canister' as const,
    ratedFlowLph: 2000,
    measuredFlowLph: 1200,
    powerW: 20,
    mediaVolumeL: 9,
    cordMm: 1500,
  }),
]
const inputs = (gearChanges: Partial<Gear> = {}, room: Partial<Conditions> = {}) => openInputs(subjectOf(gearChanges, room))
const says = ({ ends }: OpenInput): string[] => ends.map((end) => sayPhrase(end.says, METRIC))
const told = (found: OpenInput[]) => found.map((input) => [input.name, ...says(input)])
/** The same subject with every end of an input stated in turn. */
const statedBy = (input: OpenInput | undefined, subject: SizingSubject): SizingSubject[] =>
  (input?.ends ?? []).map((end) => end.state(subject))
const subjectOf = (gearChanges: Partial<Gear> = {}, room: Partial<Conditions> = {}): SizingSubject => ({
  gear: gear({ filters: measured, ...gearChanges }),
  conditions: conditions({ altitudeM: 0, ...room }),
})

describe('the defaults of a room', () => {
  // Common practice: what a default may turn out to be in nearly every home.
  it.each<[ConditionField, string, string[]]>([
    ['coldestRoomC', 'coldest room temperature', ['12 °C', '21 °C']],
    ['warmestRoomC', 'warmest room temperature', ['22 °C', '33 °C']],
    ['waterBelowRimMm', 'water level below the rim', ['10 mm', '80 mm']],
    ['substrateDepthMm', 'substrate depth', ['0 mm', '10 cm']],
    ['otherLoadW', 'other load on the circuit', ['0 W', '1,500 W']],
    ['outletHeightMm', 'height of the outlet', ['15 cm', '120 cm']],
    ['outletDistanceMm', 'distance to the outlet', ['0 mm', '200 cm']],
    ['lightHoursPerDay', 'hours of light a day', ['6 h', '12 h']],
    ['plants', 'kind of plants', ['none', 'of low light', 'of medium light', 'of high light']],
    ['floor', 'kind of floor', ['a slab on the ground', 'wood', 'concrete over a room']],
    ['disinfectant', 'disinfectant in the tap water', ['chlorine', 'chloramine', 'nothing']],
    ['circuitProtected', 'protection of the circuit', ['protected', 'not protected']],
  ])('%s is %s and may be %j', (field, name, ends) => {
    const [input, ...others] = inputs({}, { assumed: [field] })
    expect(others).toEqual([])
    expect(input && [input.name, says(input), input.place]).toEqual([name, ends, { at: 'need', field }])
    expect(input?.question).toMatch(/\?$/)
  })

  it('are answered at each end, and no longer assumed then', () => {
    const subject = subjectOf({ substrates: [] }, { assumed: ['substrateDepthMm', 'floor'] })
    const [depth, floor] = openInputs(subject)
    expect(statedBy(depth, subject).map(({ conditions: room }) => [room.substrateDepthMm, room.assumed])).toEqual([
      [0, ['floor']],
      [100, ['floor']],
    ])
    expect(statedBy(floor, subject).map(({ conditions: room }) => [room.floor, room.assumed])).toEqual([
      ['ground_slab', ['substrateDepthMm']],
      ['timber_upper', ['substrateDepthMm']],
      ['concrete_upper', ['substrateDepthMm']],
    ])
    expect(depth?.ends[0]?.state(subject)).toEqual({
      ...subject,
      conditions: { ...subject.conditions, substrateDepthMm: 0, assumed: ['floor'] },
    })
  })

  it('are a choice of all that settles something', () => {
    const chosen = <Field extends ConditionField>(field: Field) => {
      const subject = subjectOf({}, { assumed: [field] })
      return statedBy(openInputs(subject)[0], subject).map(({ conditions: room }) => room[field])
    }
    expect(chosen('circuitProtected')).toEqual([true, false])
    expect(chosen('plants')).toEqual(['none', 'low', 'medium', 'high'])
    expect(chosen('disinfectant')).toEqual(['chlorine', 'chloramine', 'none'])
  })

  it('keep the room’s two temperatures in order', () => {
    const ends = (room: Partial<Conditions>) => inputs({}, room).map(says)
    expect(ends({ assumed: ['coldestRoomC'], warmestRoomC: 20 })).toEqual([['12 °C', '20 °C']])
    expect(ends({ assumed: ['warmestRoomC'], coldestRoomC: 24 })).toEqual([['24 °C', '33 °C']])
    const subject = subjectOf({}, { assumed: ['coldestRoomC'], warmestRoomC: 20 })
    expect(statedBy(openInputs(subject)[0], subject).map(({ conditions: room }) => room.coldestRoomC)).toEqual([12, 20])
  })

  it('ask nothing of what the place itself has set', () => {
    expect(inputs({}, { assumed: ['circuitVoltageV', 'circuitCurrentA', 'energyPriceMinor'] })).toEqual([])
  })
})

describe('what is not stated of tank, stand and lid', () => {
  const box: TankSpec = { lengthMm: 1000, widthMm: 400, heightMm: 400, glassMm: 10, bottomMm: 10, material: 'glass' }
  const tank = (spec: Partial<TankSpec>) => ({ tank: one('Wendlemere', { ...box, ...spec }) })

  // Common practice: 4 to 8 mm at 400 mm of height, a bottom up to 1.34 of the sides, acrylic up to half as thick again.
  it.each<[Partial<TankSpec>, string[][]]>([
    [{}, []],
    [{ glassMm: undefined }, [['glass thickness', '4 mm', '8 mm']]],
    [{ bottomMm: undefined }, [['bottom thickness', '10 mm', '13 mm']]],
    [{ material: undefined }, [['tank material', 'glass', 'acrylic']]],
    [
      { glassMm: undefined, bottomMm: undefined },
      [
        ['glass thickness', '4 mm', '8 mm'],
        ['bottom thickness', '4 mm', '11 mm'],
      ],
    ],
    [{ glassMm: undefined, material: 'acrylic' }, [['glass thickness', '4 mm', '12 mm']]],
    [{ shape: 'bow_front' }, [['bow of the front', '50 mm', '20 cm']]],
    [{ shape: 'bow_front', bowMm: 90 }, []],
    [{ lengthMm: 600, widthMm: 600, shape: 'corner_cut' }, [['depth of the ends', '90 mm', '36 cm']]],
    [{ lengthMm: 600, widthMm: 600, shape: 'cylinder' }, []],
  ])('%j: %j', (spec, ends) => {
    const found = inputs(tank(spec))
    expect(told(found)).toEqual(ends)
    for (const { place, question } of found) {
      expect(place).toEqual({ at: 'slot', slot: 'hold_water' })
      expect(question).toMatch(/\?$/)
    }
  })

  it('is stated at either end in the tank', () => {
    const at = (spec: Partial<TankSpec>) => {
      const subject = subjectOf(tank(spec))
      return statedBy(openInputs(subject)[0], subject).map(({ gear: { tank: found } }) => found?.spec)
    }
    expect(at({ glassMm: undefined })).toEqual([
      { ...box, glassMm: 4 },
      { ...box, glassMm: 8 },
    ])
    expect(at({ material: undefined })).toEqual([
      { ...box, material: 'glass' },
      { ...box, material: 'acrylic' },
    ])
    expect(at({ bottomMm: undefined }).map((spec) => spec?.bottomMm)).toEqual([10, 13.4])
    expect(at({ shape: 'bow_front' }).map((spec) => spec?.bowMm)).toEqual([50, 200])
    expect(at({ lengthMm: 600, widthMm: 600, shape: 'corner_cut' }).map((spec) => spec?.endMm)).toEqual([90, 360])
  })

  it('of the stand is its mass and its height', () => {
    const bare = { ...tank({}), stand: one('Thornby', { ratedLoadKg: 300 }) }
    // 8 + 8 and 20 + 50 kg under a metre of tank; 600 to 950 mm: common practice.
    expect(told(inputs(bare))).toEqual([
      ['mass of the stand', '16 kg', '70 kg'],
      ['height of the stand', '60 cm', '95 cm'],
      ['how the stand meets the floor', 'all over', 'end panels', 'feet'],
    ])
    const subject = subjectOf(bare)
    const [mass, height] = openInputs(subject)
    expect(mass?.place).toEqual({ at: 'slot', slot: 'carry_tank' })
    expect(statedBy(mass, subject).map((each) => each.gear.stand?.spec)).toEqual([
      { ratedLoadKg: 300, massKg: 16 },
      { ratedLoadKg: 300, massKg: 70 },
    ])
    expect(statedBy(height, subject).map((each) => each.gear.stand?.spec.heightMm)).toEqual([600, 950])
    expect(told(inputs({ ...bare, stand: one('Thornby', { massKg: 20, base: 'feet' }) }))).toEqual([
      ['height of the stand', '60 cm', '95 cm'],
    ])
    expect(told(inputs({ ...bare, stand: one('Thornby', { heightMm: 700, base: 'full' }) }))).toEqual([
      ['mass of the stand', '16 kg', '70 kg'],
    ])
    expect(inputs({ ...bare, stand: null })).toEqual([])
    expect(inputs({ tank: null, stand: one('Thornby', {}) })).toEqual([])
  })

  it('of the lid is what it is made of', () => {
    const subject = subjectOf({ lid: one('a lid', { lengthMm: 1000 }) })
    const [cover] = openInputs(subject)
    expect(cover && [cover.name, ...says(cover), cover.place]).toEqual([
      'what the lid is made of',
      'glass',
      'plastic',
      'a mesh',
      { at: 'slot', slot: 'cover' },
    ])
    expect(statedBy(cover, subject).map((each) => each.gear.lid?.spec)).toEqual(
      ['glass', 'plastic', 'mesh'].map((each) => ({ lengthMm: 1000, cover: each })),
    )
    expect(inputs({ lid: null })).toEqual([])
  })
})

describe('what is not stated of things plugged in', () => {
  const cord = { cordMm: 3000 }

  it('of heaters is their power, by the tank’s litres outside, those that state it left alone', () => {
    // 297.3 L at 0.5 to 2 W.
    const heaters = [one('Torvane', { powerW: 100, ...cord }), one('Torvane old', cord, 2), one('Torvane spare', cord)]
    const subject = subjectOf({ heaters })
    const [power, ...others] = openInputs(subject)
    expect(others).toEqual([])
    expect(power && [power.name, ...says(power), power.place]).toEqual([
      'power of the heater',
      '149 W',
      '595 W',
      { at: 'slot', slot: 'heat' },
    ])
    const watts = statedBy(power, subject).map((each) => each.gear.heaters.map(({ spec }) => Math.round(spec.powerW ?? 0)))
    expect(watts).toEqual([
      [100, 149, 149],
      [100, 595, 595],
    ])
  })

  it('of filters is their power by their kind', () => {
    const filter = (type?: 'canister' | 'hang_on') =>
      inputs({ filters: [one('Pellick', { type, ratedFlowLph: 900, measuredFlowLph: 500, mediaVolumeL: 3, ...cord })] })
    expect(told(filter('canister'))).toEqual([['power of the filter', '5 W', '50 W']])
    expect(told(filter('hang_on'))).toEqual([['power of the filter', '2 W', '20 W']])
    expect(told(filter())).toEqual([['power of the filter', '1 W', '50 W']])
    expect(filter()[0]?.place).toEqual({ at: 'slot', slot: 'filter' })
    const subject = subjectOf({ filters: [one('Pellick', { type: 'canister', ...cord }), one('Pellick', { type: 'sponge', ...cord })] })
    expect(statedBy(openInputs(subject)[0], subject).map((each) => each.gear.filters.map(({ spec }) => spec.powerW))).toEqual([
      [5, 1],
      [50, 8],
    ])
  })

  it('of lights is their power by the tank’s length, and their lumens by their power', () => {
    const light = (spec: LightSpec) => told(inputs({ lights: [one('Halden', { ...cord, ...spec })] }))
    // 10 to 80 W a metre of 1.2192 m; 60 to 140 lm/W.
    expect(light({ luminousFluxLm: 3000 })).toEqual([['power of the light', '12 W', '98 W']])
    expect(light({ powerW: 30 })).toEqual([['lumens or photon flux of the light', '1,800 lm', '4,200 lm']])
    expect(light({ powerW: 30, photonFluxUmolS: 40 })).toEqual([])
    expect(light({})).toEqual([
      ['power of the light', '12 W', '98 W'],
      ['lumens or photon flux of the light', '732 lm', '13,655 lm'],
    ])
    const subject = subjectOf({ lights: [one('A', { powerW: 30, luminousFluxLm: 900, ...cord }), one('B', { powerW: 30, ...cord })] })
    const [lumens] = openInputs(subject)
    expect(lumens?.place).toEqual({ at: 'slot', slot: 'light' })
    expect(statedBy(lumens, subject).map((each) => each.gear.lights.map(({ spec }) => spec.luminousFluxLm))).toEqual([
      [900, 1800],
      [900, 4200],
    ])
  })

  it('of other things is their power, by kind and for each kind together', () => {
    const thing = (kind: Appliance['kind'], spec: Appliance['spec']): Appliance => ({ kind, ...one('Corbelle', spec) })
    const subject = subjectOf({
      appliances: [thing('skimmer', cord), thing('air_pump', cord), thing('skimmer', { powerW: 9, ...cord }), thing('skimmer', cord)],
    })
    const found = openInputs(subject)
    expect(told(found)).toEqual([
      ['power of the skimmer', '4 W', '60 W'],
      ['power of the air pump', '1 W', '15 W'],
    ])
    expect(found.map(({ place }) => place)).toEqual([
      { at: 'slot', slot: 'skim' },
      { at: 'slot', slot: 'aerate' },
    ])
    expect(statedBy(found[0], subject).map((each) => each.gear.appliances?.map(({ spec }) => spec.powerW))).toEqual([
      [4, undefined, 9, 4],
      [60, undefined, 9, 60],
    ])
  })

  it('is a cord of each thing that states none', () => {
    const subject = subjectOf({
      heaters: [one('Torvane', { powerW: 100 }), one('Torvane old', { powerW: 50, ...cord })],
      filters: [one('Pellick', { powerW: 20, mediaVolumeL: 3 })],
      lights: [one('Halden', { powerW: 30, luminousFluxLm: 3000 })],
      appliances: [{ kind: 'co2', ...one('Bog gas', { powerW: 3 }) }],
    })
    const found = openInputs(subject)
    // Common practice: cords as sold.
    expect(told(found)).toEqual([
      ['cord of Torvane', '100 cm', '200 cm'],
      ['cord of Pellick', '120 cm', '200 cm'],
      ['cord of Halden', '120 cm', '300 cm'],
      ['cord of Bog gas', '120 cm', '250 cm'],
    ])
    expect(found.map(({ place }) => place)).toEqual(['heat', 'filter', 'light', 'feed_co2'].map((slot) => ({ at: 'slot', slot })))
    expect(statedBy(found[0], subject).map((each) => each.gear.heaters.map(({ spec }) => spec.cordMm))).toEqual([
      [1000, 3000],
      [2000, 3000],
    ])
    expect(statedBy(found[3], subject).map((each) => each.gear.appliances?.[0]?.spec.cordMm)).toEqual([1200, 2500])
  })

  it('is no power without a tank to judge it by', () => {
    expect(inputs({ tank: null, stand: null, heaters: [one('Torvane', cord)], filters: [one('Pellick', cord)] })).toEqual([])
  })
})

describe('what is not stated of tests', () => {
  it('is the lowest step of one that measures ammonia', () => {
    const subject = subjectOf({
      testKits: [one('A', { measuresAmmonia: true, lowestAmmoniaMgL: 0.25 }), one('B', { measuresAmmonia: true })],
    })
    const [step] = openInputs(subject)
    expect(step && [step.name, ...says(step), step.place]).toEqual([
      'lowest step of the ammonia test',
      '0.05 mg/L',
      '0.50 mg/L',
      { at: 'slot', slot: 'test_water' },
    ])
    expect(statedBy(step, subject).map((each) => each.gear.testKits.map(({ spec }) => spec.lowestAmmoniaMgL))).toEqual([
      [0.25, 0.05],
      [0.25, 0.5],
    ])
    expect(inputs({ testKits: [one('A', { measuresAmmonia: false })] })).toEqual([])
    expect(inputs({ testKits: [one('A', {})] })).toEqual([])
  })
})
