import Holidays from 'date-holidays'
import type { Store } from '../../core/catalog/store.ts'
import type { CivilDate } from '../../core/dates.ts'

type Place = Pick<Store, 'country' | 'subdivision'>

/** Making one calendar reads all rules of its country. There are few places. */
const calendars = new Map<string, Holidays | null>()
const MOST_CALENDARS = 200

/** The calendar of a place: of its subdivision where the calendar knows it by code or English name, else of the whole country; null for a country without one. */
function calendarOf({ country, subdivision }: Place): Holidays | null {
  const key = `${country} ${subdivision ?? ''}`
  const known = calendars.get(key)
  if (known !== undefined) return known
  if (calendars.size >= MOST_CALENDARS) calendars.clear()
  const made = makeCalendar(country, subdivision)
  calendars.set(key, made)
  return made
}

function makeCalendar(country: string, subdivision: string | null): Holidays | null {
  const all = new Holidays()
  if (!(country in all.getCountries())) return null
  const wanted = subdivision?.toLowerCase()
  const state = Object.entries(all.getStates(country, 'en') ?? {}).find(
    ([code, name]) => wanted === code.toLowerCase() || wanted === `${country}-${code}`.toLowerCase() || wanted === name.toLowerCase(),
  )
  return state ? new Holidays(country, state[0], { languages: ['en'] }) : new Holidays(country, { languages: ['en'] })
}

type Feast = { name: string; day: CivilDate }
/** Reckoning a year of one place takes milliseconds, and every calendar asks for several. */
const years = new Map<string, readonly Feast[]>()
const MOST_YEARS = 2_000

function inYear(place: Place, year: number): readonly Feast[] {
  const key = `${place.country} ${place.subdivision ?? ''} ${year}`
  const known = years.get(key)
  if (known !== undefined) return known
  if (years.size >= MOST_YEARS) years.clear()
  const reckoned = feastsOf(place, year)
  years.set(key, reckoned)
  return reckoned
}

/** Days on which a holiday is made up for are no holidays of their own: the sale follows the feast. */
const feastsOf = (place: Place, year: number): Feast[] =>
  (calendarOf(place)?.getHolidays(year) ?? [])
    .filter(({ substitute }) => substitute !== true)
    .map(({ name, date }) => ({ name, day: date.slice(0, 10) }))

/** English names of a place's holidays in a year, in the order of their days, each once. @example holidayNames({ country: 'US', subdivision: null }, 2026)[0] // "New Year's Day" */
export const holidayNames = (place: Place, year: number): string[] => [...new Set(inYear(place, year).map(({ name }) => name))]

/** Days of a holiday at a place in some years, both inclusive; none where the place does not keep it. */
export function holidayDays(place: Place, holiday: string, fromYear: number, toYear: number): CivilDate[] {
  const wanted = holiday.toLowerCase()
  const years = Array.from({ length: toYear - fromYear + 1 }, (_, index) => fromYear + index)
  return years.flatMap((year) =>
    inYear(place, year)
      .filter(({ name }) => name.toLowerCase() === wanted)
      .map(({ day }) => day),
  )
}
