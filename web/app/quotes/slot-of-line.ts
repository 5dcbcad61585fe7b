import type { Product } from '../../../core/catalog/product.ts'
import { slotOfLine } from '../../../core/quote/kit-parts.ts'
import type { SlotOf } from './draft-merge.ts'

/** The slot each line stands under on the desk: a kit stands under "Hold water". Later lists add to earlier ones. */
export function slotsBy(...lists: Product[][]): SlotOf {
  const products = new Map(lists.flat().map((product) => [product.id, product]))
  return (line) => {
    if (line.answer !== 'not_needed' && line.productId !== null && products.get(line.productId)?.kind === 'kit') return 'hold_water'
    return slotOfLine(line, products)
  }
}
