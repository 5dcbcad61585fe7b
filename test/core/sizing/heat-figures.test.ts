import { expect, it } from 'vitest'
import type { SizingFigures } from '../../../core/sizing/report.ts'
import { group, one, reportOf } from './sample-build.ts'

const heaters = (...powers: Array<number | undefined>) => ({
  heaters: powers.map((powerW, index) => one(`Torvane ${index + 1}`, { powerW })),
})
const HEATER_FIGURES = ['stuckTemperatureC', 'stuckHours', 'oneFailedC', 'heatLostHours', 'heaterDutyPercent', 'waterChange'] as const
const present = (figures: SizingFigures) => HEATER_FIGURES.filter((key) => figures[key] !== undefined)

/**
 * Own, by a second program (bisection and midpoint rule over the same balance), of the lidded tank of 75 gallons in rooms of 18 to 24 °C: 148.58 W lost at the
 * high-loss end, 81.17 W as usual in the middle room; one of 100 W stuck on 34.34 °C, past 32 °C after 31.9 h; the other alone 22.55 °C; from 25 to 21 °C
 * without any heat 11.47 h. A quarter of 25 °C water changed for 12 °C leaves 25 − 0.25 × 13 = 21.75 °C.
 */
it('has the figures of a second reckoning', () => {
  expect(reportOf().figures).toMatchObject({
    coldLossW: 148.6,
    usualLossW: 81.2,
    heaterPowerW: 200,
    stuckTemperatureC: 34.3,
    stuckHours: 31.9,
    oneFailedC: 22.6,
    heatLostHours: 11.5,
    // 149 of 200 W, in the whole watts that are told.
    heaterDutyPercent: 75,
    waterChange: { mixedC: 21.8 },
  })
})

it('leaves out what nobody can tell: heaters whose power is not stated, or none', () => {
  expect(present(reportOf(heaters(100, undefined)).figures)).toEqual([])
  expect(reportOf(heaters(100, undefined)).figures.heaterPowerW).toBeUndefined()
  expect(present(reportOf({ heaters: [] }).figures)).toEqual([])
  expect(reportOf({ heaters: [] }).figures.heaterPowerW).toBe(0)
})

it('takes the strongest for the one that sticks on, wherever it stands', () => {
  for (const powers of [
    [50, 100, 25],
    [100, 50, 25],
    [25, 50, 100],
  ])
    expect(reportOf(heaters(...powers)).figures).toMatchObject({ heaterPowerW: 175, stuckTemperatureC: 34.3, stuckHours: 31.9 })
})

it('leaves out hours that never come', () => {
  // 50 W stuck on stay at 30.5 °C; goldfish bear what the room alone keeps, and a heater of 100 W never makes up for a change in a room of 5 °C.
  expect(reportOf(heaters(50)).figures.stuckHours).toBeUndefined()
  expect(reportOf(heaters(50), { livestock: group('goldfish-fancy') }).figures.heatLostHours).toBeUndefined()
  expect(reportOf(heaters(100), { coldestRoomC: 5 }).figures.waterChange?.hours).toBeUndefined()
  expect(reportOf(heaters(300)).figures.waterChange?.hours).toBeGreaterThan(0)
})

it('asks for no heat below nothing in a room that warms the water', () => {
  const { coldLossW, usualLossW } = reportOf({}, { coldestRoomC: 28, warmestRoomC: 30 }).figures
  expect([coldLossW, usualLossW]).toEqual([0, 0])
})

it('advises on heaters only where the animals need one', () => {
  expect(reportOf().figures.heaterAdvice).toBeDefined()
  // Without any heat the water stays at 17.45 °C: told to a tenth, 17.5, but not quite that.
  const bearing = (lowestC: number) => reportOf({}, { livestock: { ...group('small-tropical'), lowestC } }).figures.heaterAdvice
  expect(bearing(17.4)).toBeUndefined()
  expect(bearing(17.6)).toBeDefined()
})
