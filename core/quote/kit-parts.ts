import { SLOT_OF, type Slot } from '../catalog/kinds.ts'
import type { Product } from '../catalog/product.ts'
import type { Build, BuildLine } from './draft.ts'

export type ProductsById = ReadonlyMap<string, Product>
export type PlainProduct = Exclude<Product, { kind: 'kit' }>

/** A product the build really has: bought, in a kit, or owned. */
export interface Piece {
  line: BuildLine
  slot: Slot
  product: PlainProduct
  quantity: number
  /** The kit it came in. */
  kit: Product | null
  /** A kit's part whose slot has a line of its own is set aside: it counts for nothing but is there. */
  setAside: boolean
}

const isPlain = (product: Product | undefined): product is PlainProduct => product !== undefined && product.kind !== 'kit'

/** The slot a line speaks for; undefined for a kit and for an unknown product. */
export function slotOfLine(line: BuildLine, products: ProductsById): Slot | undefined {
  const said = line.answer === 'buy' ? undefined : line.slot
  if (line.answer === 'not_needed' || line.productId === null) return said
  const product = products.get(line.productId)
  if (product === undefined) return said
  return product.kind === 'kit' ? undefined : SLOT_OF[product.kind]
}

/** Every piece of a build with kits taken apart. A line in a slot replaces what a kit brings for it, unless it says that it stands beside it. */
export function piecesOf(build: Build, products: ProductsById): Piece[] {
  const inPlace = build.lines.filter((line) => line.answer === 'not_needed' || line.besideKit !== true)
  const answered = new Set(inPlace.map((line) => slotOfLine(line, products)))
  return build.lines.flatMap((line): Piece[] => {
    if (line.answer === 'not_needed' || line.productId === null) return []
    const product = products.get(line.productId)
    if (isPlain(product)) return [{ line, slot: SLOT_OF[product.kind], product, quantity: line.quantity, kit: null, setAside: false }]
    if (product === undefined) return []
    return product.parts.flatMap((part): Piece[] => {
      const inside = products.get(part.productId)
      if (!isPlain(inside)) return []
      const slot = SLOT_OF[inside.kind]
      return [{ line, slot, product: inside, quantity: part.quantity * line.quantity, kit: product, setAside: answered.has(slot) }]
    })
  })
}
