import type { Kind } from '../../../core/catalog/kinds.ts'
import type { SightingBody } from '../client/sightings.ts'
import { keepRecent } from './recent.ts'
import { outcomeNow, sendUnsent } from './send-unsent.ts'
import { dropUnsent, keepUnsent } from './unsent.ts'
import { newId } from './new-id.ts'

/** What is posted where, as lists name it; `replaces`: a refused one that this one stands in for. */
export interface About {
  product: { id: string; name: string; kind: Kind | null }
  storeName: string
  replaces: string | null
}

/** What became of a sighting at the first try; `doubt` says why it waits for a second member. */
export interface Sent {
  id: string
  kind: 'posted' | 'refused' | 'waits'
  doubt: string | null
}

/**
 * Keeps the sighting on this device first, then sends what is kept: whatever happens in between, it is neither lost nor posted twice.
 * Throws only where the browser refuses to store.
 */
export async function postOne(personId: string, body: Omit<SightingBody, 'id'>, about: About): Promise<Sent> {
  const id = newId()
  const { product, storeName, replaces } = about
  keepUnsent(personId, { sighting: { id, ...body }, productName: product.name, storeName, keptAt: new Date().toISOString(), refused: null })
  if (replaces !== null) dropUnsent(personId, replaces)
  if (product.kind !== null) keepRecent(personId, { id: product.id, name: product.name, kind: product.kind }, body.storeId)
  const outcomes = await sendUnsent(personId)
  const outcome = outcomes.get(id) ?? outcomeNow(id)
  return { id, kind: outcome?.kind ?? 'waits', doubt: outcome?.kind === 'posted' ? outcome.doubt : null }
}
