import { daysBetween, type CivilDate } from '../../dates.ts'

const EPOCH: CivilDate = '1970-01-01'

/** A few thousand days are asked for two million times. */
const known = new Map<CivilDate, number>()

/** Days since 1 January 1970. @example dayNumber('1970-02-01') // 31 */
export function dayNumber(date: CivilDate): number {
  const day = known.get(date)
  if (day !== undefined) return day
  const counted = daysBetween(EPOCH, date)
  // Bounded: days of a record are few, dates of strangers' making are not.
  if (known.size < 40_000) known.set(date, counted)
  return counted
}
