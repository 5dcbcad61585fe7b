/** Digits a trade item number may have; a shorter in-house code is not one. */
const LENGTHS = [8, 12, 13, 14]

/**
 * Whether a trade item number (GTIN-8, -12, -13 or -14) has the right check digit. Digits only: strip spaces and hyphens first.
 *
 * Weights 3, 1, 3, 1 … run from the rightmost data digit, so that the same rule holds for every length.
 * Source: GS1 General Specifications, check digit calculation; worked example 6291041500213.
 *
 * @example isGtin('6291041500213') // true
 */
export function isGtin(digits: string): boolean {
  if (!/^\d+$/.test(digits) || !LENGTHS.includes(digits.length)) return false
  return gtinCheckDigit(digits.slice(0, -1)) === Number(digits.slice(-1))
}

/** The check digit that belongs after these data digits. @example gtinCheckDigit('629104150021') // 3 */
export function gtinCheckDigit(data: string): number {
  const sum = data
    .split('')
    .reverse()
    .reduce((total, digit, index) => total + Number(digit) * (index % 2 === 0 ? 3 : 1), 0)
  return (10 - (sum % 10)) % 10
}

/** What a person types or a scanner adds, taken away; letters stay, so that they are refused and not lost. @example bareGtin('6 291041-500213') // '6291041500213' */
export const bareGtin = (typed: string): string => typed.replace(/[\s-]/g, '')
