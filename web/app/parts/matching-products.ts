import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { slipsBetween, slipsForgiven } from '../../../core/catalog/near-words.ts'
import { foldText, searchTerms, type SearchTerm } from '../../../core/catalog/search-terms.ts'
import type { PickedProduct } from './product-picker.tsx'

/** A word that is still being typed is the start of one: `slipsBetween` counts half a slip for it. */
const UNFINISHED = 0.5

const wordsOf = (product: PickedProduct & { maker?: string | null }): string =>
  foldText(`${product.name} ${product.maker ?? ''} ${KIND_NAMES[product.kind]}`)

function holds(text: string, { text: wanted, parts }: SearchTerm): boolean {
  if (text.includes(wanted) || (parts.length > 0 && parts.every((part) => text.includes(part)))) return true
  const forgiven = slipsForgiven(wanted)
  return forgiven > 0 && text.split(/\s+/).some((word) => slipsBetween(wanted, word) <= forgiven + UNFINISHED)
}

/**
 * Those of the products at hand whose name, maker or kind holds every word that is typed, a slip forgiven; all of them while nothing is typed.
 *
 * @example matchingProducts([{ id: 'p', name: 'Pellick C-1800', kind: 'filter' }], 'pelick').length // 1
 */
export function matchingProducts<Known extends PickedProduct>(products: readonly Known[], typed: string): Known[] {
  const terms = searchTerms(typed)
  return products.filter((product) => terms.every((term) => holds(wordsOf(product), term)))
}
