import type { SizingFigures } from './report.ts'

/** kWh a year of one watt that runs always: 8760 h. */
const KWH_PER_WATT_YEAR = 8.76
const DAYS_PER_YEAR = 365.25

/** Round the clock by the watt year, as the filter is; else by the day. */
const yearOf = (powerW: number, hoursPerDay: number): number =>
  hoursPerDay === 24 ? powerW * KWH_PER_WATT_YEAR : (powerW * hoursPerDay * DAYS_PER_YEAR) / 1000

/**
 * What a build uses in a year.
 *
 * Units:  W and hours a day in; kWh a year and minor units of money out: items to one decimal, their sum as printed, the cost from the unrounded sum.
 * Source: arithmetic. The heater's mean power is the tank's loss in a usual room, never more than the heater has.
 *
 * @example energyPerYear({ heaterMeanW: 62.29, filterW: 20, lightW: 50, lightHoursPerDay: 8, priceMinorPerKwh: 17 }) // 867.0 kWh, 14 738 minor units
 */
export function energyPerYear(use: {
  heaterMeanW: number
  filterW: number
  lightW: number
  lightHoursPerDay: number
  priceMinorPerKwh: number
  /** What else runs by the clock. */
  others?: ReadonlyArray<{ what: string; powerW: number; hoursPerDay: number }>
}): NonNullable<SizingFigures['energy']> {
  const exact = [
    { what: 'Heater', kwhPerYear: use.heaterMeanW * KWH_PER_WATT_YEAR },
    { what: 'Filter', kwhPerYear: use.filterW * KWH_PER_WATT_YEAR },
    { what: 'Light', kwhPerYear: (use.lightW * use.lightHoursPerDay * DAYS_PER_YEAR) / 1000 },
    ...(use.others ?? []).map(({ what, powerW, hoursPerDay }) => ({ what, kwhPerYear: yearOf(powerW, hoursPerDay) })),
  ].filter(({ kwhPerYear }) => kwhPerYear > 0)
  const items = exact.map(({ what, kwhPerYear }) => ({ what, kwhPerYear: Math.round(kwhPerYear * 10) / 10 }))
  const total = items.reduce((sum, { kwhPerYear }) => sum + kwhPerYear, 0)
  const exactTotal = exact.reduce((sum, { kwhPerYear }) => sum + kwhPerYear, 0)
  return { items, kwhPerYear: Math.round(total * 10) / 10, costMinorPerYear: Math.round(exactTotal * use.priceMinorPerKwh) }
}
