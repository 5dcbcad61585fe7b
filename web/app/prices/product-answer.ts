import { daysBetween, sayDate, yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { PriceRecord } from '../../../core/pricing/record.ts'
import { isPrinted, summaryOf } from './price-summary.ts'

/**
 * The one sentence that answers "is today's price a good one", from the record alone: no forecast.
 *
 * @example answerOf(record, 'USD') // { title: 'On sale at Upriver to Oct 25', words: '$38.00 under its regular price there. …' }
 */
export function answerOf(record: PriceRecord, currency: string): { title: string; words: string } {
  const { full, today, best } = summaryOf(record.views)
  if (!today)
    return {
      title: 'No price is known today',
      words: 'No accepted sighting of new goods is younger than 180 days. The next one posted answers it.',
    }
  const storeName = record.sightings.find((row) => row.storeId === today.storeId)?.storeName ?? 'a store'
  const say = (minor: number): string => sayMoney(minor, currency)
  const day = (date: string): string => sayDate(date, yearOf(record.asOf))
  const { view } = today
  const sale = view.condition !== 'shelf'
  const until = view.holdsUntil && view.lastDayStated ? ` to ${day(view.holdsUntil)}` : ''
  const printed = isPrinted(full, today)
  const title = sale
    ? `${view.condition === 'sale' ? 'On sale' : 'On clearance'} at ${storeName}${until}`
    : printed
      ? `${say(view.priceMinor)} at ${storeName}: the regular price that a sale tag named`
      : `${say(view.priceMinor)} at ${storeName}, its regular price`
  const under =
    full && full.view.priceMinor > view.priceMinor ? `${say(full.view.priceMinor - view.priceMinor)} under its regular price there. ` : ''
  const than = !best
    ? ''
    : best.priceMinor >= view.priceMinor
      ? 'No lower price was seen in the last 12 months.'
      : `The lowest in 12 months was ${say(best.priceMinor)}, ${day(best.seenOn)}.`
  const old = daysBetween(view.seenOn, record.asOf)
  const age = view.age === 'ageing' ? ` The sighting is ${old} days old: ask before you rely on it.` : ''
  const tag = printed ? `The tag of a sale seen ${day(view.seenOn)} names it; nobody has seen it charged since. ` : ''
  return { title, words: `${tag}${under}${than}${age}` }
}
