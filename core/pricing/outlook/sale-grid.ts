/** Sales a year, reporting and length for which likelihoods are reckoned: about a third apart, as fine as a few years of reports can tell. */
const RATES_PER_YEAR = [0.25, 0.5, 0.9, 1.4, 2, 2.8, 3.8, 5.2, 7, 10, 15] as const
/** Chance of no report on a sale day ÷ the same on a regular day: 1 where sales do not bring reports. */
const SILENCES = [1, 0.985, 0.96, 0.91, 0.82, 0.66, 0.45, 0.25] as const
/** Mean length of a sale, days. */
const LENGTHS_DAYS = [3, 6, 10, 18] as const

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

const POINTS: readonly SaleParameters[] = RATES_PER_YEAR.flatMap((ratePerYear) =>
  SILENCES.flatMap((silence) =>
    LENGTHS_DAYS.map((lengthDays) => ({ ratePerYear, startChance: startChance(ratePerYear), silence, lengthDays })),
  ),
)

/** What a place in the grid stands for: rates vary slowest, lengths fastest. Range: 0 to `GRID_SIZE` − 1. */
export const gridPoint = (index: number): SaleParameters => POINTS[index] as SaleParameters

/** The place with the same rate and length and a silence of 1. */
export const watchedAlike = (index: number): number =>
  index - LENGTHS_DAYS.length * (Math.floor(index / LENGTHS_DAYS.length) % SILENCES.length)
