import type { Sighting } from '../../../core/pricing/sighting.ts'
import type { SightingBody } from '../client/sightings.ts'
import type { Unsent } from './unsent.ts'

type Body = Omit<SightingBody, 'id'>

const isSame = (body: Body, other: Body): boolean =>
  (['productId', 'storeId', 'priceMinor', 'seenOn', 'condition'] as const).every((key) => body[key] === other[key])

/**
 * Whether this person has posted the same price of the same product there on that day already: "posted" where the server has it, "kept" where this
 * phone still holds it, null where neither.
 *
 * @example sameAgain(body, [], [], 'me') // null
 */
export function sameAgain(
  body: Body | null,
  record: readonly Sighting[],
  queue: readonly Unsent[],
  personId: string,
): 'posted' | 'kept' | null {
  if (body === null) return null
  if (record.some((sighting) => sighting.reporterId === personId && !sighting.withdrawn && isSame(body, sighting))) return 'posted'
  return queue.some(({ sighting, refused }) => refused === null && isSame(body, sighting)) ? 'kept' : null
}
