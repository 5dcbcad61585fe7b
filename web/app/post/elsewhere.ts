import type { PriceRecord } from '../../../core/pricing/record.ts'
import { median } from '../../../core/pricing/robust-deviation.ts'
import { sayMoney } from '../../../core/money.ts'
import type { Condition } from '../../../core/pricing/sighting.ts'

/** Stores differ in a shelf price by less than this; beyond it a slip or another size is likelier. Own. */
const FACTOR = 2
/** A sale under this share of the usual price is not believed anywhere else either (design rule 8). */
const LEAST_SALE_SHARE = 0.3

interface Seen {
  priceMinor: number
  condition: Condition
  storeId: string
}

/**
 * A price at a store that has none yet, far from what the product usually costs elsewhere: what to look at again, in words; null where it is near
 * or where there is nothing to hold it against. Used goods are held against nothing.
 *
 * @example farFromElsewhere({ priceMinor: 780, … }, recordWithShelfPrice18399, 'USD') // 'Far below the usual price elsewhere, $183.99. …'
 */
export function farFromElsewhere(
  { priceMinor, condition, storeId }: Seen,
  { views }: Pick<PriceRecord, 'views'>,
  currency: string,
): string | null {
  if (condition === 'used' || views.some((view) => view.storeId === storeId && view.regular)) return null
  const others = views.flatMap((view) => (view.storeId !== storeId && view.regular ? [view.regular.priceMinor] : []))
  if (others.length === 0) return null
  const usual = median(others)
  const least = condition === 'shelf' ? usual / FACTOR : usual * LEAST_SALE_SHARE
  if (priceMinor >= least && priceMinor <= usual * FACTOR) return null
  return `Far ${priceMinor < least ? 'below' : 'above'} the usual price elsewhere, ${sayMoney(Math.round(usual), currency)}. A slipped decimal, or another size?`
}
