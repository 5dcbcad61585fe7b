import Holidays from 'date-holidays'
import type { Store } from '../../core/catalog/store.ts'
import type { CivilDate } from '../../core/dates.ts'

type Place = Pick<Store, 'country' | 'subdivision'>

const COUNTRIES = new Holidays()
/** Countries and their subdivisions, as the calendar names them: what is typed in their place is none of its own. */
const known = new Map<string, Holidays | null>()

/** The calendar of a place: of its subdivision where the calendar knows it by code or English name, else of the whole country; null for a country without one. */
function calendarOf({ country, subdivision }: Place): { key: string; calendar: Holidays | null } {
  const state = stateOf(country, subdivision)
  const key = `${country} ${state ?? ''}`
  if (!known.has(key)) known.set(key, makeCalendar(country, state))
  return { key, calendar: known.get(key) ?? null }
}

function makeCalendar(country: string, state: string | null): Holidays | null {
  if (!isCountry(country)) return null
  return state === null ? new Holidays(country, { languages: ['en'] }) : new Holidays(country, state, { languages: ['en'] })
}

/** Names of all countries, read once: every call of the package reads them anew. */
const NAMES: Readonly<Record<string, string>> = COUNTRIES.getCountries()
const isCountry = (country: string): boolean => country in NAMES

const states = new Map<string, ReadonlyMap<string, string>>()
/** The code of a subdivision by what is typed for it: its code, with the country before it or not, or its English name. */
function stateOf(country: string, subdivision: string | null): string | null {
  if (subdivision === null || !isCountry(country)) return null
  const codes = states.get(country) ?? codesOf(country)
  states.set(country, codes)
  return codes.get(subdivision.toLowerCase()) ?? null
}

const codesOf = (country: string): ReadonlyMap<string, string> =>
  new Map(
    Object.entries(COUNTRIES.getStates(country, 'en') ?? {}).flatMap(([code, name]) =>
      [code, `${country}-${code}`, name].map((text): [string, string] => [text.toLowerCase(), code]),
    ),
  )

type Feast = { name: string; day: CivilDate }
/** Reckoning a year of one place takes milliseconds, and every calendar asks for several. */
const years = new Map<string, readonly Feast[]>()
const MOST_YEARS = 2_000

function inYear(place: Place, year: number): readonly Feast[] {
  const { key: at, calendar } = calendarOf(place)
  const key = `${at} ${year}`
  const before = years.get(key)
  if (before !== undefined) return before
  if (years.size >= MOST_YEARS) years.clear()
  const reckoned = feastsOf(calendar, place.country, year)
  years.set(key, reckoned)
  return reckoned
}

/** The calendar spells English in the British way; in the United States the first Monday of September is Labor Day (5 U.S.C. § 6103). */
const spelled = (name: string, country: string): string => (country === 'US' ? name.replaceAll('Labour', 'Labor') : name)
/** A sale time kept in stores of two countries names one holiday, in whichever spelling it was chosen. */
const keyOf = (name: string): string => name.toLowerCase().replaceAll('labour', 'labor')

/** Days on which a holiday is made up for are no holidays of their own: the sale follows the feast. */
const feastsOf = (calendar: Holidays | null, country: string, year: number): Feast[] =>
  (calendar?.getHolidays(year) ?? [])
    .filter(({ substitute }) => substitute !== true)
    .map(({ name, date }) => ({ name: spelled(name, country), day: date.slice(0, 10) }))

/** English names of a place's holidays in a year, in the order of their days, each once. @example holidayNames({ country: 'US', subdivision: null }, 2026)[0] // "New Year's Day" */
export const holidayNames = (place: Place, year: number): string[] => [...new Set(inYear(place, year).map(({ name }) => name))]

/** Days of a holiday at a place in some years, both inclusive; none where the place does not keep it. */
export function holidayDays(place: Place, holiday: string, fromYear: number, toYear: number): CivilDate[] {
  const wanted = keyOf(holiday)
  const years = Array.from({ length: toYear - fromYear + 1 }, (_, index) => fromYear + index)
  return years.flatMap((year) =>
    inYear(place, year)
      .filter(({ name }) => keyOf(name) === wanted)
      .map(({ day }) => day),
  )
}
