import { addDays, type CivilDate } from '../dates.ts'
import type { PriceView } from './price-view.ts'
import { isAccepted, type Sighting } from './sighting.ts'

/** A year holds every yearly sale once. */
export const BEST_SEEN_DAYS = 365

/**
 * Lowest accepted price of one product at one store in the 365 days up to a day, used goods apart; the newest where several are as low.
 *
 * @example bestSeen([sale({ priceMinor: 15199, seenOn: '2026-07-04' })], '2026-10-20') // { priceMinor: 15199, seenOn: '2026-07-04', … }
 */
export function bestSeen(sightings: readonly Sighting[], asOf: CivilDate): PriceView['best'] {
  const since = addDays(asOf, -BEST_SEEN_DAYS)
  const [best] = sightings
    .filter((sighting) => sighting.condition !== 'used' && isAccepted(sighting) && sighting.seenOn <= asOf && sighting.seenOn >= since)
    .toSorted((a, b) => a.priceMinor - b.priceMinor || b.seenOn.localeCompare(a.seenOn) || a.id.localeCompare(b.id))
  return best && { priceMinor: best.priceMinor, seenOn: best.seenOn, sightingId: best.id }
}
