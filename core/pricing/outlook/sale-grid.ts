/** Sales a year, reporting and length for which likelihoods are reckoned: about a third apart, as fine as a few years of reports can tell. */
const RATES_PER_YEAR = [0.2, 0.4, 0.7, 1.1, 1.6, 2.3, 3.2, 4.4, 6, 8.5, 12, 17] as const
/** Chance of no report on a sale day ÷ the same on a regular day: 1 where sales do not bring reports. */
const SILENCES = [1, 0.985, 0.965, 0.93, 0.87, 0.77, 0.62, 0.42] as const
/** Mean length of a sale, days. */
const LENGTHS_DAYS = [3, 5, 8, 13, 21] as const

export const GRID_RATES: readonly number[] = RATES_PER_YEAR
export const GRID_SILENCES: readonly number[] = SILENCES
export const GRID_LENGTHS: readonly number[] = LENGTHS_DAYS
export const GRID_SIZE = RATES_PER_YEAR.length * SILENCES.length * LENGTHS_DAYS.length

/** One place in the grid. */
export interface SaleParameters {
  ratePerYear: number
  /** Daily chance that a sale begins. */
  startChance: number
  silence: number
  lengthDays: number
}

/** Daily chance that a sale begins. @example startChance(3) // 0.0081854 */
export const startChance = (ratePerYear: number): number => -Math.expm1(-ratePerYear / 365)

/** What a place in the grid stands for: rates vary slowest, lengths fastest. Range: 0 to `GRID_SIZE` − 1. */
export function gridPoint(index: number): SaleParameters {
  const lengthAt = index % LENGTHS_DAYS.length
  const silenceAt = Math.floor(index / LENGTHS_DAYS.length) % SILENCES.length
  const rateAt = Math.floor(index / (LENGTHS_DAYS.length * SILENCES.length))
  const ratePerYear = RATES_PER_YEAR[rateAt] as number
  return {
    ratePerYear,
    startChance: startChance(ratePerYear),
    silence: SILENCES[silenceAt] as number,
    lengthDays: LENGTHS_DAYS[lengthAt] as number,
  }
}
