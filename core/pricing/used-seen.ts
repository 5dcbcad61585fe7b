import { daysBetween, type CivilDate } from '../dates.ts'
import type { UsedSeen } from './outlook/say-advice.ts'
import { isAccepted, type Sighting } from './sighting.ts'

/** What was seen longer ago is told as a price no more (design rule 2). */
const COUNTS_DAYS = 180

/**
 * The newest used price of a line's product that counts, was not found gone and was seen at one of its stores within 180 days; of one day the lowest. Undefined where there is none.
 *
 * @example usedSeen({ productId: 'heater', storeIds: ['upriver'] }, [{ …, storeId: 'upriver', condition: 'used', priceMinor: 4500, seenOn: '2026-11-20' }], '2026-11-26') // { priceMinor: 4500, seenOn: '2026-11-20' }
 */
export function usedSeen(
  { productId, storeIds }: { productId: string; storeIds: readonly string[] },
  sightings: readonly Sighting[],
  asOf: CivilDate,
): UsedSeen | undefined {
  const used = sightings.filter(
    (one) =>
      one.productId === productId &&
      one.condition === 'used' &&
      storeIds.includes(one.storeId) &&
      isAccepted(one) &&
      !one.goneOn &&
      one.seenOn <= asOf &&
      daysBetween(one.seenOn, asOf) <= COUNTS_DAYS,
  )
  const [newest] = used.toSorted((a, b) => (a.seenOn === b.seenOn ? a.priceMinor - b.priceMinor : a.seenOn > b.seenOn ? -1 : 1))
  return newest && { priceMinor: newest.priceMinor, seenOn: newest.seenOn }
}
