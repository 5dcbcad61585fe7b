/** A factor may spoil an eighth of its product's last digit; several of them, and the rounding of the product, stay within one of it. Own. */
const SPOILS = 4
/** Beyond it a stated figure is wrong, and no digits make a sum of it. Own. */
const MOST_DIGITS = 9

/**
 * Decimals that a factor or divisor is told with, so that whoever takes what is printed comes to the last printed digit of the result.
 *
 * Range: positive figures; 0 for any other. Source: a product is as wrong as its factors, each in its share of itself.
 *
 * @example digitsFor(0.8125, 220.3, 0.1) // 5: half of 0.00001 in 0.8125 is 0.0014 in 220.3
 */
export function digitsFor(factor: number, result: number, lastDigit: number): number {
  const share = (SPOILS * result) / (factor * lastDigit)
  return share > 0 && Number.isFinite(share) ? Math.min(MOST_DIGITS, Math.max(0, Math.ceil(Math.log10(share)))) : 0
}
