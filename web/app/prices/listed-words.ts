import { sayDate } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { ListedPrice } from '../../../core/pricing/listed-price.ts'

/** How many there are, to a member whether there are any. @example sayStock({ inStock: false }) // 'none' */
export const sayStock = ({ inStock, stockCount }: Pick<ListedPrice, 'inStock' | 'stockCount'>): string =>
  inStock === null ? 'not counted' : inStock ? `${stockCount ?? 'yes'}` : 'none'

/** The same in a sentence; empty where it is not counted. @example sayInStock({ inStock: true, stockCount: 4 }) // '4 in stock' */
export const sayInStock = ({ inStock, stockCount }: Pick<ListedPrice, 'inStock' | 'stockCount'>): string =>
  inStock === null ? '' : inStock ? (stockCount == null ? 'in stock' : `${stockCount} in stock`) : 'none in stock'

/**
 * What our own list asks, in one sentence and what follows.
 *
 * @example sayListed({ priceMinor: 2990, fullMinor: 3990, saleUntil: '2026-12-05', … }, 'USD', 2026).title // 'On sale here to Dec 5: $29.90'
 */
export function sayListed(listed: ListedPrice, currency: string, thisYear: number): { title: string; words: string } {
  const { priceMinor, fullMinor, saleUntil, validFrom } = listed
  const say = (minor: number): string => sayMoney(minor, currency)
  const title =
    fullMinor === null
      ? `${say(priceMinor)}, our regular price`
      : `On sale here${saleUntil === null ? '' : ` to ${sayDate(saleUntil, thisYear)}`}: ${say(priceMinor)}`
  const under = fullMinor === null ? '' : `${say(fullMinor - priceMinor)} under our regular price, ${say(fullMinor)}. `
  const stock = sayInStock(listed)
  return {
    title,
    words: `${under}In our price list from ${sayDate(validFrom, thisYear)}.${stock && ` ${stock[0]?.toUpperCase()}${stock.slice(1)}.`}`,
  }
}
