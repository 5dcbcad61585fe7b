/** Makes the median absolute deviation of a normal sample its standard deviation: 1 / Φ⁻¹(3/4). Rousseeuw & Croux, JASA 88 (1993). */
export const MAD_FACTOR = 1.4826

/** Least spread taken, in log: a record of identical prices has none, and then any change at all would be infinitely far. */
const LEAST_SPREAD_LOG = 0.02

/** Middle of a list, the mean of the two middle values where their number is even. Errors: NaN for an empty list. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted.length / 2
  if (sorted.length === 0) return Number.NaN
  return sorted.length % 2 === 1
    ? (sorted[Math.floor(middle)] as number)
    : ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2
}

/**
 * How far a price is from a record, in robust standard deviations of log price: |ln price − median| ÷ (1.4826 × MAD, at least 0.02).
 *
 * Units: any currency, the same for all; prices above 0. Errors: NaN for an empty record.
 * Check value: record 49, 50, 50, 51, 52, 48, 50; price 42 → 5.939.
 *
 * @example robustDeviation(4200, [4900, 5000, 5000, 5100, 5200, 4800, 5000]) // 5.939
 */
export function robustDeviation(price: number, record: readonly number[]): number {
  const logs = record.map(Math.log)
  const centre = median(logs)
  const spread = MAD_FACTOR * median(logs.map((log) => Math.abs(log - centre)))
  return Math.abs(Math.log(price) - centre) / Math.max(spread, LEAST_SPREAD_LOG)
}
