import type { Sent } from './post-one.ts'
import type { Outcome } from './send-unsent.ts'
import type { Unsent } from './unsent.ts'

/** The sighting that was just posted, and what became of it. */
export interface Posted extends Sent {
  productId: string
  /** "$159.00 for Pellick C-1800 at Saltcote". */
  what: string
}

/**
 * What has become of it meanwhile. What waited and is no longer kept was posted, by this page or by another one of the same browser: what
 * is removed before it is sent is told of no more. A refused one that is mended or discarded stays told as refused.
 *
 * @example postedNow(waiting, [], undefined).kind // 'posted'
 */
export function postedNow(posted: Posted, queue: readonly Unsent[], outcome: Outcome | undefined): Posted {
  if (posted.kind === 'posted') return posted
  const item = queue.find(({ sighting }) => sighting.id === posted.id)
  if (item?.refused) return posted.kind === 'refused' ? posted : { ...posted, kind: 'refused' }
  if (item !== undefined || posted.kind === 'refused') return posted
  return { ...posted, kind: 'posted', doubt: outcome?.kind === 'posted' ? outcome.doubt : null }
}
