import type { Store } from '../../core/catalog/store.ts'
import { addDays, daysBetween, yearOf, type CivilDate } from '../../core/dates.ts'
import { runsOf, type SaleDays, type SaleTime } from '../../core/pricing/sale-time.ts'
import { ruleDays } from './calendar-rule.ts'
import { holidayDays } from './holidays.ts'

type When = Pick<SaleTime, 'when' | 'lengthDays'>
type Place = Pick<Store, 'country' | 'subdivision'>

/**
 * The runs of a sale time at a place that touch the days from `from` to `to`, both inclusive. Errors: RangeError with words for a rule that cannot be read.
 *
 * @example runsAt({ when: { kind: 'holiday', holiday: 'Thanksgiving Day', offsetDays: 1 }, lengthDays: 4 }, { country: 'US', subdivision: null }, '2026-11-01', '2026-12-31')
 * // [{ first: '2026-11-27', last: '2026-11-30' }]
 */
export function runsAt({ when, lengthDays }: When, place: Place, from: CivilDate, to: CivilDate): SaleDays[] {
  return runsOf(firstDays(when, place, addDays(from, 1 - lengthDays), to), lengthDays, from, to)
}

function firstDays(when: SaleTime['when'], place: Place, from: CivilDate, to: CivilDate): CivilDate[] {
  if (when.kind === 'dates') return when.firstDays
  if (when.kind === 'rule') return ruleDays(when.rule, when.from, from, to)
  const { holiday, offsetDays } = when
  const years = { from: yearOf(addDays(from, -offsetDays)), to: yearOf(addDays(to, -offsetDays)) }
  return holidayDays(place, holiday, years.from, years.to).map((day) => addDays(day, offsetDays))
}

/** A fault of a sale time that the calendar tells: the field of the input and words with the fix. */
export interface SaleTimeFault {
  field: string
  message: string
}

/** A sale that is told to come is looked for so far ahead. */
const LOOKED_AHEAD_DAYS = 6 * 366

/** What is wrong with a sale time at the stores it is meant for; null where nothing is. */
export function saleTimeFault({ when, lengthDays }: When, places: readonly Place[], today: CivilDate): SaleTimeFault | null {
  const until = addDays(today, LOOKED_AHEAD_DAYS)
  if (when.kind === 'holiday') return holidayFault(when, lengthDays, places, today)
  try {
    return lengthFault(firstDays(when, { country: '', subdivision: null }, addDays(today, -LOOKED_AHEAD_DAYS), until), lengthDays, when)
  } catch (error) {
    if (error instanceof RangeError) return { field: 'when.rule', message: error.message }
    throw error
  }
}

function holidayFault(
  { holiday }: Extract<SaleTime['when'], { kind: 'holiday' }>,
  lengthDays: number,
  places: readonly Place[],
  today: CivilDate,
): SaleTimeFault | null {
  const year = yearOf(today)
  const once = new Map(places.map((place) => [`${place.country} ${place.subdivision ?? ''}`, place]))
  const kept = [...once.values()]
    .map((place) => [...new Set(holidayDays(place, holiday, year - 1, year + 4))].toSorted())
    .filter((days) => days.length > 0)
  if (kept.length > 0) return kept.map((days) => overlap(days, lengthDays)).find((fault) => fault !== null) ?? null
  return {
    field: 'when.holiday',
    message: `No store of this sale time is in a place that keeps "${holiday}". Choose one from the list, or check the stores’ countries.`,
  }
}

function lengthFault(days: readonly CivilDate[], lengthDays: number, { kind }: SaleTime['when']): SaleTimeFault | null {
  const field = kind === 'dates' ? 'when.firstDays' : 'when.rule'
  const sorted = [...new Set(days)].toSorted()
  if (sorted.length === 0)
    return { field, message: 'This never comes true within six years before and after today. Check the months and days of the rule.' }
  return overlap(sorted, lengthDays)
}

/** Days of which each begins after the one before has ended; else how long it may be at most. */
function overlap(sorted: readonly CivilDate[], lengthDays: number): SaleTimeFault | null {
  const gaps = sorted.slice(1).map((day, index) => daysBetween(sorted[index] ?? day, day))
  const shortest = Math.min(...gaps, Infinity)
  if (shortest >= lengthDays) return null
  return {
    field: 'lengthDays',
    message: `It lasts ${lengthDays} days, but begins again after ${shortest}. Make it at most ${shortest} ${shortest === 1 ? 'day' : 'days'} long.`,
  }
}
