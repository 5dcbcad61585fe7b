import type { BackupView } from '../client/backups.ts'

const REASONS: Record<BackupView['reason'], string> = {
  asked: 'asked for',
  scheduled: 'by itself',
  'before-upgrade': 'before an upgrade',
}
export const sayReason = ({ reason }: Pick<BackupView, 'reason'>): string => REASONS[reason]

const UNITS = ['bytes', 'kB', 'MB', 'GB'] as const
/** @example sayBytes(387_609) // '388 kB' */
export function sayBytes(bytes: number): string {
  let [value, unit] = [bytes, 0]
  while (value >= 999.5 && unit < UNITS.length - 1) [value, unit] = [value / 1_000, unit + 1]
  const digits = unit > 1 && value < 99.95 ? 1 : 0
  return `${value.toFixed(digits)} ${UNITS[unit]}`
}

/** Day and clock at the place. @example sayMoment('2026-11-26T15:43:15Z', 'America/Detroit') // 'Nov 26, 10:43' with a space that does not break */
export function sayMoment(instant: string, timeZone: string): string {
  const at = new Date(instant)
  const day = new Intl.DateTimeFormat('en-US', { timeZone, month: 'short', day: 'numeric' }).format(at)
  const clock = new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit' }).format(at)
  return `${day.replace(' ', '\u00a0')}, ${clock}`
}

/** How often, in words. @example sayEvery(15) // 'every 15 minutes' */
export const sayEvery = (minutes: number): string => (minutes >= 24 * 60 ? 'once a day' : `every ${minutes} minutes`)
