import { sayDate } from '../../../core/dates.ts'
import type { RolledPart } from '../../../core/pricing/roll-up-by-region.ts'

/** A row of the roll-up: new or used goods of one part. */
export interface RolledRow {
  key: string
  place: string
  /** The place within a sentence. */
  within: string
  part: RolledPart
  used: boolean
}

/** Less than this is the same price with another tag. */
const TOLD_CHANGE = 0.005

/** @example placeWords({ part: 'region', regionName: 'North' }) // 'North' */
export const placeWords = ({ part, regionName }: Pick<RolledPart, 'part' | 'regionName'>): string =>
  part === 'all' ? 'All stores' : part === 'rest' ? 'In no region' : (regionName ?? 'A region')

/** New goods of each part, and used ones below where any were seen. */
export const rolledRows = (parts: readonly RolledPart[]): RolledRow[] =>
  parts.flatMap((part) => {
    const [key, place] = [`${part.part} ${part.regionId ?? ''}`, placeWords(part)]
    const within = part.part === 'region' ? place : place.toLowerCase()
    return [
      ...(part.new ? [{ key: `${key} new`, place, within, part, used: false }] : []),
      ...(part.used ? [{ key: `${key} used`, place: `${place}, used`, within, part, used: true }] : []),
    ]
  })

/**
 * How shelf prices moved, with the minus of money.
 *
 * @example changeWords({ change: -0.04, since: '2025-11-02', stores: 3 }, 2026) // '−4 % since Nov 2, 2025, the middle of 3 stores'
 */
export function changeWords({ change, since, stores }: { change: number; since: string; stores: number }, thisYear: number): string {
  const day = `since ${sayDate(since, thisYear)}${stores > 1 ? `, the middle of ${stores} stores` : ''}`
  if (Math.abs(change) < TOLD_CHANGE) return `the same ${day}`
  return `${change > 0 ? '+' : '−'}${Math.round(Math.abs(change) * 100)} % ${day}`
}
