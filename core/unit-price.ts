import { currencyExponent, currencySign, type MoneyRefusal } from './money.ts'
import { ok, refuse, type Result } from './result.ts'
import type { ReaderUnits } from './units/quantity.ts'

/** Decimals behind those of the currency: tariffs are printed to a hundredth of a cent, some to a thousandth. */
const FINER = 3
/** A tariff is shorter, written out with its sign and spaces. */
const LONGEST = 30

type Decimal = Pick<ReaderUnits, 'decimal'>

/** A figure without the zeros that say nothing, but never with fewer decimals than the currency has. */
function spell(minor: number, currency: string): string {
  const exponent = currencyExponent(currency)
  const [whole = '0', fraction = ''] = (minor / 10 ** exponent).toFixed(exponent + FINER).split('.')
  const kept = fraction.replace(/0+$/, '').padEnd(exponent, '0')
  return kept === '' ? whole : `${whole}.${kept}`
}

/** Spells a price of one unit of something for its field, without the sign. @example spellUnitPrice(17.34, 'USD', { decimal: '.' }) // '0.1734' */
export const spellUnitPrice = (minor: number, currency: string, { decimal }: Decimal): string =>
  spell(minor, currency).replace('.', decimal)

/**
 * A price of one unit of something, like a kilowatt hour, in words: it may be finer than the smallest coin.
 *
 * Units: minor units, with a fraction. @example sayUnitPrice(17.34, 'USD') // '$0.1734'
 */
export const sayUnitPrice = (minor: number, currency: string): string => `${currencySign(currency)}${spell(minor, currency)}`

/**
 * Reads such a price as a person types it: "0.1734", "$0.17", "0,1734".
 *
 * Units: minor units out, with a fraction. Errors: no price; more decimals than a tariff has; "1,234", which can be read two ways unless the
 * separator is the reader's decimal sign.
 *
 * @example parseUnitPrice('0.1734', 'USD', { decimal: '.' }) // 17.34
 */
export function parseUnitPrice(text: string, currency: string, { decimal }: Decimal): Result<number, MoneyRefusal> {
  const typed = text.trim()
  const bare = typed.replace(currencySign(currency).trim(), '').replace(currency, '').replace(/\s/g, '')
  const [, whole, sign, fraction = ''] = /^(\d+)(?:([.,])(\d+))?$/.exec(bare) ?? []
  const like = spellUnitPrice(17.34, 'USD', { decimal })
  if (/^[-\u2212]/.test(typed))
    return refuse({ code: 'not_a_price', words: `"${typed.slice(0, LONGEST)}" is below 0. Write what one costs, like ${like}, or 0.` })
  if (typed.length > LONGEST || whole === undefined)
    return refuse({ code: 'not_a_price', words: `"${typed.slice(0, LONGEST)}" is not a price. Write digits, like ${like}.` })
  if (sign !== undefined && sign !== decimal && /^[1-9]\d{0,2}$/.test(whole) && fraction.length === 3)
    return refuse({ code: 'ambiguous', words: `"${typed}" can be read two ways. Write it without the thousands sign.` })
  const most = currencyExponent(currency) + FINER
  if (fraction.replace(/0+$/, '').length > most)
    return refuse({ code: 'too_many_decimals', words: `At most ${most} decimals, like ${like}.` })
  // Shifting the point in the text and not by a product: 0.1734 times 100 is 17.340000000000003.
  const shifted = fraction.padEnd(most, '0').slice(0, most)
  const exponent = currencyExponent(currency)
  return ok(Number(`${whole}${shifted.slice(0, exponent)}.${shifted.slice(exponent)}`))
}
