import type { CivilDate } from '../dates.ts'
import type { SeenPrice, Sighting } from './sighting.ts'
import type { TrustOf } from './trust.ts'
import { weightedMedian } from './weighted-median.ts'

/** What the sightings of one civil day say together. */
export interface DayPrice<Seen extends SeenPrice = Sighting> {
  seenOn: CivilDate
  priceMinor: number
  sightings: Seen[]
}

/**
 * Sightings by civil day, oldest day first. Where the reports of one day disagree, the trust-weighted median of that day stands.
 *
 * `priceOf` says which of a sighting's two prices is meant. The order of the input does not matter.
 */
export function dayPrices<Seen extends SeenPrice>(
  sightings: readonly Seen[],
  trustOf: TrustOf,
  priceOf: (sighting: Seen) => number,
): Array<DayPrice<Seen>> {
  const byDay = Map.groupBy(sightings, ({ seenOn }) => seenOn)
  return [...byDay]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([seenOn, ofDay]) => ({
      seenOn,
      priceMinor: weightedMedian(ofDay.map((sighting) => ({ value: priceOf(sighting), weight: trustOf(sighting.reporterId) }))),
      sightings: ofDay.toSorted((a, b) => (a.id < b.id ? -1 : 1)),
    }))
}
