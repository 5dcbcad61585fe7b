import type { Quantity } from '../units/quantity.ts'

/** A range within this share of its upper end is no wider than what was reckoned is sure of. Own. */
const NARROW_SHARE = 0.02
/** One step of the last digit, and what its rounding may leave. */
const ONE_STEP = 1.01

/**
 * Whether a range is too narrow to matter: one step of its last digit, and hardly a share of the whole. It is told as one figure, its upper end.
 *
 * Range: two of one unit, low first. Source: own.
 *
 * @example isNarrow(10.8 mg/L, 10.9 mg/L) // true; of 5 and 6 outlets it is not
 */
export const isNarrow = (low: Quantity, high: Quantity): boolean =>
  high.value - low.value <= ONE_STEP * 10 ** -high.digits && high.value - low.value < NARROW_SHARE * Math.abs(high.value)
