import { describe, expect, it } from 'vitest'
import { heatingOf, type Heating, type ThermalCase } from '../../../core/sizing/heating.ts'
import { warmRoom } from '../../../core/sizing/warm-room.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { actionOf, reasonOf, roundTank } from './round-tank.ts'
import { conditions, findingOf, group, one } from './sample-build.ts'

const inRoom = (warmestRoomC: number, gear = {}) => findingOf('warm_room', gear, { coldestRoomC: 18, warmestRoomC })

it('condemns a room that is past the danger mark by itself, whatever switches the heaters', () => {
  const controlled = { heaters: [one('Torvane', { powerW: 150, externalController: true })] }
  const found = inRoom(35, controlled)
  expect(found.verdict).toBe('does_not_fit')
  expect(found.margin?.value).toBeLessThan(0)
  expect(sayPhrase(found.action?.text ?? [], METRIC)).toMatch(/fan across the surface.*chiller/)
})

it('fits where the water stays at what the animals are comfortable with', () => {
  const found = inRoom(22)
  expect(found.verdict).toBe('fits')
  expect(found.limit).toMatchObject({ kind: 'at_most', high: { value: group('small-tropical').highestC } })
})

it('is marginal between comfort and danger', () => {
  const verdicts = [22, 24, 26, 28, 30, 32, 34].map((roomC) => inRoom(roomC).verdict)
  expect(verdicts[0]).toBe('fits')
  expect(verdicts).toContain('marginal')
  expect(verdicts.at(-1)).toBe('does_not_fit')
})

it('rises with the room, and with what pump and lamp give off', () => {
  const at = (roomC: number, gear = {}) => inRoom(roomC, gear).value?.value ?? NaN
  for (let roomC = 20; roomC < 34; roomC += 1) expect(at(roomC + 1)).toBeGreaterThan(at(roomC))
  expect(at(26, { filters: [], lights: [] })).toBeLessThan(at(26))
})

it('counts evaporation: without pump and lamp an open tank stays below its room', () => {
  // Sizing trap: at equal water and room temperature evaporation still takes 70 W/m² (own, ASHRAE form at 25 °C, 50 %).
  expect(inRoom(26, { lid: null, filters: [], lights: [] }).value?.value).toBeLessThan(26)
})

it('names an assumed room', () => {
  const found = findingOf('warm_room', {}, { assumed: ['warmestRoomC'] })
  expect(found.assumed).toContain('warmest room temperature')
})

it('tells what a fan and a chiller would do, from the same balance', () => {
  const text = (roomC: number, gear = {}) => sayPhrase(inRoom(roomC, gear).action?.text ?? [], METRIC)
  const figures = (said: string) => /settle at about (?<fan>[\d.]+) °C\), or a chiller that takes out (?<watts>\d+) W/.exec(said)?.groups
  const [warm, hot] = [figures(text(30)), figures(text(34))]
  expect(Number(warm?.['fan'])).toBeLessThan(inRoom(30).value?.value ?? 0)
  expect(Number(hot?.['fan'])).toBeGreaterThan(Number(warm?.['fan']))
  expect(Number(hot?.['watts'])).toBeGreaterThan(Number(warm?.['watts']))
  expect(text(30, { lid: one('Wendlemere lid', { cover: 'glass' as const }) })).toContain('the lid off on hot days')
})

it('has a chiller of the told power hold what the animals are comfortable with', () => {
  const watts = Number(/takes out (\d+) W/.exec(sayPhrase(inRoom(32).action?.text ?? [], METRIC))?.[1])
  const appliances = [{ kind: 'chiller' as const, name: 'Halden cold', quantity: 1, spec: { coolingW: watts } }]
  expect(inRoom(32, { appliances }).verdict).toBe('fits')
  expect(inRoom(32, { appliances: [{ ...appliances[0]!, spec: { coolingW: watts - 20 } }] }).verdict).not.toBe('fits')
})

it('judges a danger mark with more digits than are told by the digits that are told', () => {
  // The margin that is told and the verdict must not disagree.
  const value = findingOf('warm_room', {}, {}).value!.value
  const at = (dangerC: number) => findingOf('warm_room', {}, { livestock: { ...conditions().livestock, highestC: dangerC, dangerC } })
  const above = at(value - 0.04)
  expect([above.verdict, above.margin?.value]).toEqual(['fits', -0])
  expect(at(value - 0.06).verdict).toBe('does_not_fit')
})

/** A tank that loses so many watts for each kelvin above a room of 24 °C, and nothing by vapour: the water settles at 24 °C and the watts over that. */
const dry = (dryWPerK: number): ThermalCase => ({
  loss: { sideWPerK: dryWPerK, bottomWPerK: 0, topWPerK: 0, dryWPerK, vapourWPerPa: 0, roomC: 24, roomVapourPa: 1000 },
  capacityJPerK: 1e6,
})
const COMFORT = group('small-tropical')

/** 10 W/K as it is built and 12.5 with nothing on top, in a room of 24 °C; these animals like it to 28 °C and are in danger from 32. */
describe('the warmest room, by hand', () => {
  type Changes = Parameters<typeof roundTank>
  function inHeat(
    heatW: number | { low: number; high: number },
    gear: Changes[0] = {},
    room: Changes[1] = {},
    more: Partial<Heating> = {},
  ) {
    const situation = roundTank(gear, { warmestRoomC: 24, livestock: COMFORT, ...room })
    const applianceHeatW = typeof heatW === 'number' ? { low: heatW, high: heatW } : heatW
    return warmRoom(situation, { ...heatingOf(situation), warmUsual: [dry(10)], warmOpen: [dry(12.5)], applianceHeatW, ...more })
  }
  const chillers = (...specs: Array<{ coolingW?: number }>) => ({
    appliances: specs.map((spec) => ({ kind: 'chiller' as const, ...one('Halden cold', spec) })),
  })

  it.each([
    [40.4, 28, 'fits', 0],
    [40.6, 28.1, 'marginal', -0.1],
    [80.4, 32, 'marginal', -4],
    [80.6, 32.1, 'does_not_fit', -4.1],
  ])('%s W bring it to %s °C: %s', (heatW, told, verdict, margin) => {
    const found = inHeat(heatW)
    expect(found).toMatchObject({
      verdict,
      value: { value: told, unit: 'degC' },
      limit: { kind: 'at_most', high: { value: 28, unit: 'degC' } },
      source: 'warm_room',
    })
    expect(found.margin?.value).toBeCloseTo(margin, 9)
    expect(found.action === null).toBe(verdict === 'fits')
  })

  it('takes the danger mark for the limit where comfort lies above it', () => {
    const found = inHeat(50, {}, { livestock: { ...COMFORT, highestC: 34, dangerC: 30 } })
    expect(found).toMatchObject({ verdict: 'fits', limit: { high: { value: 30 } } })
  })

  it('is told whole', () => {
    expect(reasonOf(inHeat(40))).toMatch(
      /^In the warmest room, 24\.0 °C, pump and lamp alone bring the water to 28\.0 °C; these animals are comfortable up to 28\.0 °C and in danger from 32\.0 °C\. .*evaporate in a day/,
    )
    expect(reasonOf(inHeat(40, { filters: [] }))).toContain('the lamp alone brings the water to')
    expect(reasonOf(inHeat(40, { lights: [] }))).toContain('the pump alone brings the water to')
    const stream = { appliances: [{ kind: 'circulation_pump' as const, ...one('Corbelle stream', { powerW: 10 }) }] }
    expect(reasonOf(inHeat(40, { filters: [], lights: [], ...stream }))).toContain('the pump alone brings the water to')
    expect(reasonOf(inHeat(0, { filters: [], lights: [] }))).toContain('the room alone brings the water to 24.0 °C')
  })

  it('is not known where what nobody stated decides', () => {
    const open = { applianceUnstated: ['power of the filter'] }
    expect(inHeat({ low: 30, high: 60 }, {}, {}, open)).toMatchObject({
      verdict: 'not_known',
      value: { value: 30 },
      missing: ['power of the filter'],
    })
    expect(inHeat({ low: 30, high: 38 }, {}, { assumed: ['warmestRoomC', 'waterBelowRimMm'] }, open)).toMatchObject({
      verdict: 'fits',
      assumed: ['power of the filter', 'warmest room temperature', 'water level below the rim'],
    })
  })

  it('takes off what chillers take out, down to where they switch off', () => {
    // 32 °C without one; 30 W less leave 29, 60 W less would leave 26 and switch off at 28.
    expect(inHeat(80, chillers({ coolingW: 30 }))).toMatchObject({ verdict: 'marginal', value: { value: 29 } })
    const held = inHeat(80, chillers({ coolingW: 60 }))
    expect(held).toMatchObject({ verdict: 'fits', value: { value: 28 } })
    expect(reasonOf(held)).toContain('to 28.0 °C with the chiller on; these')
    expect(reasonOf(inHeat(40))).not.toContain('chiller')
    expect(inHeat(80, chillers({ coolingW: 10 }, { coolingW: 20 })).value?.value).toBe(29)
    expect(inHeat(80, { appliances: [{ kind: 'chiller', ...one('Halden cold', { coolingW: 15 }, 2) }] }).value?.value).toBe(29)
    // It never cools what is cool enough.
    expect(inHeat(20, chillers({ coolingW: 60 })).value?.value).toBe(26)
    const low = { livestock: { ...COMFORT, highestC: 34, dangerC: 30 } }
    expect(inHeat(80, chillers({ coolingW: 60 }), low).value?.value).toBe(30)
  })

  it('asks for a chiller’s cooling where it would count', () => {
    const found = inHeat(80, chillers({ coolingW: 10 }, {}))
    expect(found).toMatchObject({ verdict: 'not_known', missing: ['cooling power of the chiller'], source: 'warm_room' })
    expect(reasonOf(found)).toBe(
      'Without cooling the water gets too warm in the warmest room; how much heat Halden cold takes out of it is not stated.',
    )
    expect(actionOf(found)).toBe("Enter the chiller's cooling power, not what it draws from the outlet.")
    expect(inHeat(40, chillers({})).verdict).toBe('fits')
  })

  it('tells what a fan and a chiller would do', () => {
    // 24 °C and 80 W over 12.5 W/K; 80 W less the 40 that go at 28 °C, and 81 less 40 up to the next ten.
    expect(actionOf(inHeat(80))).toBe(
      'Plan for summer: a cooler place, shorter hours of light, a fan across the surface (it would settle at about 30.4 °C), or a chiller that takes out 40 W or more. Or choose animals for warm water.',
    )
    expect(actionOf(inHeat(81))).toContain('takes out 50 W or more')
    const lid = { lid: one('a lid', { cover: 'glass' as const }) }
    expect(actionOf(inHeat(80, lid))).toContain('the lid off on hot days with a fan across the surface (it would')
    const jumpers = { livestock: { ...COMFORT, lidNeeded: true } }
    expect(actionOf(inHeat(80, lid, jumpers))).toContain('a fan across the surface under mesh that keeps these animals in (it would')
    expect(actionOf(inHeat(80, {}, jumpers))).toContain('a fan across the surface (it would')
  })
})
