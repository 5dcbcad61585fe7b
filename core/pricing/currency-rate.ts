import { daysBetween, sayDate, type CivilDate } from '../dates.ts'
import { currencyExponent } from '../money.ts'

/** What one unit of a foreign currency was worth in the install's on a day, as the manager read it off a source. */
export interface CurrencyRate {
  /** ISO 4217. */
  currency: string
  /** Units of the install's currency for one of the foreign one, with at most 8 decimals. */
  rate: number
  seenOn: CivilDate
  /** Where it was read off: "the bank's noon rate". */
  source: string
}

/** Decimals of a rate: eight tell the smallest unit in use to four figures against the largest. */
export const RATE_DECIMALS = 8
const RATE_WHOLE = 10n ** BigInt(RATE_DECIMALS)

/** A rate of exchange between two of the large currencies seldom moves by more than 3 % in a month: older than that it is said to be old. Common practice. */
export const OLD_RATE_DAYS = 30

/** Whether a rate is as fine as amounts are worked out with. @example isFineRate(0.7312) // true */
export const isFineRate = (rate: number): boolean => Number(rate.toFixed(RATE_DECIMALS)) === rate

/**
 * An amount of a foreign currency in the install's, rounded half away from zero; each unit price is reckoned once, so that a line is a whole
 * number of them.
 *
 * Units: minor units of each currency, whose decimals may differ. Range: amounts 0 and above, rates above 0.
 *
 * @example homeMinor(10000, { currency: 'JPY', rate: 0.0067 }, 'USD') // 6700
 */
export function homeMinor(minor: number, { currency, rate }: Pick<CurrencyRate, 'currency' | 'rate'>, home: string): number {
  const shift = currencyExponent(home) - currencyExponent(currency)
  const steps = BigInt(Math.round(rate * Number(RATE_WHOLE))) * BigInt(minor) * 10n ** BigInt(Math.max(0, shift))
  const whole = RATE_WHOLE * 10n ** BigInt(Math.max(0, -shift))
  return Number((2n * steps + whole) / (2n * whole))
}

/** Whether a rate is said to be old on a day. */
export const isOldRate = ({ seenOn }: Pick<CurrencyRate, 'seenOn'>, asOf: CivilDate): boolean => daysBetween(seenOn, asOf) > OLD_RATE_DAYS

/**
 * A rate in words, as it is printed wherever its prices are.
 *
 * @example sayRate({ currency: 'CAD', rate: 0.7312, seenOn: '2026-10-12', source: 'noon rate' }, 'USD', '2026-10-20') // '1 CAD = 0.7312 USD, rate of Oct 12, 2026 (noon rate)'
 */
export function sayRate(rate: CurrencyRate, home: string, asOf: CivilDate): string {
  const old = isOldRate(rate, asOf) ? `, which is ${daysBetween(rate.seenOn, asOf)} days old` : ''
  return `1 ${rate.currency} = ${sayRateFigure(rate.rate)} ${home}, rate of ${sayDate(rate.seenOn)} (${rate.source})${old}`
}

/** The figure of a rate without the zeros that say nothing. @example sayRateFigure(0.00003941) // '0.00003941' */
export const sayRateFigure = (rate: number): string => rate.toFixed(RATE_DECIMALS).replace(/\.?0+$/, '')
