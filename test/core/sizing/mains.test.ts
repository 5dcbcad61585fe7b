import { describe, expect, it } from 'vitest'
import type { Appliance } from '../../../core/sizing/gear.ts'
import { toldFinding } from '../../../core/sizing/told-report.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'

const told = (check: 'electrical_load' | 'outlet_protection' | 'cord_length' | 'outlets', circuitVoltageV: number) =>
  toldFinding(findingOf(check, {}, { circuitVoltageV, circuitCurrentA: 16 }))

describe('the words of the country', () => {
  /** NEC 210.19(A)(1), 210.20(A): 125 % of the load is 80 % of the circuit. IEC 60364-4-41, 415.1: at most 30 mA. UL 943 class A: 4 to 6 mA, the name from memory. */
  it.each([
    [
      120,
      /125 % .* 80 % .*NEC 210\.19\(A\)\(1\), 210\.20\(A\)/,
      /trips at 4 to 6 mA: class A of UL 943, whose name is from memory.*names no aquarium/,
      'published',
    ],
    [230, /Four fifths .* no such rule/, /at most 30 mA.*IEC 60364-4-41, 411\.3\.3 and 415\.1/, 'common_practice'],
  ])('are told at %s V: the load that stays, the protective device, the caution', (volts, load, device, tag) => {
    expect(told('electrical_load', volts).source.text).toMatch(load)
    expect(told('electrical_load', volts).source.tag).toBe(tag)
    expect(told('outlet_protection', volts).source.text).toMatch(device)
    for (const check of ['electrical_load', 'outlet_protection', 'cord_length', 'outlets'] as const)
      expect(told(check, volts).caution).toMatch(volts === 230 ? /residual-current device.*national wiring rules/ : /local electrical code/)
  })
  /** Arithmetic: 16 A × 230 V = 3680 W, of which four fifths. */
  it('leave the limit four fifths of the circuit', () =>
    expect(findingOf('electrical_load', { power: [] }, { circuitVoltageV: 230, circuitCurrentA: 16 }).limit).toMatchObject({
      high: { value: 2944 },
    }))
})

const marks = group('small-tropical')

describe('the year of a chiller', () => {
  const chiller = { ...one('Maddoc', { coolingW: 300, powerW: 150 }), kind: 'chiller' as const }
  const itemOf = (room: object, appliances: Appliance[] = [chiller]) =>
    reportOf({ appliances, heaters: [] }, room).figures.energy?.items.find(({ what }) => what === 'Chiller')

  it('is none in a room that keeps the water cool, and rises with the room', () => {
    expect(itemOf({ coldestRoomC: 15, warmestRoomC: 18 })).toBeUndefined()
    const [warm, hot] = [itemOf({ coldestRoomC: 24, warmestRoomC: 32 }), itemOf({ coldestRoomC: 26, warmestRoomC: 34 })]
    expect(warm!.kwhPerYear).toBeGreaterThan(0)
    expect(hot!.kwhPerYear).toBeGreaterThan(warm!.kwhPerYear)
  })
  /**
   * In a room as warm as the water only vapour takes heat away: the report's own usual loss at that temperature. What is left of 20 W of pump and half of 30 W of lamp for 8 of 24 h, over 300 W of cooling, at 150 W. Arithmetic: 8.76 kWh a watt and year.
   */
  it('is its power for the share of the time in which heat is left to take out', () => {
    const room = { coldestRoomC: 28, warmestRoomC: 28 }
    const { usualLossW = NaN } = reportOf({ appliances: [chiller] }, { ...room, livestock: { ...marks, targetC: 28 } }).figures
    const gain = 20 + 0.5 * 30 * (8 / 24)
    const usual = itemOf({ ...room, livestock: { ...marks, highestC: 28 } })?.kwhPerYear
    expect(usualLossW).toBeGreaterThan(0)
    expect(usual).toBeCloseTo((Math.max(0, gain - usualLossW) / 300) * 150 * 8.76, 0)
    expect(usual).toBeGreaterThan(0)
  })
  it('never draws more than it has, and says nothing without its cooling power', () => {
    const item = itemOf({ coldestRoomC: 38, warmestRoomC: 45 })
    expect(item!.highKwhPerYear).toBeLessThanOrEqual(150 * 8.76 + 0.05)
    expect(item!.lowKwhPerYear).toBeLessThanOrEqual(item!.kwhPerYear)
    expect(item!.kwhPerYear).toBeLessThanOrEqual(item!.highKwhPerYear!)
    expect(
      itemOf({ coldestRoomC: 30, warmestRoomC: 34 }, [{ ...one('Maddoc', { powerW: 150 }), kind: 'chiller' as const }]),
    ).toBeUndefined()
  })
})
