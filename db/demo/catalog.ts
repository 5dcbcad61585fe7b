import { isExtraSlot, SLOT_OF } from '../../core/catalog/kinds.ts'
import type { Product } from '../../core/catalog/product.ts'
import { CONSUMABLES } from './consumables.ts'
import { EXTRAS } from './extras.ts'
import { FURNITURE } from './furniture.ts'
import { KITS } from './kits.ts'
import { restrictedNumber, type ProductEntry } from './product-entry.ts'
import { TANKS } from './tanks.ts'
import { TECHNIQUE } from './technique.ts'

/** Kinds whose prices are drawn from a stream of their own, so that the rest of the record does not hang on them. */
export const isExtra = ({ product }: ProductEntry): boolean => product.kind !== 'kit' && isExtraSlot(SLOT_OF[product.kind])

/** Every product of the scenario; one in nine has no number on its box. */
export const CATALOG: readonly ProductEntry[] = [...TANKS, ...FURNITURE, ...TECHNIQUE, ...CONSUMABLES, ...KITS, ...EXTRAS].map(
  ({ product, ...entry }, index) => ({
    ...entry,
    product: { ...product, gtin: index % 9 === 4 ? null : restrictedNumber(index + 1) } satisfies Product,
  }),
)
