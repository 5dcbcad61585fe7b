import type { CivilDate } from '../../../core/dates.ts'
import type { Sighting } from '../../../core/pricing/sighting.ts'
import type { SightingBody } from '../client/sightings.ts'

/**
 * The same shelf price seen again today; null where it was seen today already, or where it is no shelf price: a sale that goes on has a last day
 * to look up.
 *
 * @example seenAgain({ ...sighting, condition: 'sale' }, '2026-10-20') // null
 */
export function seenAgain(sighting: Sighting, today: CivilDate): Omit<SightingBody, 'id'> | null {
  const { productId, storeId, condition, priceMinor, printedRegularMinor, seenOn } = sighting
  const reduced = printedRegularMinor !== null && printedRegularMinor > priceMinor
  if (condition !== 'shelf' || reduced || seenOn >= today) return null
  return {
    productId,
    storeId,
    condition,
    priceMinor,
    printedRegularMinor: null,
    seenOn: today,
    lastDay: null,
    evidence: 'none',
    note: null,
  }
}
