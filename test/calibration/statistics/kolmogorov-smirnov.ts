/**
 * Kolmogorov–Smirnov distance of a sample from the uniform distribution on [0, 1]: the largest gap between its distribution and the diagonal.
 *
 * Errors: NaN for an empty sample.
 *
 * @example uniformDistance([0.25, 0.75]) // 0.25
 */
export function uniformDistance(sample: readonly number[]): number {
  if (sample.length === 0) return Number.NaN
  const n = sample.length
  const gaps = Float64Array.from(sample)
    .sort()
    .map((value, index) => Math.max((index + 1) / n - value, value - index / n))
  return gaps.reduce((most, gap) => Math.max(most, gap), 0)
}
