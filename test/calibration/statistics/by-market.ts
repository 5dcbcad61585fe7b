/** A figure with the standard error that one market to another gives it. */
export interface Estimate {
  value: number
  /** Not a number where there is one market alone. */
  standardError: number
  markets: number
  cases: number
}

/** What one market adds to a ratio of two sums: of cases that hit and cases, of savings and the oracle's savings. */
export interface Share {
  above: number
  below: number
  cases: number
}

/**
 * Ratio of two sums over markets, with its standard error by market: cases of one market share its stores and its sale times, so that only markets
 * are independent. Linearised, as for any ratio of two means.
 *
 * Source: Cochran, Sampling Techniques, 3rd edition (1977), 6.4.
 *
 * @example ratioByMarket([{ above: 8, below: 10, cases: 10 }, { above: 7, below: 10, cases: 10 }]) // { value: 0.75, standardError: 0.05, … }
 */
export function ratioByMarket(markets: readonly Share[]): Estimate {
  const sum = (of: (share: Share) => number): number => markets.reduce((total, share) => total + of(share), 0)
  const below = sum((share) => share.below)
  const value = sum((share) => share.above) / below
  const squares = sum((share) => (share.above - value * share.below) ** 2)
  const n = markets.length
  return {
    value,
    standardError: n < 2 ? Number.NaN : Math.sqrt((squares * n) / (n - 1)) / Math.abs(below),
    markets: n,
    cases: sum(({ cases }) => cases),
  }
}

/** Upper end of the two-sided 95 % interval. */
export const upper95 = ({ value, standardError }: Estimate): number => value + 1.959964 * standardError
