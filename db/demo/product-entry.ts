import { gtinCheckDigit } from '../../core/catalog/gtin.ts'
import type { Kind } from '../../core/catalog/kinds.ts'
import type { Product } from '../../core/catalog/product.ts'
import type { SpecOf } from '../../core/catalog/spec.ts'
import { demoId } from './seeded.ts'

/** A product of the scenario and about what it costs: the price that the stores' own prices lie around. */
export interface ProductEntry {
  product: Product
  aboutMinor: number
  /** The one store that has it; absent: any. */
  at?: string
}

interface More {
  oversize?: boolean
  note?: string
  at?: string
  /** Names of the products inside and how many. */
  parts?: Array<[name: string, quantity: number]>
}

/** A name's id: makers and kinds share no name. */
export const productId = (name: string): string => demoId('product', name)

/** Every product's name begins with its maker's. All makers are invented. */
export function entry<K extends Kind>(kind: K, name: string, price: number, spec: SpecOf[K], more: More = {}): ProductEntry {
  const product = {
    id: productId(name),
    kind,
    name,
    maker: name.split(' ')[0] ?? null,
    gtin: null,
    oversize: more.oversize ?? false,
    note: more.note ?? null,
    spec,
    parts: (more.parts ?? []).map(([part, quantity]) => ({ productId: productId(part), quantity })),
    archived: false,
    version: 1,
  }
  return { product: product as Product, aboutMinor: Math.round(price * 100), ...(more.at === undefined ? {} : { at: more.at }) }
}

/** GTIN-13 of the range that begins with 2, which GS1 keeps for use inside a company: no maker's number is among them. */
export function restrictedNumber(index: number): string {
  const data = `204${String(index).padStart(9, '0')}`
  return `${data}${gtinCheckDigit(data)}`
}
