import { expect, it } from 'vitest'
import { energyPerYear } from '../../../core/sizing/energy.ts'
import { isNear, MASS_A } from './reference-tanks.ts'
import { findingOf, reportOf, one } from './sample-build.ts'

/** Own arithmetic: 545.66 + 175.2 + 146.1 = 866.96 kWh, 147.38 at 0.17. */
it('adds heater, filter and light to 867.0 kWh and 147.38', () => {
  const energy = energyPerYear({ heaterMeanW: 62.29, filterW: 20, lightW: 50, lightHoursPerDay: 8, priceMinorPerKwh: 17 })
  expect(energy.items).toEqual([
    { what: 'Heater', kwhPerYear: 545.7 },
    { what: 'Filter', kwhPerYear: 175.2 },
    { what: 'Light', kwhPerYear: 146.1 },
  ])
  expect(energy.kwhPerYear).toBe(867)
  expect(energy.costMinorPerYear).toBe(14738)
})

it('names nothing that uses nothing', () => {
  expect(energyPerYear({ heaterMeanW: 0, filterW: 0, lightW: 10, lightHoursPerDay: 0, priceMinorPerKwh: 17 })).toEqual({
    items: [],
    kwhPerYear: 0,
    costMinorPerYear: 0,
  })
})

/** Own: the lidded 75 gallon tank loses 62.29 W in a room of 22 °C, the mean of 20 and 24. */
it('takes the heater’s duty from a room between the coldest and the warmest', () => {
  const report = reportOf({}, { coldestRoomC: 20, warmestRoomC: 24 })
  isNear(report.figures.usualLossW, 62.29, 1e-3)
  isNear(report.figures.energy?.items[0]?.kwhPerYear, 545.66, 1e-3)
})

it('never charges a heater for more than it has', () => {
  const report = reportOf({ heaters: [one('Small', { powerW: 25 })] }, { coldestRoomC: 14, warmestRoomC: 16 })
  isNear(report.figures.energy?.items[0]?.kwhPerYear, 25 * 8.76, 1e-3)
})

it('tells the figures that others dose and weigh by', () => {
  const { figures } = reportOf()
  expect(figures.waterVolumeL).toBe(237.71)
  expect(figures.emptyMassKg).toBe(57.28)
  isNear(figures.runningMassKg, MASS_A.runningKg, 1e-4)
  // Own: 356.9 kg filled to the rim and 28.1 kg of stand.
  isNear(figures.brimMassKg, 385, 1e-4)
  expect(findingOf('floor_load').value).toEqual({ value: 385, unit: 'kg', digits: 0 })
})
