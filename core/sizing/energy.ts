import type { SizingFigures } from './report.ts'
import type { Span } from './span.ts'

const DAYS_PER_YEAR = 365.25
/** kWh a year of one watt that runs always: 8760 h. */
const KWH_PER_WATT_YEAR = 8.76
/** Hours a day of what never stops. */
export const ALWAYS = 24

/** One thing that draws power: what it draws, at the ends of what is stated and in the middle. */
export interface Drawn extends Span {
  what: string
  usual: number
  hoursPerDay: number
}

/** What runs by the clock at a power that lies between two ends. @example drawnOf('Filter', { low: 5, high: 15 }, 24).usual // 10 */
export const drawnOf = (what: string, power: Span, hoursPerDay: number): Drawn => ({
  what,
  ...power,
  usual: (power.low + power.high) / 2,
  hoursPerDay,
})

type Energy = NonNullable<SizingFigures['energy']>

/** Round the clock by the watt year; else by the day. */
const yearOf = (powerW: number, hoursPerDay: number): number =>
  hoursPerDay === ALWAYS ? powerW * KWH_PER_WATT_YEAR : (powerW * hoursPerDay * DAYS_PER_YEAR) / 1000

const tenth = (value: number): number => Math.round(value * 10) / 10

/**
 * What a build uses in a year, each thing by itself and all together, as a range.
 *
 * Units:  W and hours a day in; kWh a year and minor units of money out: items to one decimal, their sum as printed, the cost from the unrounded sum.
 * Source: arithmetic.
 *
 * @example energyPerYear([{ what: 'Filter', low: 20, usual: 20, high: 20, hoursPerDay: 24 }], 17).kwhPerYear // 175.2
 */
export function energyPerYear(drawn: readonly Drawn[], priceMinorPerKwh: number): Energy {
  const exact = drawn
    .map(({ what, low, usual, high, hoursPerDay }) => ({
      what,
      low: yearOf(low, hoursPerDay),
      usual: yearOf(usual, hoursPerDay),
      high: yearOf(high, hoursPerDay),
    }))
    .filter(({ high }) => high > 0)
  const items = exact.map(({ what, low, usual, high }) => ({
    what,
    kwhPerYear: tenth(usual),
    lowKwhPerYear: tenth(low),
    highKwhPerYear: tenth(high),
    costMinorPerYear: Math.round(usual * priceMinorPerKwh),
  }))
  const total = (end: 'kwhPerYear' | 'lowKwhPerYear' | 'highKwhPerYear') => tenth(items.reduce((sum, item) => sum + item[end], 0))
  const cost = (end: 'low' | 'usual' | 'high') => Math.round(exact.reduce((sum, item) => sum + item[end], 0) * priceMinorPerKwh)
  return {
    items,
    kwhPerYear: total('kwhPerYear'),
    lowKwhPerYear: total('lowKwhPerYear'),
    highKwhPerYear: total('highKwhPerYear'),
    costMinorPerYear: cost('usual'),
    lowCostMinorPerYear: cost('low'),
    highCostMinorPerYear: cost('high'),
  }
}
