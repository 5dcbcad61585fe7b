import type { Product } from '../../core/catalog/product.ts'
import { CONSUMABLES } from './consumables.ts'
import { FURNITURE } from './furniture.ts'
import { KITS } from './kits.ts'
import { restrictedNumber, type ProductEntry } from './product-entry.ts'
import { TANKS } from './tanks.ts'
import { TECHNIQUE } from './technique.ts'

/** Every product of the scenario; one in nine has no number on its box. */
export const CATALOG: readonly ProductEntry[] = [...TANKS, ...FURNITURE, ...TECHNIQUE, ...CONSUMABLES, ...KITS].map(
  ({ product, aboutMinor }, index) => ({
    aboutMinor,
    product: { ...product, gtin: index % 9 === 4 ? null : restrictedNumber(index + 1) } satisfies Product,
  }),
)
