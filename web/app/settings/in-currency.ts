import type { Install } from '../../../core/install.ts'
import { currencyExponent } from '../../../core/money.ts'

/**
 * The currency changed: the price of a kilowatt hour and the saving worth waiting for keep the figures that stand in their fields, now meant in the
 * new currency.
 *
 * @example inCurrency({ currency: 'USD', energyPriceMinor: 17 }, 'JPY') // { currency: 'JPY', energyPriceMinor: 0.17 }
 */
export function inCurrency(
  { currency, energyPriceMinor, leastSavingMinor }: Pick<Install, 'currency' | 'energyPriceMinor' | 'leastSavingMinor'>,
  next: string,
): Pick<Install, 'currency' | 'energyPriceMinor' | 'leastSavingMinor'> {
  const shift = currencyExponent(next) - currencyExponent(currency)
  const shifted = (minor: number): number => (shift === 0 ? minor : Number(`${minor}e${shift}`))
  return {
    currency: next,
    energyPriceMinor: shifted(energyPriceMinor),
    ...(leastSavingMinor !== undefined && { leastSavingMinor: Math.round(shifted(leastSavingMinor)) }),
  }
}
