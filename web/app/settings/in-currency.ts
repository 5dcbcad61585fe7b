import type { Install } from '../../../core/install.ts'
import { currencyExponent } from '../../../core/money.ts'

/**
 * The currency changed: the price of a kilowatt hour keeps the figure that stands in its field, now meant in the new currency.
 *
 * @example inCurrency({ currency: 'USD', energyPriceMinor: 17 }, 'JPY') // { currency: 'JPY', energyPriceMinor: 0.17 }
 */
export function inCurrency(
  { currency, energyPriceMinor }: Pick<Install, 'currency' | 'energyPriceMinor'>,
  next: string,
): Pick<Install, 'currency' | 'energyPriceMinor'> {
  const shift = currencyExponent(next) - currencyExponent(currency)
  return { currency: next, energyPriceMinor: shift === 0 ? energyPriceMinor : Number(`${energyPriceMinor}e${shift}`) }
}
