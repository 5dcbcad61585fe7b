import type { CivilDate } from '../dates.ts'
import { ageOn } from './age.ts'
import { isGone, productGone } from './gone.ts'
import type { PriceView } from './price-view.ts'
import { saleSpells } from './sale-spells.ts'
import type { Sighting } from './sighting.ts'
import { newcomerTrust, type TrustOf } from './trust.ts'

/**
 * What one product costs at one store on a day (design rule 2): a sale that is running overrides the regular price to its stated last day,
 * else 7 days, a clearance 5, or to the day on which it was found gone; then the regular price returns. Undefined where nothing younger than 180 days is known,
 * and where the product itself was found gone.
 *
 * Units: minor units as the store prints them. `regular` is what `regularPrice` says of the same sightings and day.
 */
export function todayPrice(
  sightings: readonly Sighting[],
  regular: PriceView['regular'],
  asOf: CivilDate,
  trustOf: TrustOf = newcomerTrust,
): PriceView['today'] {
  const spell = saleSpells(sightings, asOf, trustOf).at(-1)
  const age = spell ? ageOn(spell.lastSeenOn, asOf) : null
  if (spell && age && spell.endsOn >= asOf && !isGone(spell.goneOn, asOf)) {
    const behind = spell.sightings.filter(({ priceMinor }) => priceMinor === spell.priceMinor)
    return {
      priceMinor: spell.priceMinor,
      condition: spell.condition,
      seenOn: spell.lastSeenOn,
      holdsUntil: spell.endsOn,
      lastDayStated: spell.lastDayStated,
      age,
      reporters: membersBehind(behind),
      sightingIds: spell.sightings.map(({ id }) => id),
    }
  }
  if (!regular || isGone(productGone(sightings, asOf), asOf)) return undefined
  const { priceMinor, seenOn, sightingIds } = regular
  const behind = sightings.filter(({ id }) => sightingIds.includes(id))
  return {
    priceMinor,
    condition: 'shelf',
    seenOn,
    holdsUntil: null,
    lastDayStated: false,
    age: regular.age,
    reporters: membersBehind(behind),
    sightingIds,
  }
}

/**
 * Distinct members behind a price, at least: reporters, or a reporter and those who confirmed. Who confirmed is not known here, so that the
 * two are not added: a second reporter may be the one who confirmed the first. Of a list only those count who confirmed it, so that there may be none.
 */
export function membersBehind(sightings: ReadonlyArray<Pick<Sighting, 'reporterId' | 'confirmations' | 'imported'>>): number {
  const seen = sightings.filter(({ imported }) => !imported)
  const reporters = new Set(seen.map(({ reporterId }) => reporterId)).size
  return Math.max(reporters, ...sightings.map(({ confirmations, imported }) => confirmations + (imported ? 0 : 1)))
}
