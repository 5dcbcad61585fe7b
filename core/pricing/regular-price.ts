import type { CivilDate } from '../dates.ts'
import { ageOn } from './age.ts'
import { dayPrices, type DayPrice } from './day-price.ts'
import { effectiveCondition } from './effective-condition.ts'
import type { PriceView } from './price-view.ts'
import { isAccepted, type SeenPrice } from './sighting.ts'
import { newcomerTrust, type TrustOf } from './trust.ts'

/** Accepted shelf prices of one product at one store up to a day, by civil day, oldest first. */
export function shelfDays<Seen extends SeenPrice>(sightings: readonly Seen[], asOf: CivilDate, trustOf: TrustOf): Array<DayPrice<Seen>> {
  const shelf = sightings.filter((sighting) => sighting.seenOn <= asOf && isAccepted(sighting) && effectiveCondition(sighting) === 'shelf')
  return dayPrices(shelf, trustOf, ({ priceMinor }) => priceMinor)
}

/**
 * Regular price of one product at one store on a day (design rule 1): the newest accepted shelf price; where none is younger than 180 days,
 * the newest regular price printed on a tag. Undefined where neither is known.
 *
 * Units: minor units as the store prints them; civil days of the store's zone. Sightings must be of one product and one store.
 *
 * @example regularPrice([shelf({ priceMinor: 19500, seenOn: '2026-10-03' })], '2026-10-20') // { priceMinor: 19500, age: 'current', from: 'shelf', … }
 */
export function regularPrice(sightings: readonly SeenPrice[], asOf: CivilDate, trustOf: TrustOf = newcomerTrust): PriceView['regular'] {
  return (
    newestKnown(shelfDays(sightings, asOf, trustOf), asOf, 'shelf') ?? newestKnown(printedDays(sightings, asOf, trustOf), asOf, 'printed')
  )
}

/** Regular prices printed on tags of one product at one store up to a day, by civil day, oldest first. */
export function printedDays<Seen extends SeenPrice>(sightings: readonly Seen[], asOf: CivilDate, trustOf: TrustOf): Array<DayPrice<Seen>> {
  const printed = sightings.filter(
    (sighting) => sighting.seenOn <= asOf && isAccepted(sighting) && sighting.condition !== 'used' && sighting.printedRegularMinor !== null,
  )
  return dayPrices(printed, trustOf, ({ printedRegularMinor, priceMinor }) => printedRegularMinor ?? priceMinor)
}

function newestKnown(days: ReadonlyArray<DayPrice<SeenPrice>>, asOf: CivilDate, from: 'shelf' | 'printed'): PriceView['regular'] {
  const newest = days.at(-1)
  const age = newest ? ageOn(newest.seenOn, asOf) : null
  if (!newest || !age) return undefined
  return { priceMinor: newest.priceMinor, seenOn: newest.seenOn, age, from, sightingIds: newest.sightings.map(({ id }) => id) }
}
