import type { Kind } from '../../../core/catalog/kinds.ts'
import type { SightingBody } from '../client/sightings.ts'
import { keepRecent } from './recent.ts'
import { sendUnsent } from './send-unsent.ts'
import { dropUnsent, keepUnsent } from './unsent.ts'
import { newId } from './uuid-v7.ts'

interface About {
  product: { id: string; name: string; kind: Kind | null }
  storeName: string
  replaces: string | null
}

/**
 * Keeps the sighting on this device first, then sends what is kept: whatever happens in between, it is neither lost nor posted twice.
 * Throws only where the browser refuses to store.
 */
export async function postOne(personId: string, body: Omit<SightingBody, 'id'>, about: About): Promise<'posted' | 'refused' | 'waits'> {
  const id = newId()
  const { product, storeName, replaces } = about
  keepUnsent(personId, { sighting: { id, ...body }, productName: product.name, storeName, keptAt: new Date().toISOString(), refused: null })
  if (replaces !== null) dropUnsent(personId, replaces)
  if (product.kind !== null) keepRecent(personId, { id: product.id, name: product.name, kind: product.kind }, body.storeId)
  const outcomes = await sendUnsent(personId)
  return outcomes.get(id)?.kind ?? 'waits'
}
