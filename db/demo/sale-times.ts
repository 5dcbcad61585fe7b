import { addDays, yearOf, type CivilDate } from '../../core/dates.ts'

/** When sales of the scenario happen. */
export type DemoSaleTime =
  { kind: 'yearly'; month: number; day: number; lengthDays: number } | { kind: 'late_november'; lengthDays: number }

/** The times that all stores know; each runs some of them. */
export const COMMON_SALE_TIMES: readonly DemoSaleTime[] = [
  { kind: 'late_november', lengthDays: 5 },
  { kind: 'yearly', month: 4, day: 4, lengthDays: 10 },
  { kind: 'yearly', month: 7, day: 8, lengthDays: 9 },
]

export const COMMON_NAMES = ['Late November sale', 'Spring sale', 'Summer sale']

const two = (value: number): string => String(value).padStart(2, '0')

/**
 * First and last day of a sale time in a year. Late November begins on the day after the fourth Thursday.
 *
 * @example windowIn({ kind: 'late_november', lengthDays: 5 }, 2026) // { first: '2026-11-27', last: '2026-12-01' }
 */
export function windowIn(time: DemoSaleTime, year: number): { first: CivilDate; last: CivilDate } {
  const first = time.kind === 'yearly' ? `${year}-${two(time.month)}-${two(time.day)}` : dayAfterFourthThursday(year)
  return { first, last: addDays(first, time.lengthDays - 1) }
}

function dayAfterFourthThursday(year: number): CivilDate {
  const first = new Date(Date.UTC(year, 10, 1)).getUTCDay()
  const firstThursday = 1 + ((4 - first + 7) % 7)
  return `${year}-11-${two(firstThursday + 22)}`
}

/** Every window of a sale time that touches the days from `from` to `to`. */
export function windowsBetween(time: DemoSaleTime, from: CivilDate, to: CivilDate): Array<{ first: CivilDate; last: CivilDate }> {
  const years = Array.from({ length: yearOf(to) - yearOf(from) + 2 }, (_, index) => yearOf(from) - 1 + index)
  return years.map((year) => windowIn(time, year)).filter(({ first, last }) => last >= from && first <= to)
}
