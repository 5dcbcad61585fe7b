import { sayWeekday } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { LineOutlookView } from '../../../core/pricing/outlook-view.ts'

type Line = Pick<LineOutlookView, 'onSale' | 'saleLastDay' | 'chanceOfSale' | 'payTodayMinor' | 'basis'>

/**
 * What stands beside the advice about a sale. One that runs is told as that: beside it a chance of one would read as a contradiction. Null where too
 * little is recorded to say whether one comes: the words say so, and a figure would say otherwise.
 */
export function saleFact(
  { onSale, saleLastDay, chanceOfSale, payTodayMinor, basis }: Line,
  currency: string,
  year: number,
): { head: string; told: string } | null {
  if (!onSale) return basis === 'too_little' ? null : { head: 'Chance of a sale by then', told: sayChance(chanceOfSale) }
  const price = payTodayMinor === null ? '' : `${sayMoney(payTodayMinor, currency)} with tax`
  return {
    head: 'On sale now',
    told: `${price}${saleLastDay === null ? ', last day not printed' : ` to ${sayWeekday(saleLastDay, year)}`}`,
  }
}

/** A chance in the steps that a forecast like this can tell apart. @example sayChance(0.43) // 'about 4 in 10' */
export function sayChance(chance: number): string {
  const tenths = Math.round(chance * 10)
  if (tenths <= 0) return 'less than 1 in 20'
  return tenths >= 10 ? 'more than 19 in 20' : `about ${tenths} in 10`
}
