import { daysBetween, addDays, type CivilDate } from '../dates.ts'

/** A year, so that what the season does to a price is the same at both ends. */
const DRIFT_DAYS = 365
/** Less tells of one new tag, not of where the price is going. Own. */
const LEAST_DRIFT_DAYS = 90

/** A shelf price of one day, and one of the sightings that say so. */
export interface ShelfPrice {
  priceMinor: number
  seenOn: CivilDate
  sightingId: string
}

/**
 * What the shelf price of one product at one store was a year before its newest: the newest that was seen at least 365 days before, else the oldest there is, where that is at least
 * 90 days before. Undefined where it is not.
 *
 * Shelf prices by day, oldest first.
 *
 * @example shelfBefore([{ priceMinor: 9000, seenOn: '2025-11-01', … }, { priceMinor: 9900, seenOn: '2026-11-20', … }]) // that of 2025-11-01
 */
export function shelfBefore<Price extends Pick<ShelfPrice, 'seenOn'>>(days: readonly Price[]): Price | undefined {
  const newest = days.at(-1)
  if (newest === undefined) return undefined
  const yearBefore = addDays(newest.seenOn, -DRIFT_DAYS)
  const before = days.findLast(({ seenOn }) => seenOn <= yearBefore) ?? days[0]
  return before && daysBetween(before.seenOn, newest.seenOn) >= LEAST_DRIFT_DAYS ? before : undefined
}

/** How a shelf price moved: `change` is new ÷ old − 1. */
export interface ShelfDrift {
  change: number
  since: CivilDate
  sightingIds: string[]
}

/** Shares are kept to four digits: a hundredth of a per cent is finer than any tag. */
const fourDigits = (share: number): number => Math.round(share * 1e4) / 1e4

/** @example shelfDrift({ priceMinor: 9000, … }, { priceMinor: 9900, … }).change // 0.1 */
export const shelfDrift = (before: ShelfPrice, now: ShelfPrice): ShelfDrift => ({
  change: fourDigits(now.priceMinor / before.priceMinor - 1),
  since: before.seenOn,
  sightingIds: [now.sightingId, before.sightingId],
})
