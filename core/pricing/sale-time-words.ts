import { sayDate, sayWeekday, yearOf, type CivilDate } from '../dates.ts'
import type { SaleDays, SaleRunRecord, SaleTime, SaleTimeRule } from './sale-time.ts'

/** "Fri, Nov 27 to Tue, Dec 1"; the year where it is not `thisYear`. */
export function sayDays({ first, last }: SaleDays, thisYear: number): string {
  return first === last ? sayWeekday(first, thisYear) : `${sayWeekday(first, thisYear)} to ${sayWeekday(last, thisYear)}`
}

/**
 * What the record says of one past run, in a sentence. A run that nobody reported from is not told as one without a sale.
 *
 * @example sayRun({ first: '2025-11-28', last: '2025-12-02', sightings: 41, products: 30, stores: 6, medianDepth: 0.21 }, 2026)
 * // 'Nov 28 to Dec 2, 2025: 41 sale prices of 30 products at 6 stores, the middle one 21 % off.'
 */
export function sayRun(run: SaleRunRecord, thisYear: number): string {
  const { first, last, sightings, products, stores, medianDepth } = run
  const days = sayShortDays(first, last, thisYear)
  if (sightings === 0) return `${days}: nobody reported a sale price.`
  const depth = medianDepth === null ? '' : `, the middle one ${Math.round(100 * medianDepth)}\u00a0%\u00a0off`
  return `${days}: ${counted(sightings, 'sale price', 'sale prices')} of ${counted(products, 'product', 'products')} at ${counted(stores, 'store', 'stores')}${depth}.`
}

function sayShortDays(first: CivilDate, last: CivilDate, thisYear: number): string {
  const year = yearOf(first) === yearOf(last) && yearOf(last) !== thisYear ? yearOf(first) : thisYear
  const end = sayDate(last, thisYear)
  return first === last ? end : `${sayDate(first, year)} to ${end}`
}

const counted = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`

/** When it begins, as a line of a list: "1 day after Thanksgiving Day", "each year on Apr 4", "on listed days". */
export function sayWhen(when: SaleTimeRule): string {
  if (when.kind === 'dates') return when.firstDays.length === 1 ? 'on a listed day' : 'on listed days'
  if (when.kind === 'holiday') return sayHoliday(when)
  const yearly = yearlyDayOf(when)
  return yearly ? `each year on ${sayDate(`2000-${yearly}`, 2000)}` : 'by a calendar rule'
}

function sayHoliday({ holiday, offsetDays }: Extract<SaleTimeRule, { kind: 'holiday' }>): string {
  if (offsetDays === 0) return `on ${holiday}`
  const days = counted(Math.abs(offsetDays), 'day', 'days')
  return `${days} ${offsetDays > 0 ? 'after' : 'before'} ${holiday}`
}

/** Month and day of a rule that says no more than "each year on that day": `04-04`; null for any other. */
export function yearlyDayOf({ rule }: { rule: string }): string | null {
  const found = /^FREQ=YEARLY;BYMONTH=(\d{1,2});BYMONTHDAY=(\d{1,2})$/.exec(rule)
  const [month, day] = [found?.[1], found?.[2]]
  return month === undefined || day === undefined ? null : `${month.padStart(2, '0')}-${day.padStart(2, '0')}`
}

/** The rule of RFC 5545 for each year on that day. @example yearlyRule('04-04') // 'FREQ=YEARLY;BYMONTH=4;BYMONTHDAY=4' */
export function yearlyRule(monthDay: string): string {
  const [month, day] = monthDay.split('-').map(Number)
  return `FREQ=YEARLY;BYMONTH=${month};BYMONTHDAY=${day}`
}

/** What a list says under the name: when it begins, how long it lasts. */
export const sayPlan = ({ when, lengthDays }: Pick<SaleTime, 'when' | 'lengthDays'>): string =>
  `${sayWhen(when)}, for ${counted(lengthDays, 'day', 'days')}`
