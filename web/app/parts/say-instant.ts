import { civilDateAt, sayDate } from '../../../core/dates.ts'

/**
 * An instant as the place's own day and clock.
 *
 * @example sayInstant('2026-11-26T15:41:00Z', 'America/Detroit', 2026) // 'Nov 26, 10:41'
 */
export function sayInstant(instant: string, timeZone: string, thisYear: number): string {
  const at = new Date(instant)
  const clock = new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit' }).format(at)
  return `${sayDay(instant, timeZone, thisYear)}, ${clock}`
}

/** The day alone. @example sayDay('2026-11-26T03:00:00Z', 'America/Detroit', 2026) // 'Nov 25' */
export const sayDay = (instant: string, timeZone: string, thisYear: number): string =>
  sayDate(civilDateAt(Date.parse(instant), timeZone), thisYear)
