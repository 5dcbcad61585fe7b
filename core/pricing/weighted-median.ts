/** A value and how much it weighs. */
export interface Weighted {
  value: number
  weight: number
}

/**
 * The lower weighted median: the smallest value at which the weights reach half of their sum. It is always one of the values, so that a
 * price made of disagreeing reports is a price that somebody saw.
 *
 * Range: weights above 0, at least one value. Errors: RangeError for none.
 * Check value: pricing reference, weights 1, 0.8572, 0.7071, 0.2143, 0.0992.
 *
 * @example weightedMedian([{ value: 4400, weight: 0.2 }, { value: 4999, weight: 1 }, { value: 5200, weight: 0.8 }]) // 4999
 */
export function weightedMedian(values: readonly Weighted[]): number {
  const sorted = [...values].sort((a, b) => a.value - b.value)
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2
  let reached = 0
  for (const { value, weight } of sorted) {
    reached += weight
    // Halves of equal weights meet only up to the last bits of a float sum.
    if (reached >= half - 1e-12 * half) return value
  }
  throw new RangeError('A median needs at least one value')
}
