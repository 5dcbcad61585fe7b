import { describe, expect, it } from 'vitest'
import { ConditionsSchema, GearSchema, LivestockGroupSchema, NeedExactSchema, SizingBody } from '../../../core/sizing/schema.ts'
import { conditions, group, one } from './sample-build.ts'

const tank = { name: 'Halden 90', quantity: 1, spec: { lengthMm: 900, widthMm: 450, heightMm: 450 } }
const faults = (body: unknown) => {
  const read = SizingBody.safeParse(body)
  return read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`)
}

describe('a build and a room to size', () => {
  it('may say as little as a tank and what lives in it', () => {
    expect(SizingBody.parse({ gear: { tank }, livestockId: 'small-tropical' })).toEqual({
      gear: {
        tank,
        stand: null,
        mat: null,
        lid: null,
        filters: [],
        heaters: [],
        lights: [],
        substrates: [],
        conditioners: [],
        testKits: [],
        power: [],
        notNeeded: {},
      },
      conditions: {},
      livestockId: 'small-tropical',
    })
  })

  it.each([
    [
      { gear: { tank: { ...tank, spec: { ...tank.spec, heightMm: 5 } } }, livestockId: 'x' },
      'gear.tank.spec.heightMm: Height is 5 mm. For a tank it is between 100 and 2000 mm. Was it in inches?',
    ],
    [{ gear: { tank: { ...tank, quantity: 0 } }, livestockId: 'x' }, 'gear.tank.quantity: Quantity is 0. At least 1.'],
    [
      { gear: { tank, heaters: [{ name: '', quantity: 1, spec: { powerW: 40_000 } }] }, livestockId: 'x' },
      'gear.heaters.0.spec.powerW: Power is 40000 W. For a heater it is between 5 and 1000 W. Check the figure and its unit.',
    ],
    [{ gear: { tank, pumps: [] }, livestockId: 'x' }, 'gear: Gear has no field "pumps". Check the spelling, or leave it out.'],
    [
      { gear: { tank, lights: Array.from({ length: 13 }, () => ({ name: '', quantity: 1, spec: {} })) }, livestockId: 'x' },
      'gear.lights: Lights: 13 of them. At most 12: write those that are alike as one with its quantity.',
    ],
    [{ gear: { tank } }, 'livestockId: Livestock group is missing.'],
    [{ livestockId: 'x' }, 'gear: Gear is missing.'],
    [
      { gear: { tank }, livestockId: 'x', conditions: { warmestRoomC: 86 } },
      'conditions.warmestRoomC: Warmest the room gets is 86 °C. For a room and its water it is between 5 and 45 °C. Was it in °F?',
    ],
    [
      { gear: { tank }, livestockId: 'x', conditions: { floor: 'lava' } },
      'conditions.floor: Floor is one of: ground_slab, timber_upper, concrete_upper, unknown.',
    ],
  ])('is refused in words that name field, limit and fix: case %#', (body, message) => {
    expect(faults(body)).toEqual([message])
  })
})

const faultsOf = (
  schema: { safeParse: (value: unknown) => { success: boolean; error?: { issues: Array<{ path: PropertyKey[]; message: string }> } } },
  value: unknown,
) => (schema.safeParse(value).error?.issues ?? []).map(({ path, message }) => `${path.join('.')}: ${message}`)

describe('two figures of a room in the wrong order', () => {
  it.each([
    [
      { coldestRoomC: 25, warmestRoomC: 20 },
      ['warmestRoomC: The coldest room is warmer than the warmest: 25 °C and 20 °C. Swap them, or correct one.'],
    ],
    [
      { lowestC: 26, targetC: 25 },
      ['targetC: The lowest safe temperature is above the target: 26 °C and 25 °C. Swap them, or correct one.'],
    ],
    [
      { targetC: 30, dangerC: 29 },
      ['dangerC: The danger mark must be above the target temperature: 29 °C and 30 °C. Swap them, or correct one.'],
    ],
    [
      { targetC: 30, dangerC: 30 },
      ['dangerC: The danger mark must be above the target temperature: 30 °C and 30 °C. Swap them, or correct one.'],
    ],
    [{ coldestRoomC: 20, warmestRoomC: 20 }, []],
    [{ lowestC: 25, targetC: 25 }, []],
    [{ targetC: 30, dangerC: 30.1 }, []],
    [{ coldestRoomC: 25 }, []],
    [{ warmestRoomC: 20 }, []],
    [{ dangerC: 30 }, []],
    [{ targetC: 30 }, []],
  ])('%j: %j', (room, messages) => expect(faultsOf(NeedExactSchema, room)).toEqual(messages))
})

describe('a build in a revision', () => {
  const heater = { name: 'Torvane', quantity: 1, spec: { powerW: 100 }, owned: true }
  it('keeps everything that the checks read', () => {
    const gear = {
      tank: { ...tank, owned: false },
      stand: one('Thornby', { ratedLoadKg: 300 }),
      mat: one('mat', { lengthMm: 900 }),
      lid: one('lid', { cover: 'glass' }),
      filters: [one('Pellick', { ratedFlowLph: 900 })],
      heaters: [heater],
      lights: [one('Halden', { powerW: 20 })],
      substrates: [one('Millrace', { packVolumeL: 5 })],
      conditioners: [one('Stillwell', { packVolumeMl: 100 })],
      testKits: [one('Lockridge', { measuresAmmonia: true })],
      power: [one('strip', { outlets: 6 })],
      ammoniaSources: [one('Bog drops', {})],
      thermometers: [one('Bog glass', {})],
      appliances: [
        {
          kind: 'chiller',
          name: 'Halden cold',
          quantity: 1,
          spec: { powerW: 300, coolingW: 500, ratedFlowLph: 900, ratedVolumeL: 400, cordMm: 1500 },
          owned: true,
        },
      ],
      salts: [one('Bog salt', {})],
      animals: [one('Bog fin', { adultLengthMm: 50 })],
      notNeeded: { substrate: 'bare bottom' },
    }
    expect(GearSchema.parse(gear)).toEqual(gear)
  })

  it.each([
    [{ heaters: [{ ...heater, quantity: 1000 }] }, 'heaters.0.quantity: Quantity is 1000. At most 999.'],
    [{ heaters: [{ ...heater, colour: 'red' }] }, 'heaters.0: Item has no field "colour". Check the spelling, or leave it out.'],
    [{ heaters: [{ ...heater, owned: 'yes' }] }, 'heaters.0.owned: Owned is true or false.'],
    [{ heaters: [{ quantity: 1, spec: {} }] }, 'heaters.0.name: Name is missing.'],
    [{ appliances: [{ ...heater, kind: 'fountain' }] }, /^appliances\.0\.kind: Kind of appliance is one of: chiller, /],
    [
      { appliances: [{ ...heater, kind: 'uv', spec: { powerW: 0.4 } }] },
      /^appliances\.0\.spec\.powerW: Power is 0\.4 W\. For an appliance it is between 0\.5 and 3000 W\./,
    ],
    [{ appliances: [{ ...heater, kind: 'uv', spec: { coolingW: 4 } }] }, /between 5 and 10000 W\./],
    [{ appliances: [{ ...heater, kind: 'uv', spec: { ratedFlowLph: 49 } }] }, /between 50 and 50000 L\/h\./],
    [{ appliances: [{ ...heater, kind: 'uv', spec: { ratedVolumeL: 20_001 } }] }, /between 5 and 20000 L\./],
    [{ appliances: [{ ...heater, kind: 'uv', spec: { cordMm: 1 } }] }, /^appliances\.0\.spec\.cordMm: /],
    [
      { appliances: [{ ...heater, kind: 'uv', volume: 3 }] },
      'appliances.0: Appliance has no field "volume". Check the spelling, or leave it out.',
    ],
    [{ notNeeded: 'nothing' }, 'notNeeded: Not needed is an object: slot to reason.'],
    [{ filters: Array.from({ length: 41 }, () => one('Pellick', {})) }, /^filters: .*40/],
    [{ thermometers: Array.from({ length: 41 }, () => one('Bog glass', {})) }, /^thermometers: .*40/],
  ])('is refused: %j', (gear, message) => {
    const [first, ...others] = faultsOf(GearSchema, gear)
    expect(others).toEqual([])
    expect(first).toMatch(message)
    if (typeof message === 'string') expect(first).toBe(message)
  })
})

describe('conditions as resolved', () => {
  const whole = {
    ...conditions({ assumed: ['floor'] }),
    joistSpanMm: 3600,
    joistSpacingMm: 400,
    joistLie: 'across',
    floorUse: 'bedroom',
    waterChangePercent: 25,
    tapC: 12,
    altitudeM: 300,
  }
  it('keep every figure, and may leave out what no default stands for', () => {
    expect(ConditionsSchema.parse(whole)).toEqual(whole)
    expect(ConditionsSchema.parse(conditions())).toEqual(conditions())
  })

  it('miss none of the others', () => {
    const { floor: _floor, lightHoursPerDay: _hours, livestock: _livestock, ...less } = whole
    expect(faultsOf(ConditionsSchema, less).map((fault) => fault.split(':')[0])).toEqual(['floor', 'lightHoursPerDay', 'livestock'])
  })

  it('assume fields of their own alone, and have no field that is not theirs', () => {
    expect(faultsOf(ConditionsSchema, { ...whole, assumed: ['floor', 'tapC'] })).toEqual([
      'assumed.1: Assumed names fields of the conditions.',
    ])
    expect(faultsOf(ConditionsSchema, { ...whole, assumed: ['colour'] })).toEqual(['assumed.0: Assumed names fields of the conditions.'])
    expect(faultsOf(ConditionsSchema, { ...whole, targetC: 25 })).toEqual([
      ': Conditions has no field "targetC". Check the spelling, or leave it out.',
    ])
  })

  it('carry a whole group', () => {
    const own = { ...group('small-tropical'), standing: 'own', flowCeilingPerHour: null }
    expect(LivestockGroupSchema.parse(own)).toEqual(own)
    expect(faultsOf(LivestockGroupSchema, {})).toEqual([
      'id: Id is missing.',
      'name: Name is missing.',
      'examples: Examples is missing.',
      'lowestC: Lowest temperature is a number.',
      'targetC: Target temperature is a number.',
      'highestC: Highest temperature is a number.',
      'dangerC: Danger mark is a number.',
      'flowCeilingPerHour: Flow ceiling is a number.',
      'flowFloorPerHour: Flow floor is a number.',
      'smallestVolumeL: Smallest volume is a number.',
      'feedGramsPerDay: Feed a day is a number.',
      'lidNeeded: Lid needed is missing.',
      'water: Water is missing. It is one of: fresh, salt.',
      'source: Source is missing.',
    ])
    expect(faultsOf(LivestockGroupSchema, { ...own, water: 'brackish', standing: 'lent' })).toEqual([
      'water: Water is one of: fresh, salt.',
      'standing: Standing is one of: edited, own.',
    ])
  })
})
