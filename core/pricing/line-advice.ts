import { addDays, sayDate, sayWeekday, yearOf, type CivilDate } from '../dates.ts'
import { sayMoney } from '../money.ts'
import type { ByDate } from './by-date.ts'
import type { OutlookView } from './outlook-view.ts'
import type { Likely } from './outlook/likely.ts'
import type { Advice } from './outlook/line-outlook.ts'
import type { BuildCost, LineCost } from './tiers.ts'

/** What to do about one bought line by the day of the need; frozen with the revision as it was told. */
export interface LineAdvice {
  lineId: string
  advice: Advice
  /** The advice in words, as on the product's page. */
  title: string
  words: string
  /** Why, in one sentence; absent in what was issued before it was told. */
  reason?: string
  /** Where it costs less today than it is to be bought at, and why it is not bought there; absent where it does nowhere. */
  elsewhere?: string
  /** The one price to act on: of one unit as its tag shows it, minor units. To wait: buy at this or under; else today's. Null where none is known. */
  tagMinor: number | null
  /** To wait: so many in so many pay at most this for the line, with tax; null where nothing of the kind can be said. */
  likely: Likely | null
  /** What the tag of one then shows at most; absent in what was issued before it was told, null where tags differ. */
  likelyTagMinor?: number | null
  /** Last day for it: of the sale that runs, or the day of the need; null where there is nothing to do yet. */
  by: CivilDate | null
  /** Last day on which the store takes back what is bought today, where that is before the day of the need; else null. */
  returnsEndOn: CivilDate | null
}

/** What is expected of a build: in sum, where it can be said, and line by line. */
export interface ExpectedBuild {
  byDate: ByDate | null
  advice: LineAdvice[]
}

/**
 * The advice of each line that an outlook was asked for, in the order of the build. An outlook of `outlookLines` of the same cost; empty where nothing
 * was learnt yet. `elsewhereOf` says where a line costs less than a price on the tag, and why it is not bought there.
 *
 * @example adviceOf(cost, outlook)[0] // { lineId: 'x', advice: 'wait', tagMinor: 17800, by: '2026-12-20', … }
 */
export function adviceOf(
  { lines }: Pick<BuildCost, 'lines'>,
  outlook: Pick<OutlookView, 'lines' | 'until' | 'asOf'>,
  elsewhereOf: (line: LineCost, tagMinor: number) => string | null = () => null,
): LineAdvice[] {
  const asked = lines.filter(({ storeId }) => storeId !== null)
  return asked.flatMap((line, index): LineAdvice[] => {
    const told = outlook.lines[index]
    if (!told) return []
    const { advice, title, words, reason, likely, likelyTagMinor, payTodayMinor, noHurryUntil, buyAtTagMinor } = told
    const known = payTodayMinor !== null
    const returns = known && advice !== 'wait' && line.returnDays ? addDays(outlook.asOf, line.returnDays) : null
    const tagMinor = !known ? null : advice === 'wait' ? buyAtTagMinor : line.unitTodayMinor
    const elsewhere = tagMinor === null ? null : elsewhereOf(line, tagMinor)
    return [
      {
        lineId: line.lineId,
        advice,
        title,
        words,
        reason,
        ...(elsewhere !== null && { elsewhere }),
        likely,
        likelyTagMinor,
        tagMinor,
        by: !known ? null : advice === 'buy_now' ? outlook.asOf : advice === 'no_hurry' ? noHurryUntil : outlook.until,
        returnsEndOn: returns !== null && returns < outlook.until ? returns : null,
      },
    ]
  })
}

export interface ActWords {
  /** "Wait", "Buy now", "No hurry", "Buy when convenient", "No price known" */
  act: string
  /** "178.00 or under", "189.00"; empty where none is known. */
  price: string
  /** "by Dec 20 at the latest", "until Sun, Nov 29"; empty where there is none. */
  day: string
}

/** The advice of a line as a table tells it. @example sayAct(advice, 'USD', 2026).price // '178.00 or under' */
export function sayAct({ advice, tagMinor, by }: LineAdvice, currency: string, thisYear: number): ActWords {
  if (tagMinor === null || by === null) return { act: 'No price known', price: '', day: '' }
  const price = sayMoney(tagMinor, currency, { symbol: false })
  switch (advice) {
    case 'buy_now':
      return { act: 'Buy now', price, day: 'today' }
    case 'no_hurry':
      return { act: 'No hurry', price, day: `until ${sayWeekday(by, thisYear)}` }
    case 'buy_when_convenient':
      return { act: 'Buy when convenient', price, day: `by ${sayDate(by, thisYear)}` }
    case 'wait':
      return { act: 'Wait', price: `${price} or under`, day: `by ${sayDate(by, thisYear)} at the latest` }
  }
}

/** That a purchase of today can no longer be taken back when it is needed; empty where it can. */
export function sayReturns({ returnsEndOn }: LineAdvice, holdsWater: boolean): string {
  if (returnsEndOn === null) return ''
  const day = sayDate(returnsEndOn, yearOf(returnsEndOn))
  return holdsWater
    ? `Bought today it goes back until ${day} only: fill it for its leak test before.`
    : `Bought today it goes back until ${day} only: try it before.`
}

/** A plain note: no reckoning counts on what a store may do. */
export const RETURN_NOTE =
  'Seen cheaper within the store’s return days, a thing that is bought and unused may go back and be bought again: ask the store. No figure here counts on it.'
