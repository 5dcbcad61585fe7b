import { daysBetween, type CivilDate } from '../dates.ts'
import type { UsedSeen } from './outlook/say-advice.ts'
import type { Sighting } from './sighting.ts'

/** What was seen longer ago is told as a price no more (design rule 2). */
const COUNTS_DAYS = 180

/**
 * The newest used price of each product that one was reported of within 180 days, by the product's id; of one day the lowest.
 *
 * @example usedSeen([{ …, condition: 'used', priceMinor: 4500, seenOn: '2026-11-20' }], '2026-11-26').get('heater') // { priceMinor: 4500, seenOn: '2026-11-20' }
 */
export function usedSeen(sightings: readonly Sighting[], asOf: CivilDate): Map<string, UsedSeen> {
  const used = sightings.filter(
    ({ condition, withdrawn, seenOn }) => condition === 'used' && !withdrawn && seenOn <= asOf && daysBetween(seenOn, asOf) <= COUNTS_DAYS,
  )
  const newestLast = used.toSorted((a, b) => (a.seenOn === b.seenOn ? b.priceMinor - a.priceMinor : a.seenOn < b.seenOn ? -1 : 1))
  return new Map(newestLast.map(({ productId, priceMinor, seenOn }) => [productId, { priceMinor, seenOn }]))
}
