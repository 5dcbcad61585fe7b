import { ok, refuse, type Result } from './result.ts'

/**
 * Decimals of currencies where they are not 2, by ISO 4217. An own table: the runtime's number formatting says 0 for some
 * that the standard gives 2 (HUF, IDR, COP).
 */
const EXPONENTS: Record<string, number> = {
  BHD: 3, IQD: 3, JOD: 3, KWD: 3, LYD: 3, OMR: 3, TND: 3,
  BIF: 0, CLP: 0, DJF: 0, GNF: 0, ISK: 0, JPY: 0, KMF: 0, KRW: 0, PYG: 0, RWF: 0, UGX: 0, VND: 0, VUV: 0, XAF: 0, XOF: 0, XPF: 0,
} // prettier-ignore

const SYMBOLS: Record<string, string> = { USD: '$', CAD: '$', AUD: '$', NZD: '$', GBP: '£', EUR: '€', JPY: '¥' }

/** A figure without its sign reads as an amount; the minus is U+2212 so that it lines up with digits. */
const MINUS = '\u2212'

/** Largest amount taken anywhere, in minor units: ten million of a two-decimal currency. Beyond it sums could leave the safe integers. */
export const MOST_MINOR = 1_000_000_000

/** Decimals of a currency. @example currencyExponent('JPY') // 0 */
export const currencyExponent = (currency: string): number => EXPONENTS[currency] ?? 2

/**
 * Sign or code a reader sees before an amount; beside amounts of `home` another currency is told by its code, as several share a sign.
 *
 * @example currencySign('USD') // '$'
 * @example currencySign('CAD', 'USD') // 'CAD '
 */
export const currencySign = (currency: string, home = currency): string =>
  home === currency ? (SYMBOLS[currency] ?? `${currency} `) : `${currency} `

/**
 * An amount in words for screen and paper.
 *
 * Units: minor units in. Beside amounts of `home` another currency is told by its code, as several share a sign.
 *
 * @example sayMoney(110703, 'USD') // '$1,107.03'
 * @example sayMoney(1200, 'CAD', { home: 'USD' }) // 'CAD 12.00'
 */
export function sayMoney(minor: number, currency: string, options: { symbol?: boolean; home?: string } = {}): string {
  const exponent = currencyExponent(currency)
  const digits = String(Math.abs(minor)).padStart(exponent + 1, '0')
  const whole = digits.slice(0, digits.length - exponent).replace(/\B(?=(\d{3})+$)/g, ',')
  const fraction = exponent > 0 ? `.${digits.slice(-exponent)}` : ''
  const sign = options.symbol === false ? '' : currencySign(currency, options.home)
  return `${minor < 0 ? MINUS : ''}${sign}${whole}${fraction}`
}

/**
 * An expected amount in whole units of its currency: it is not exact to the smallest coin.
 *
 * Units: minor units in. @example sayWholeMoney(110760, 'USD') // '$1,108'
 */
export function sayWholeMoney(minor: number, currency: string): string {
  const whole = 10 ** currencyExponent(currency)
  const said = sayMoney(divideRounded(minor, whole) * whole, currency)
  return whole === 1 ? said : said.slice(0, -currencyExponent(currency) - 1)
}

/** No price is longer, written out with sign, spaces and separators. */
const LONGEST = 40

export type MoneyRefusal = { code: 'not_a_price' | 'too_many_decimals' | 'ambiguous' | 'too_large'; words: string }

/**
 * Reads an amount as a person types it: "159", "159.00", "$1,107.03", "1.107,03", "159,5".
 *
 * Units:  minor units out; `decimal` is the reader's decimal sign, left out for a file, whose writer is not known.
 * Errors: letters, a lone separator followed by three digits ("1,234" may be either) unless it is not the reader's decimal sign, more decimals than the currency has.
 *
 * @example parseMoney('159.5', 'USD') // 15950
 */
export function parseMoney(text: string, currency: string, decimal?: '.' | ','): Result<number, MoneyRefusal> {
  const exponent = currencyExponent(currency)
  if (text.length > LONGEST) return refuse({ code: 'not_a_price', words: 'That is too long for a price. Write digits, like 159.00.' })
  const bare = text
    .trim()
    .replace(currencySign(currency).trim(), '')
    .replace(currency, '')
    .replace(/[\s\u00a0]/g, '')
  if (!/^\d[\d.,]*$/.test(bare))
    return refuse({ code: 'not_a_price', words: `"${text.trim()}" is not a price. Write digits, like 159.00.` })
  const parts = splitDecimals(bare, exponent, decimal)
  if (parts === null)
    return refuse({ code: 'ambiguous', words: `"${text.trim()}" can be read two ways. Write it without the thousands sign.` })
  const fraction = parts.fraction.replace(/0+$/, '')
  if (fraction.length > exponent) {
    return refuse({
      code: 'too_many_decimals',
      words: exponent === 0 ? `${currency} has no decimals.` : `At most ${exponent} decimals, like ${sayMoney(1999, currency)}.`,
    })
  }
  const minor = Number(parts.whole + fraction.padEnd(exponent, '0'))
  if (minor > MOST_MINOR) return refuse({ code: 'too_large', words: `At most ${sayMoney(MOST_MINOR, currency)}.` })
  return ok(minor)
}

/**
 * A lone separator before three digits may group or divide: "1,234" and "1.234" are asked about, unless the currency leaves one reading only,
 * having no decimals, or three of them and the reader's decimal sign. The sign that is not the reader's decimal one groups, as it does on every screen.
 */
function splitDecimals(bare: string, exponent: number, decimal: '.' | ',' | undefined): { whole: string; fraction: string } | null {
  const last = Math.max(bare.lastIndexOf('.'), bare.lastIndexOf(','))
  if (last < 0) return { whole: bare, fraction: '' }
  const separator = bare[last] ?? ''
  const before = bare.slice(0, last)
  const after = bare.slice(last + 1)
  const repeated = before.includes(separator)
  const grouped = /^\d{1,3}([.,]\d{3})*$/.test(before)
  if (repeated) return /^\d{1,3}([.,]\d{3})+$/.test(bare) && !mixed(bare) ? { whole: bare.replace(/[.,]/g, ''), fraction: '' } : null
  if (/[.,]/.test(before)) return grouped ? { whole: before.replace(/[.,]/g, ''), fraction: after } : null
  if (after.length === 3 && exponent === 0) return { whole: before + after, fraction: '' }
  const groups = decimal !== undefined && separator !== decimal && exponent < 3 && /^[1-9]\d{0,2}$/.test(before)
  if (after.length === 3 && groups) return { whole: before + after, fraction: '' }
  if (after.length === 3 && !(exponent === 3 && separator === (decimal ?? '.'))) return null
  return { whole: before, fraction: after }
}

const mixed = (text: string): boolean => text.includes('.') && text.includes(',')

/** Integer division rounded half away from zero. Units: any; divisor > 0. @example divideRounded(-25, 10) // -3 */
export function divideRounded(dividend: number, divisor: number): number {
  const magnitude = Math.floor((2 * Math.abs(dividend) + divisor) / (2 * divisor))
  return dividend < 0 ? -magnitude : magnitude
}

/** Steps of a tax rate in one hundredth of a per cent: 8.875 % is 887.5 basis points, and no rate in force is printed finer than 4 decimals of a per cent. */
export const RATE_STEPS = 100
/** The whole, in the steps of a rate. */
export const WHOLE_RATE = 10_000 * RATE_STEPS

/** A rate as a whole number of its steps, so that what follows is arithmetic of integers. @example rateSteps(887.5) // 88750 */
export const rateSteps = (basisPoints: number): number => Math.round(basisPoints * RATE_STEPS)

/** `minor` times `steps` over `whole`, rounded half away from zero; in two parts, so that no product leaves the safe integers. */
function shareOf(minor: number, steps: number, whole: number): number {
  const amount = Math.abs(minor)
  const share = Math.floor(amount / whole) * steps + divideRounded((amount % whole) * steps, whole)
  return minor < 0 ? -share : share
}

/**
 * Tax on an amount without tax, rounded once, half away from zero. Call it once a receipt and rate.
 *
 * Units: minor units and hundredths of a per cent, which may have two decimals of their own. @example taxOn(10000, 887.5) // 888
 */
export const taxOn = (minor: number, basisPoints: number): number => shareOf(minor, rateSteps(basisPoints), WHOLE_RATE)

/** Tax contained in an amount that includes it. Units as `taxOn`. @example taxWithin(10600, 600) // 600 */
export const taxWithin = (minor: number, basisPoints: number): number =>
  shareOf(minor, rateSteps(basisPoints), WHOLE_RATE + rateSteps(basisPoints))
