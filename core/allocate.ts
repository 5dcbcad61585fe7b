/**
 * Splits an amount in the proportion of weights by largest remainder: every share is the exact one rounded down or up, and they add up to
 * the amount. Remainders that are alike go to the larger weight, then to the earlier place.
 *
 * Units: minor units. Range: amount 0 or above and weights 0 or above, whole. No share of an amount up to the sum of the weights is above its
 * weight. Errors: RangeError where there is an amount and all weights are 0. Source: largest remainder, common practice.
 *
 * @example allocate(100, [1, 1, 1]) // [34, 33, 33]
 */
export function allocate(minor: number, weights: readonly number[]): number[] {
  if (minor === 0) return weights.map(() => 0)
  const whole = weights.reduce((sum, weight) => sum + BigInt(weight), 0n)
  if (whole === 0n) throw new RangeError('An amount cannot be split among nothing')
  // A product of two amounts of money leaves the safe integers.
  const exact = weights.map((weight) => BigInt(minor) * BigInt(weight))
  const shares = exact.map((product) => Number(product / whole))
  const left = minor - shares.reduce((sum, share) => sum + share, 0)
  const remainder = (at: number): bigint => (exact[at] ?? 0n) % whole
  const next = weights
    .map((_, at) => at)
    .sort(
      (a, b) => Number(remainder(b) > remainder(a)) - Number(remainder(b) < remainder(a)) || (weights[b] ?? 0) - (weights[a] ?? 0) || a - b,
    )
  for (const at of next.slice(0, left)) shares[at] = (shares[at] ?? 0) + 1
  return shares
}
