import { ok, refuse, type Result } from '../result.ts'
import type { KitPart } from './product.ts'
import type { Kind } from './kinds.ts'

export interface KitRefusal {
  code: 'empty_kit' | 'unknown_part' | 'contains_itself' | 'contains_kit' | 'repeated_part'
  productId: string | null
  words: string
}

/** What the check looks at: `id` null while the kit is new. */
export interface KitCandidate {
  id: string | null
  name: string
  parts: readonly KitPart[]
}
export interface KnownPart {
  kind: Kind
  name: string
}

/**
 * Whether a kit may be stored: it has parts, every part is known, none is the kit itself or another kit, none is named twice.
 *
 * A kit inside a kit is refused outright, so that taking a kit apart is one step and can never go round in a circle. A part that was archived since stays: the kit is still what it is.
 *
 * @example checkKit({ id: 'k', name: 'Starter', parts: [{ productId: 'k', quantity: 1 }] }, new Map()) // refused: contains_itself
 */
export function checkKit(kit: KitCandidate, partsById: ReadonlyMap<string, KnownPart>): Result<void, KitRefusal> {
  if (kit.parts.length === 0)
    return refuse({
      code: 'empty_kit',
      productId: null,
      words: `"${kit.name}" has no parts. A kit contains at least one product; add them.`,
    })
  const seen = new Set<string>()
  for (const { productId } of kit.parts) {
    const refusal = partFault(kit, productId, partsById.get(productId), seen.has(productId))
    if (refusal) return refuse(refusal)
    seen.add(productId)
  }
  return ok(undefined)
}

function partFault(kit: KitCandidate, productId: string, part: KnownPart | undefined, repeated: boolean): KitRefusal | null {
  if (productId === kit.id)
    return { code: 'contains_itself', productId, words: `"${kit.name}" contains itself. Take it out of its own parts.` }
  if (!part) return { code: 'unknown_part', productId, words: `Part ${productId} is not in the catalog. Add the product first.` }
  if (part.kind === 'kit')
    return { code: 'contains_kit', productId, words: `"${part.name}" is itself a kit. Add the products that are in it one by one.` }
  if (repeated)
    return { code: 'repeated_part', productId, words: `"${part.name}" stands twice in the parts. Write it once with its quantity.` }
  return null
}
