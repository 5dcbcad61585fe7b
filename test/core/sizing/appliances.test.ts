import { describe, expect, it } from 'vitest'
import { energyPerYear } from '../../../core/sizing/energy.ts'
import { appliancePowerW, appliancesHeatW, runningAppliances, unstatedAppliances } from '../../../core/sizing/appliances.ts'
import type { Appliance } from '../../../core/sizing/gear.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { findingOf, gear, reportOf } from './sample-build.ts'

const appliance = (kind: Appliance['kind'], spec: Appliance['spec'], name = `a ${kind}`): Appliance => ({ kind, name, quantity: 1, spec })
const pump = appliance('circulation_pump', { powerW: 30, cordMm: 4000 }, 'Pellick Drift')
const air = appliance('air_pump', { powerW: 5, cordMm: 3000 }, 'Pellick Air')
const chiller = (spec: Appliance['spec']) => appliance('chiller', { powerW: 110, cordMm: 3000, ...spec }, 'Torvane Cooler')

describe('what else is plugged in', () => {
  it('is added to the load of the circuit: 200 W of heaters, 20 W of filter, 30 W of light and 35 W more', () => {
    expect(findingOf('electrical_load').value?.value).toBe(250)
    expect(findingOf('electrical_load', { appliances: [pump, air] }).value?.value).toBe(285)
    expect(reportOf({ appliances: [pump, air] }).figures.peakLoadW).toBe(285)
  })
  it('takes an outlet each', () => {
    expect(findingOf('outlets', { appliances: [pump, air] }).limit).toMatchObject({ low: { value: 6 } })
    expect(findingOf('outlets', { appliances: [pump, air, chiller({})] }).verdict).toBe('does_not_fit')
  })
  it('asks for protection even where it is all there is', () => {
    const bare = { heaters: [], filters: [], lights: [], appliances: [pump], power: [] }
    expect(findingOf('outlet_protection', bare, { circuitProtected: false }).verdict).toBe('does_not_fit')
  })
  it('has its cord looked at: a pump under water climbs to the rim first', () => {
    const short = appliance('circulation_pump', { powerW: 5, cordMm: 1200 }, 'Pellick Short')
    const found = findingOf('cord_length', { appliances: [short] })
    expect(found.verdict).toBe('does_not_fit')
    // Tank A is 533.4 mm high and 100 mm go over the rim.
    expect(found.value?.value).toBe(567)
    expect(sayPhrase(found.reason, METRIC)).toContain('Pellick Short')
  })
  it('counts in the year: 30 W round the clock is 262.8 kWh at 8.76 kWh a watt', () => {
    const plain = energyPerYear([], 17)
    expect(plain.kwhPerYear).toBe(0)
    const item = reportOf({ appliances: [pump] }).figures.energy?.items.find(({ what }) => what === 'Circulation pump')
    expect(item?.kwhPerYear).toBe(262.8)
  })
  it('leaves a chiller out of the year: its hours follow the room', () => {
    const items = reportOf({ appliances: [chiller({ coolingW: 200 })] }).figures.energy?.items.map(({ what }) => what)
    expect(items).toEqual(['Heater', 'Filter', 'Light'])
  })
  it('warms the water where it stands in it, and not where it blows air in', () => {
    const balance = (appliances: Appliance[]) => findingOf('warm_room', { appliances }, { warmestRoomC: 26 }).value?.value ?? 0
    expect(balance([pump])).toBeGreaterThan(balance([]))
    expect(balance([air])).toBe(balance([]))
  })
  it('takes the usual range of its kind where no power is stated, and says so', () => {
    const unstated = appliance('circulation_pump', { cordMm: 4000 }, 'Pellick Drift')
    const load = findingOf('electrical_load', { appliances: [unstated] })
    expect(load).toMatchObject({ verdict: 'fits', assumed: ['power of the circulation pump'], value: { value: 300 } })
    expect(reportOf({ appliances: [unstated] }).figures.peakLoadW).toBeUndefined()
  })
})

describe('a chiller in the warmest room', () => {
  const room = { warmestRoomC: 33 }
  it('that takes out enough keeps the water at the highest that the animals are comfortable at', () => {
    expect(findingOf('warm_room', {}, room).verdict).not.toBe('fits')
    expect(findingOf('warm_room', { appliances: [chiller({ coolingW: 400 })] }, room)).toMatchObject({
      verdict: 'fits',
      value: { value: 28 },
    })
  })
  it('that is too small still leaves it too warm', () => {
    expect(findingOf('warm_room', { appliances: [chiller({ coolingW: 10 })] }, room).verdict).toBe('does_not_fit')
  })
  it('whose cooling nobody states is not known, and the field that would settle it is named', () => {
    const found = findingOf('warm_room', { appliances: [chiller({})] }, room)
    expect(found).toMatchObject({ verdict: 'not_known', missing: ['cooling power of the chiller'] })
  })
  it('is not asked about where the room is cool enough', () => {
    expect(findingOf('warm_room', { appliances: [chiller({})] }, { warmestRoomC: 20 }).verdict).toBe('fits')
  })
})

describe('a build without anything more', () => {
  it('has the report that it had', () => {
    expect(reportOf({ appliances: [] })).toEqual(reportOf())
    expect(gear().appliances).toBeUndefined()
  })
})

describe('each kind by itself', () => {
  const all = (spec: Appliance['spec'], quantity = 1) =>
    gear({
      appliances: (['chiller', 'air_pump', 'circulation_pump', 'skimmer', 'co2', 'uv', 'battery_backup'] as const).map((kind) => ({
        ...appliance(kind, spec),
        quantity,
      })),
    })

  it('counts every piece of a line: two of 9 W are 18 W, and of unstated power twice the range', () => {
    expect(appliancePowerW({ ...appliance('uv', { powerW: 9 }), quantity: 2 })).toEqual({ low: 18, high: 18 })
    // Common practice, stated: a UV clarifier for a home draws 4 to 60 W.
    expect(appliancePowerW({ ...appliance('uv', {}), quantity: 2 })).toEqual({ low: 8, high: 120 })
  })

  it('warms the water only where it stands in it: of seven kinds of 10 W, three do', () => {
    expect(appliancesHeatW(all({ powerW: 10 }))).toEqual({ low: 30, high: 30 })
    expect(unstatedAppliances(all({}), { warming: true })).toEqual([
      'power of the circulation pump',
      'power of the skimmer',
      'power of the UV clarifier',
    ])
    expect(unstatedAppliances(all({}))).toHaveLength(7)
    expect(unstatedAppliances(all({ powerW: 10 }))).toEqual([])
  })

  it('runs by the clock or with the light, and a chiller or a battery by neither', () => {
    const items = runningAppliances(all({ powerW: 10 }), 6)
    expect(items.map(({ what, usual, hoursPerDay }) => [what, usual, hoursPerDay])).toEqual([
      ['Air pump', 10, 24],
      ['Circulation pump', 10, 24],
      ['Skimmer', 10, 24],
      ['CO2 system', 10, 6],
      ['UV clarifier', 10, 24],
    ])
    expect(runningAppliances(gear(), 6)).toEqual([])
  })
})
