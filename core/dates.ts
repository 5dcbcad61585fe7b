/** A day on a calendar, `YYYY-MM-DD`, with no time zone of its own. */
export type CivilDate = string

const DAY_MS = 86_400_000
const toMs = (date: CivilDate): number => {
  const [year, month, day] = date.split('-').map(Number)
  return Date.UTC(year ?? NaN, (month ?? NaN) - 1, day ?? NaN)
}
const fromMs = (ms: number): CivilDate => new Date(ms).toISOString().slice(0, 10)

/** True for a day that exists. @example isCivilDate('2026-02-29') // false */
export function isCivilDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false
  const ms = toMs(text)
  return Number.isFinite(ms) && fromMs(ms) === text
}

/** Days that anything stored is of: what lies outside is a year mistyped. */
export const FIRST_DAY: CivilDate = '1990-01-01'
export const LAST_DAY: CivilDate = '2200-12-31'

/** @example addDays('2026-10-31', 1) // '2026-11-01' */
export const addDays = (date: CivilDate, days: number): CivilDate => fromMs(toMs(date) + days * DAY_MS)

/** Whole days from a to b; negative if b is earlier. @example daysBetween('2026-10-20', '2026-11-14') // 25 */
export const daysBetween = (a: CivilDate, b: CivilDate): number => Math.round((toMs(b) - toMs(a)) / DAY_MS)

/** Making a formatter costs a hundred times what using one does, and every request asks for a day. There are a few hundred zones at most. */
const dayFormats = new Map<string, Intl.DateTimeFormat>()

function dayFormat(timeZone: string): Intl.DateTimeFormat {
  const known = dayFormats.get(timeZone)
  if (known !== undefined) return known
  const made = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' })
  dayFormats.set(timeZone, made)
  return made
}

/** The civil day at an instant in an IANA time zone. Errors: RangeError for an unknown zone. */
export const civilDateAt = (instantMs: number, timeZone: string): CivilDate => dayFormat(timeZone).format(instantMs)

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat']

/** "Oct 25", with the year where it is not `thisYear`. @example sayDate('2025-10-25', 2026) // 'Oct 25, 2025' */
export function sayDate(date: CivilDate, thisYear?: number): string {
  const day = new Date(toMs(date))
  const words = `${MONTHS[day.getUTCMonth()]} ${day.getUTCDate()}`
  return day.getUTCFullYear() === thisYear ? words : `${words}, ${day.getUTCFullYear()}`
}

/** "Sat, Nov 14". @example sayWeekday('2026-11-14', 2026) // 'Sat, Nov 14' */
export const sayWeekday = (date: CivilDate, thisYear?: number): string =>
  `${WEEKDAYS[new Date(toMs(date)).getUTCDay()]}, ${sayDate(date, thisYear)}`

export const yearOf = (date: CivilDate): number => Number(date.slice(0, 4))
