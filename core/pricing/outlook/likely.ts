/** "2 in 3 pay 160 or less". */
export interface Likely {
  many: number
  of: number
  paidMinor: number
}

/** Shares that people say, least first. */
const SAID: ReadonlyArray<readonly [many: number, of: number]> = [
  [1, 4],
  [1, 3],
  [1, 2],
  [2, 3],
  [3, 4],
  [9, 10],
]
/** Who pays as good as today's price saved nothing. */
const WORTH_SAYING = 0.98

/**
 * The largest share, of those that people say, which pays less than today and no more than the price to buy at, and what it pays at most; null where not
 * one in four pays so little: a chance of a price above the one to buy at would be of a price that whoever follows the advice does not take.
 *
 * Units: minor units, one entry a future. @example likelyPaid(Float64Array.of(80, 80, 80, 100), 100) // { many: 3, of: 4, paidMinor: 80 }
 */
export function likelyPaid(paid: Float64Array, todayMinor: number, priceToBuyAtMinor = todayMinor): Likely | null {
  const sorted = paid.toSorted()
  const mostMinor = Math.floor(priceToBuyAtMinor)
  for (const [many, of] of SAID.toReversed()) {
    const paidMinor = sorted[Math.ceil((many / of) * sorted.length) - 1] as number
    if (paidMinor < WORTH_SAYING * todayMinor && paidMinor <= mostMinor) return { many, of, paidMinor: Math.ceil(paidMinor) }
  }
  return null
}
