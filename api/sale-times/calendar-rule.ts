// oxlint-disable-next-line import/default -- the package is CommonJS where Node loads it: its default is the whole of it
import rrule from 'rrule'
import { addDays, type CivilDate } from '../../core/dates.ts'

const { RRule } = rrule

const listOf = (number: string): string => `${number}(,${number}){0,30}`
const MONTH = '([1-9]|1[0-2])'
const MONTH_DAY = '-?([1-9]|[12]\\d|3[01])'
const WEEK = '-?([1-9]|[1-4]\\d|5[0-3])'
const YEAR_DAY = '-?([1-9]|[1-9]\\d|[12]\\d\\d|3[0-5]\\d|36[0-6])'
const WEEKDAY = '([+-]?([1-9]|[1-4]\\d|5[0-3]))?(MO|TU|WE|TH|FR|SA|SU)'
const PARTS = [
  'INTERVAL=[1-9]\\d{0,2}',
  'COUNT=[1-9]\\d{0,2}',
  'UNTIL=\\d{8}(T\\d{6}Z)?',
  `BYMONTH=${listOf(MONTH)}`,
  `BYMONTHDAY=${listOf(MONTH_DAY)}`,
  `BYSETPOS=${listOf(MONTH_DAY)}`,
  `BYWEEKNO=${listOf(WEEK)}`,
  `BYYEARDAY=${listOf(YEAR_DAY)}`,
  `BYDAY=${listOf(WEEKDAY)}`,
  'WKST=(MO|SU)',
]
/** A sale is a matter of days: what recurs within one is not read. `DTSTART` is a field of its own. */
const READ = new RegExp(`^FREQ=(YEARLY|MONTHLY|WEEKLY)(;(${PARTS.join('|')})){0,8}$`)

/**
 * First days by a rule of RFC 5545 from `from` to `to`, both inclusive. The rule counts from its own first day; days are civil and have no zone.
 *
 * Errors: throws a RangeError with words for a person where the rule is none, or not one of years, months or weeks.
 *
 * @example ruleDays('FREQ=YEARLY;BYMONTH=11;BYDAY=FR;BYMONTHDAY=23,24,25,26,27,28,29', '2000-01-01', '2026-01-01', '2026-12-31') // ['2026-11-27']
 */
export function ruleDays(rule: string, startsOn: CivilDate, from: CivilDate, to: CivilDate): CivilDate[] {
  const first = from > startsOn ? from : startsOn
  const read = ruleOf(rule, startsOn, to)
  return read.between(noon(addDays(first, -1)), noon(addDays(to, 1))).map((day) => day.toISOString().slice(0, 10))
}

const noon = (day: CivilDate): Date => new Date(`${day}T12:00:00Z`)

/** What the frequency makes no sense of, and no day of which would ever come. */
const NOT_READ: ReadonlyArray<[string, RegExp]> = [
  ['FREQ=WEEKLY', /;BY(MONTHDAY|YEARDAY|WEEKNO|SETPOS)=|;BYDAY=[^;]*\d/],
  ['FREQ=MONTHLY', /;BY(YEARDAY|WEEKNO)=|;BYDAY=[^;]*([6-9]|\d\d)/],
]

/** Ends with what is asked for: a rule that never comes true would be followed to the year 9999. */
function ruleOf(rule: string, startsOn: CivilDate, to: CivilDate): InstanceType<typeof RRule> {
  if (!READ.test(rule) || NOT_READ.some(([freq, part]) => rule.startsWith(freq) && part.test(rule)))
    throw new RangeError('The rule is not one of RFC 5545 by years, months or weeks. Write it like FREQ=YEARLY;BYMONTH=6;BYDAY=1SA.')
  try {
    const options = RRule.parseString(rule)
    if (!isPossible(options.bymonth, options.bymonthday)) throw new RangeError('no month of the rule has such a day')
    const until = options.until && options.until < noon(to) ? options.until : noon(to)
    return new RRule({ ...options, dtstart: new Date(`${startsOn}T00:00:00Z`), until })
  } catch (error) {
    throw new RangeError(`The rule cannot be read: ${error instanceof Error ? error.message : 'a part is unknown'}. Check it part by part.`)
  }
}

const LONGEST = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
const asList = (value: number | number[] | null | undefined): number[] => (value == null ? [] : [value].flat())

/** Whether some month of a rule has some day of it: one that never comes true would be followed to the year 9999. */
function isPossible(months: number | number[] | null | undefined, days: number | number[] | null | undefined): boolean {
  const [inMonths, onDays] = [asList(months), asList(days)]
  return (
    inMonths.length === 0 ||
    onDays.length === 0 ||
    inMonths.some((month) => onDays.some((day) => Math.abs(day) <= (LONGEST[month - 1] ?? 0)))
  )
}
