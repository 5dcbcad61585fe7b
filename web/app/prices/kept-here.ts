import type { Sighting } from '../../../core/pricing/sighting.ts'
import type { Unsent } from '../post/unsent.ts'

/**
 * What this phone still holds of the same product at the same store; while there is one, a second of the pair is a slip of the thumb.
 *
 * @example keptHere([], sighting) // undefined
 */
export const keptHere = (queue: readonly Unsent[], { productId, storeId }: Pick<Sighting, 'productId' | 'storeId'>): Unsent | undefined =>
  queue.find(({ sighting }) => sighting.productId === productId && sighting.storeId === storeId)

/** @example waitingWords([waiting, waiting]) // '2 sightings are kept on this phone and wait to be sent' */
export function waitingWords(queue: readonly Unsent[]): string {
  const refused = queue.filter((item) => item.refused !== null).length
  const waiting = queue.length - refused
  const kept =
    waiting === 1
      ? 'One sighting is kept on this phone and waits to be sent'
      : `${waiting} sightings are kept on this phone and wait to be sent`
  const not = refused === 1 ? 'One sighting was not taken' : `${refused} sightings were not taken`
  if (refused === 0) return waiting === 0 ? '' : kept
  return waiting === 0 ? not : `${kept}; ${not.toLowerCase()}`
}
