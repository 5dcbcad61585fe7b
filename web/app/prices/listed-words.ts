import { sayDate } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { ListedPrice } from '../../../core/pricing/listed-price.ts'

/** How many there are. @example sayStock({ stockCount: 0 }) // 'none' */
export const sayStock = ({ stockCount }: Pick<ListedPrice, 'stockCount'>): string =>
  stockCount === null ? 'not counted' : stockCount === 0 ? 'none' : `${stockCount}`

/**
 * What our own list asks, in one sentence and what follows.
 *
 * @example sayListed({ priceMinor: 2990, fullMinor: 3990, saleUntil: '2026-12-05', … }, 'USD', 2026).title // 'On sale here to Dec 5: $29.90'
 */
export function sayListed(
  { priceMinor, fullMinor, saleUntil, validFrom, stockCount }: ListedPrice,
  currency: string,
  thisYear: number,
): { title: string; words: string } {
  const say = (minor: number): string => sayMoney(minor, currency)
  const title =
    fullMinor === null
      ? `${say(priceMinor)}, our regular price`
      : `On sale here${saleUntil === null ? '' : ` to ${sayDate(saleUntil, thisYear)}`}: ${say(priceMinor)}`
  const under = fullMinor === null ? '' : `${say(fullMinor - priceMinor)} under our regular price, ${say(fullMinor)}. `
  const stock = stockCount === null ? '' : stockCount === 0 ? ' None in stock.' : ` ${stockCount} in stock.`
  return { title, words: `${under}In our price list from ${sayDate(validFrom, thisYear)}.${stock}` }
}
