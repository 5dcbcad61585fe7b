import { sayDate, type CivilDate } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import { sayBuyAtTag } from '../../../core/pricing/buy-at-tag.ts'
import type { LineOutlookView } from '../../../core/pricing/outlook-view.ts'

/** What is known of a product's price to buy at, for the day and the place that a watch names; or why nothing is. */
export type BuyAtKnown =
  | { state: 'told'; line: BuyAtLine; until: CivilDate; anywhere: boolean }
  | { state: 'no_day' | 'nowhere' | 'busy' | 'failed' | 'not_learned' | 'own_list' | 'each_its_own' }

export type BuyAtLine = Pick<LineOutlookView, 'title' | 'payTodayMinor' | 'priceToBuyAtMinor' | 'buyAtTagMinor' | 'tagsAgree'>

const WHY_NONE: Record<Exclude<BuyAtKnown['state'], 'told'>, string> = {
  no_day: 'Choose the day it is wanted by: the price to buy at depends on it.',
  nowhere: 'No store is in this region: there is nowhere to buy it, and no price to buy at.',
  busy: 'The price to buy at is being worked out.',
  failed: 'The price to buy at could not be worked out just now.',
  not_learned: 'What the record says of the weeks ahead is being worked out: the price to buy at is known in a minute.',
  own_list: 'Prices here are those of our own list, which says itself when a sale comes: there is no price to buy at.',
  each_its_own: 'Each product has its own: what the record says is worth taking for it on the day.',
}

/** A price that is there already is no price to wait for. */
export const isUnder = ({ payTodayMinor: today, priceToBuyAtMinor: buyAt }: BuyAtLine): boolean =>
  today !== null && buyAt !== null && today <= buyAt

/**
 * Today's price and the price to buy at in words, both with tax, as the product's page and the watch itself have them; else why there is none.
 *
 * @example sayBuyAt({ state: 'told', until: '2027-01-25', … }, 'USD', 2026) // 'Today a new one costs $189.00 with tax at the least. The price to buy at, wanted by Jan 25, 2027, is …'
 */
export function sayBuyAt(known: BuyAtKnown, currency: string, thisYear: number): string {
  if (known.state !== 'told') return WHY_NONE[known.state]
  const { line, until, anywhere } = known
  const { payTodayMinor: today, priceToBuyAtMinor: buyAt, buyAtTagMinor: tagMinor, tagsAgree } = line
  if (today === null || buyAt === null)
    return `Nobody has reported a price of a new one ${anywhere ? '' : 'there '}within 180 days: there is no price to buy at yet.`
  const money = (minor: number): string => `${sayMoney(minor, currency)} with tax`
  const tag = tagMinor === null ? '' : sayBuyAtTag({ priceToBuyAtMinor: buyAt, buyAtTagMinor: tagMinor, tagsAgree }, currency)
  const day = sayDate(until, thisYear)
  const told = isUnder(line)
    ? `${line.title}: that is no more than the price to buy at, ${money(buyAt)}, if it is wanted by ${day}: it can be bought now.`
    : `The price to buy at, wanted by ${day}, is ${money(buyAt)}.`
  return `Today a new one costs ${money(today)} ${anywhere ? 'at the least' : 'there'}. ${told} ${tag}`.trim()
}
