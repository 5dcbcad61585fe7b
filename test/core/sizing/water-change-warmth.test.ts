import odex from 'odex'
import { describe, expect, it } from 'vitest'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { HIGH_LOSS } from '../../../core/sizing/heat-ends.ts'
import { heatCapacity } from '../../../core/sizing/heat-capacity.ts'
import { heatLoss, lossW } from '../../../core/sizing/heat-loss.ts'
import { mixedC } from '../../../core/sizing/water-change-warmth.ts'
import { GEOMETRY_A, MASS_A, TANK_A } from './reference-tanks.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'

const heaters = { heaters: [one('Torvane', { powerW: 150 }, 2)] }

/** Mixing by mass at one specific heat, by hand. */
it.each([
  [25, 12, 0.25, 21.75],
  [25, 25, 0.5, 25],
  [24, 30, 0.5, 27],
  [25, 10, 1, 10],
])('mixes water of %s °C with a share of %s °C', (tankC, tapC, share, mixed) => expect(mixedC(tankC, tapC, share)).toBeCloseTo(mixed, 12))

describe('a water change', () => {
  /** Oracle: a general ODE solver (Bulirsch–Stoer) brings the mixed water back to the target after the hours that we tell. */
  it('is made good after the hours that an ODE solver finds', () => {
    const { waterChange } = reportOf({ lid: null, ...heaters }, { waterChangePercent: 25, tapC: 12 }).figures
    if (waterChange?.hours === undefined) throw new Error('300 W make it good')
    const loss = heatLoss(TANK_A, GEOMETRY_A, 'open', HIGH_LOSS, 18)
    const capacity = heatCapacity(MASS_A, 'glass')
    const solver = new odex.Solver(1)
    solver.absoluteTolerance = solver.relativeTolerance = 1e-10
    const end = solver.solve((_t, y) => [((300 - lossW(loss, y[0] ?? NaN)) * 3600) / capacity], 0, [21.75], waterChange.hours).y[0]
    // Hours are told to a tenth: 0.03 K at the slope of 300 W.
    expect(Math.abs((end ?? NaN) - 25)).toBeLessThan(0.03)
  })

  /** Own bound: never sooner than without any loss, C·ΔT/P. */
  it('takes longer than without a loss', () => {
    const { waterChange } = reportOf(heaters, { waterChangePercent: 25, tapC: 12 }).figures
    expect(waterChange?.mixedC).toBe(21.8)
    expect(waterChange?.hours).toBeGreaterThan((heatCapacity(MASS_A, 'glass') * 3.25) / 300 / 3600)
  })

  it('tells what it does to the animals, and what to bring the new water to', () => {
    const words = sayPhrase(findingOf('heater_holds', heaters, { waterChangePercent: 25, tapC: 12 }).reason, METRIC)
    expect(words).toMatch(/Changing 25 % for tap water of 12\.0 °C leaves 21\.8 °C, made good after \d+ h\./)
    // 2 K at a quarter are 8 K of new water: 17 °C for 25.
    expect(words).toMatch(/A step of more than 2 °C at once shocks fish: bring the new water to 17\.0 °C or more first\.$/)
    expect(sayPhrase(findingOf('heater_holds', heaters, { waterChangePercent: 25, tapC: 12 }).reason, US)).toMatch(
      /bring the new water to 62\.6 °F or more/,
    )
  })

  it('is not told as one of tap water where the tank holds salt water', () => {
    const { reason } = findingOf('heater_holds', heaters, { livestock: group('soft-coral-reef'), waterChangePercent: 25, tapC: 12 })
    expect(sayPhrase(reason, METRIC)).toContain('Changing 25 % for salt water of the tap’s 12.0 °C leaves')
  })

  it('is no shock within 2 K, and one where the new water is too warm', () => {
    const words = (tapC: number) => sayPhrase(findingOf('heater_holds', heaters, { waterChangePercent: 50, tapC }).reason, METRIC)
    expect(words(21)).not.toContain('shock')
    expect(words(20.9)).toContain('bring the new water to 21.0 °C or more first')
    expect(words(29.1)).toContain('bring the new water to 29.0 °C or less first')
  })

  it('says which of its figures are taken as usual', () => {
    const words = (room: Parameters<typeof findingOf>[2]) => sayPhrase(findingOf('heater_holds', heaters, room).reason, METRIC)
    expect(words({})).toContain('Changing 25 % for tap water of 12.0 °C, the share as usual, the temperature as usual in winter, leaves')
    expect(words({ waterChangePercent: 40 })).toContain('40 % for tap water of 12.0 °C, the temperature as usual in winter,')
    expect(words({ tapC: 8 })).toContain('25 % for tap water of 8.0 °C, the share as usual,')
  })

  it('has no hours where the heaters never make it good', () => {
    const { waterChange } = reportOf({ heaters: [one('Torvane', { powerW: 50 })] }).figures
    expect(waterChange).toEqual({ mixedC: 21.8 })
    // Open it loses 223.28 W, told as 223 W: a heater of just that holds it by the told figures, and makes nothing good.
    const just = findingOf('heater_holds', { lid: null, heaters: [one('Torvane', { powerW: 223 })] })
    expect(sayPhrase(just.reason, METRIC)).toContain('leaves 21.8 °C. A step of more than 2 °C')
  })

  it('tells the hours of the figures, whole', () => {
    const { hours = NaN } = reportOf(heaters).figures.waterChange ?? {}
    expect(hours).toBeGreaterThan(1.5)
    expect(sayPhrase(findingOf('heater_holds', heaters).reason, METRIC)).toContain(`made good after ${Math.round(hours)} h.`)
  })
})
