import { sayDate, type CivilDate } from '../dates.ts'
import type { LineCost } from './tiers.ts'

/** Sale prices of a build that are over before its quote is. */
export interface SalesEnding {
  count: number
  firstOn: CivilDate
  lastOn: CivilDate
  /** True where a store prints no last day of one of them: then the days are the rule's. */
  about?: boolean
}

/**
 * Lines whose price is a sale that ends before a day.
 *
 * Errors: null where every price holds to that day, as far as it is known: a shelf price has no end.
 *
 * @example salesEndingBefore(build.cost.lines, '2026-12-09') // { count: 2, firstOn: '2026-12-02', lastOn: '2026-12-02' }
 */
export function salesEndingBefore(
  lines: ReadonlyArray<Pick<LineCost, 'holdsUntil'> & Partial<Pick<LineCost, 'lastDayStated'>>>,
  day: CivilDate,
): SalesEnding | null {
  const ending = lines.filter(({ holdsUntil }) => holdsUntil !== null && holdsUntil < day)
  const ends = ending.flatMap(({ holdsUntil }) => holdsUntil ?? []).sort()
  const [firstOn, lastOn] = [ends[0], ends.at(-1)]
  if (firstOn === undefined || lastOn === undefined) return null
  const about = ending.some(({ lastDayStated }) => lastDayStated === false)
  return { count: ends.length, firstOn, lastOn, ...(about && { about }) }
}

/** @example sayUntil({ count: 2, firstOn: '2026-12-02', lastOn: '2026-12-05' }, 2026) // 'Dec 2 to Dec 5' */
export function sayUntil({ firstOn, lastOn, about }: SalesEnding, thisYear: number): string {
  const days = firstOn === lastOn ? sayDate(lastOn, thisYear) : `${sayDate(firstOn, thisYear)} to ${sayDate(lastOn, thisYear)}`
  return about ? `about ${days}` : days
}

/** @example saySalesEnding({ count: 2, firstOn: '2026-12-02', lastOn: '2026-12-05' }, 2026) // 'Sale prices of 2 parts hold only until Dec 2 to Dec 5.' */
export function saySalesEnding(ending: SalesEnding, thisYear: number): string {
  const { count } = ending
  const until = sayUntil(ending, thisYear)
  return count === 1 ? `The sale price of 1 part holds only until ${until}.` : `Sale prices of ${count} parts hold only until ${until}.`
}
