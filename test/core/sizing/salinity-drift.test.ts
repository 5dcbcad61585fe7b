import { describe, expect, it } from 'vitest'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { evaporationLPerDay, type HeatLoss } from '../../../core/sizing/heat-loss.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { heatingOf, type ThermalCase } from '../../../core/sizing/heating.ts'
import { salinityDrift, salinityWithout } from '../../../core/sizing/salinity-drift.ts'
import { toldFinding } from '../../../core/sizing/told-report.ts'
import { actionOf, reasonOf, roundTank } from './round-tank.ts'
import { group, one } from './sample-build.ts'

/** 160 L of sea water at 25 °C and 35 g/kg: 1.02334 kg/L (EOS-80). */
const WATER_KG = 160 * 1.023_343
const SEA = { livestock: { ...group('small-tropical'), water: 'salt' as const } }

/** A tank that loses just so many litres a day. */
function losing(litresPerDay: number): ThermalCase {
  const loss = (vapourWPerPa: number): HeatLoss => ({ ...heatingOf(roundTank({}, SEA)).cold[0]!.loss, roomVapourPa: 0, vapourWPerPa })
  return { loss: loss(litresPerDay / evaporationLPerDay(loss(1), 25)), capacityJPerK: 1 }
}
function drift(cold: number[], warm: number[] = cold, room: Partial<Conditions> = {}, gear: Partial<Gear> = {}) {
  const situation = roundTank(gear, { ...SEA, ...room })
  const found = salinityDrift(situation, { ...heatingOf(situation), cold: cold.map(losing), warmAsBuilt: warm.map(losing) })
  if (!found) throw new Error('salt water drifts')
  return found
}

describe('salt that stays while water goes', () => {
  // Rise of r per cent: r / (100 + r) of the water. Common practice: 1.5 a day is borne for good, 3 now and then.
  it.each([
    [1.54, 1.5, 'fits'],
    [1.56, 1.6, 'marginal'],
    [3.04, 3, 'marginal'],
    [3.06, 3.1, 'does_not_fit'],
  ])('of a rise of %s per cent a day, told as %s: %s', (rise, told, verdict) => {
    const found = drift([(WATER_KG * rise) / (100 + rise)])
    expect(found).toMatchObject({ verdict, value: { value: told, unit: 'percent' }, limit: { kind: 'at_most', high: { value: 1.5 } } })
    expect(actionOf(found)).toBe(
      verdict === 'fits'
        ? 'Top up every day with fresh water, never with salt water, and measure salinity each week.'
        : 'Lay a lid on, or top up by a device that does it all day; always with fresh water, never with salt water.',
    )
    expect(toldFinding(found).source.tag).toBe('own')
  })

  /** By hand from 163.735 kg: 35 · m / (m − litres); 16.4 L more of fresh water lower it to 31.8, 15.35 kg to 32. */
  it('is told from the least in summer to the most in winter, with what a stuck top-up does', () => {
    const found = drift([1.5, 2], [1, 1.4])
    expect(reasonOf(found)).toBe(
      '1.0 L a day to 2.0 L a day evaporate and leave their salt: without a top-up salinity rises from 35.0 g/kg to 35.2 g/kg to 35.4 g/kg in a day and 36.6 g/kg to 38.3 g/kg in a week. An automatic top-up that sticks runs its whole reservoir in: 16 L lower it from 35.0 g/kg to 31.8 g/kg; with 15 L or less it stays above 32.0 g/kg.',
    )
    expect(reasonOf(drift([2]))).toMatch(
      /^2\.0 L a day evaporate and leave their salt: .* to 35\.4 g\/kg in a day and 38\.3 g\/kg in a week\./,
    )
  })

  it('is less with a sump, whose water is salted too', () => {
    // 42 L run in it: 206.715 kg, 35 · m / (m − 2) is 35.3 after a day; 20.7 L of fresh water are a tenth of it, and 19.4 kg lower it to 32.
    const found = drift([2], [2], {}, { sump: one('Under', { totalVolumeL: 66, operatingVolumeL: 42 }) })
    expect(reasonOf(found)).toContain('to 35.3 g/kg in a day')
    expect(reasonOf(found)).toContain('21 L lower it from 35.0 g/kg to 31.8 g/kg; with 19 L or less it stays above 32.0 g/kg.')
  })

  it('is not known where the ends of the room disagree, and takes nothing from a tank that gains', () => {
    expect(drift([1, 4])).toMatchObject({ verdict: 'not_known', value: { value: 2.5 } })
    expect(reasonOf(drift([-1], [-2]))).toMatch(/^0\.0 L a day evaporate .* to 35\.0 g\/kg in a day and 35\.0 g\/kg in a week/)
  })

  it('names the room that is taken as usual', () => {
    expect(drift([1], [1], { assumed: ['coldestRoomC', 'warmestRoomC', 'waterBelowRimMm'] }).assumed).toEqual([
      'coldest room temperature',
      'warmest room temperature',
      'water level below the rim',
    ])
  })

  it('is no matter of fresh water', () => {
    const situation = roundTank()
    expect(salinityDrift(situation, heatingOf(situation))).toBeNull()
  })
})

/** By hand: 35 · 200 / 198; nine tenths gone leave ten times as much. */
it.each([
  [2, 1, 35.3535],
  [2, 7, 37.6344],
  [-3, 5, 35],
  [100, 7, 350],
])('of 200 kg that lose %s L a day for %s days: %s', (litres, days, salinity) => {
  expect(salinityWithout(200, litres, days)).toBeCloseTo(salinity, 3)
})
