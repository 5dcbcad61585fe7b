/**
 * The least of sorted draws that at least a share of them does not exceed: it is always one of them, as a price must be.
 *
 * Range: share above 0, at most 1. Errors: NaN for none.
 *
 * @example quantileOf(Float64Array.of(1, 2, 3, 4), 0.5) // 2
 */
export const quantileOf = (sorted: ArrayLike<number>, share: number): number =>
  sorted.length === 0
    ? Number.NaN
    : (sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length - 1e-9) - 1))] as number)

/** Whether an outcome lies between the 10 and the 90 % place of sorted draws, ends included, to half a minor unit. */
export const isCovered = (sorted: ArrayLike<number>, outcome: number): boolean =>
  outcome >= quantileOf(sorted, 0.1) - 0.5 && outcome <= quantileOf(sorted, 0.9) + 0.5

/** Levels at which forecasts are compared: the nine tenths. */
const LEVELS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9]

/** Loss of one stated quantile: what is below it costs 1 − level a unit, what is above it costs level. Koenker & Bassett, Econometrica 46 (1978). */
export const quantileLoss = (stated: number, outcome: number, level: number): number =>
  outcome >= stated ? level * (outcome - stated) : (1 - level) * (stated - outcome)

/** Mean loss of the nine tenths of sorted draws. @example pinballLoss(Float64Array.of(5, 5), 5) // 0 */
export const pinballLoss = (sorted: ArrayLike<number>, outcome: number): number =>
  LEVELS.reduce((sum, level) => sum + quantileLoss(quantileOf(sorted, level), outcome, level), 0) / LEVELS.length
