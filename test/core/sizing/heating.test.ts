import { describe, expect, it } from 'vitest'
import { filterPowerW, heaterPowerW, heatingOf, lampHeatW, lightPowerW, unstatedPower, type Heating } from '../../../core/sizing/heating.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { situationOf } from '../../../core/sizing/situation.ts'
import { conditions, gear, one } from './sample-build.ts'

const situation = (changes: Partial<Gear> = {}, room: Partial<Conditions> = {}) => {
  const result = situationOf({ gear: gear(changes), conditions: conditions(room) })
  if (!result.ok) throw new Error(`the sample build was refused: ${result.refusal.code}`)
  return result.value
}
const heating = (changes: Partial<Gear> = {}, room: Partial<Conditions> = {}): Heating => heatingOf(situation(changes, room))

describe('powers', () => {
  /** Common practice, stated: a canister draws 5 to 50 W, a hang-on 2 to 20 W, a sponge's air pump 1 to 8 W, any of them 1 to 50 W. */
  it('of filters are stated, or what is sold of their kind, each of a line counted', () => {
    const filters = (spec: Gear['filters'][number]['spec'], count = 1) =>
      filterPowerW({ gear: gear({ filters: [one('Pellick', spec, count)] }) })
    expect(filters({ type: 'canister', powerW: 20 }, 2)).toEqual({ low: 40, high: 40 })
    expect(filters({ type: 'canister' }, 2)).toEqual({ low: 10, high: 100 })
    expect(filters({ type: 'hang_on' })).toEqual({ low: 2, high: 20 })
    expect(filters({ type: 'sponge' })).toEqual({ low: 1, high: 8 })
    expect(filters({})).toEqual({ low: 1, high: 50 })
  })

  /** Common practice, stated: 10 to 80 W a metre. */
  it('of lights are stated, or go by the length of the tank', () => {
    const lights = (spec: Gear['lights'][number]['spec'], count = 1) =>
      lightPowerW({ gear: gear({ lights: [one('Halden', spec, count)] }) }, 1500)
    expect(lights({ powerW: 30 }, 2)).toEqual({ low: 60, high: 60 })
    expect(lights({}, 2)).toEqual({ low: 30, high: 240 })
  })

  it('of a lamp warm the water by half', () => expect(lampHeatW(situation())).toEqual({ low: 15, high: 15 }))

  /** Common practice, stated: 0.5 to 2 W for each litre of the label. */
  it('of a heater are stated, or what is sold for the volume', () => {
    expect(heaterPowerW(75, 100)).toEqual({ low: 75, high: 75 })
    expect(heaterPowerW(undefined, 100)).toEqual({ low: 50, high: 200 })
  })

  it('that nobody stated are named, each kind once', () => {
    const open = gear({
      filters: [one('A', {}), one('B', {})],
      heaters: [one('C', { powerW: 100 }), one('D', {})],
      lights: [one('E', {})],
    })
    expect(unstatedPower(open, ['filters', 'heaters', 'lights'])).toEqual([
      'power of the filter',
      'power of the heater',
      'power of the light',
    ])
    expect(unstatedPower(open, ['heaters'])).toEqual(['power of the heater'])
    expect(unstatedPower(gear(), ['filters', 'heaters', 'lights'])).toEqual([])
  })
})

describe('what the heater checks ask for', () => {
  it('takes heaters out of their count, with their own power and controller', () => {
    const { heaters, installedW, powerUnstated } = heating({
      heaters: [one('Torvane', { powerW: 100 }, 2), one('Corbelle', { powerW: 50, externalController: true })],
    })
    expect(heaters).toEqual([
      { name: 'Torvane', powerW: { low: 100, high: 100 }, externalController: false },
      { name: 'Torvane', powerW: { low: 100, high: 100 }, externalController: false },
      { name: 'Corbelle', powerW: { low: 50, high: 50 }, externalController: true },
    ])
    expect(installedW).toEqual({ low: 250, high: 250 })
    expect(powerUnstated).toEqual([])
  })

  it('takes a typed count for what it is in the sum, and no more than twenty one by one', () => {
    const many = heating({ heaters: [one('Torvane', { powerW: 100 }, 999)] })
    expect(many.heaters).toHaveLength(20)
    expect(many.installedW).toEqual({ low: 99_900, high: 99_900 })
  })

  it('takes an unstated heater by the outside volume: 48 × 18 × 21 in are 297.33 L', () => {
    const { installedW, powerUnstated } = heating({ heaters: [one('Torvane', {})] })
    expect(installedW.low).toBeCloseTo(148.66, 1)
    expect(installedW.high).toBeCloseTo(594.65, 1)
    expect(powerUnstated).toEqual(['power of the heater'])
  })

  it('adds pump, half of the lamp and what stands in the water: 20 + 15 + 9 W', () => {
    const uv = { kind: 'uv' as const, ...one('clarifier', { powerW: 9 }) }
    expect(heating({ appliances: [uv] }).applianceHeatW).toEqual({ low: 44, high: 44 })
    const unstated = heating({ filters: [one('Pellick', {})], lights: [one('Halden', {})], appliances: [{ ...uv, spec: {} }] })
    expect(unstated.applianceUnstated).toEqual(['power of the filter', 'power of the light', 'power of the UV clarifier'])
    expect(heating({ appliances: [{ kind: 'air_pump', ...one('air', {}) }] }).applianceUnstated).toEqual([])
  })

  it('looks at the coldest room, the middle one and the warmest', () => {
    const { cold, usual, warm, warmAsBuilt, warmUsual, warmOpen } = heating({}, { coldestRoomC: 16, warmestRoomC: 26 })
    const rooms = [cold, usual, warm, warmAsBuilt, warmUsual, warmOpen].map((cases) => cases.map(({ loss }) => loss.roomC))
    expect(rooms).toEqual([[16], [21], [26], [26], [26], [26]])
  })

  it('lays a lid on an open tank for the heater stuck on alone', () => {
    const [lidded, open] = [heating(), heating({ lid: null })]
    expect([lidded.lidLaidOn, open.lidLaidOn]).toEqual([false, true])
    expect(open.warm).toEqual(lidded.warm)
    expect(open.warmOpen).toEqual(lidded.warmOpen)
    // A tight lid lets out a tenth of what an open tank does, and a glass one 9.6154 for 10 W/m²K of the rest.
    const share = (which: 'warmAsBuilt' | 'warm') =>
      (open[which][0]?.loss.vapourWPerPa ?? NaN) / (lidded[which][0]?.loss.vapourWPerPa ?? NaN)
    expect(share('warmAsBuilt')).toBeCloseTo(10, 9)
    expect(share('warm')).toBe(1)
    expect((open.warmAsBuilt[0]?.loss.topWPerK ?? NaN) / (lidded.warmAsBuilt[0]?.loss.topWPerK ?? NaN)).toBeCloseTo(10 / 9.6154, 4)
  })

  it('has a case for every tank and every lid that the stated figures allow', () => {
    const open = heating({
      tank: one('Wendlemere', { lengthMm: 1219, widthMm: 457, heightMm: 533, bottomMm: 10, material: 'glass' }),
      lid: one('a lid', { lengthMm: 1210, widthMm: 450 }),
    })
    // Thin and thick glass under mesh, glass and plastic.
    expect(open.cold).toHaveLength(6)
    expect(open.warmOpen).toHaveLength(2)
    expect(open.lidLaidOn).toBe(false)
  })
})
