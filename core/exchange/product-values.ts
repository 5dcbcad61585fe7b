import type { Product } from '../catalog/product.ts'
import type { CellValue } from './column.ts'

/** As a part is written: names that the reader of parts would cut in two, or take for another, are written as ids. */
export interface PartName {
  id: string
  /** Null where another product has the same name. */
  name: string | null
}

/** A name with its count is at most 160 characters, and has neither a separator nor a line break in it. */
const isPlainName = (name: string): boolean => name.length <= 140 && !/[;\r\n]/.test(name)

/** A product as a row of an export: every column of its kind that has a value. `partNames` has the products inside kits. */
export function productValues(product: Product, partNames: ReadonlyMap<string, PartName>): Map<string, CellValue> {
  const { warrantyMonths = null } = product
  const { id, kind, name, maker, gtin, oversize, note, archived, parts, spec } = product
  const saidPart = ({ productId, quantity }: { productId: string; quantity: number }): string => {
    const known = partNames.get(productId)?.name ?? null
    return `${known !== null && isPlainName(known) ? known : productId} x ${quantity}`
  }
  return new Map<string, CellValue>([
    ['kind', kind],
    ['id', id],
    ['name', name],
    ['maker', maker],
    ['gtin', gtin],
    ['oversize', oversize],
    ['note', note],
    ['parts', parts.length === 0 ? null : parts.map(saidPart).join('; ')],
    ['warrantyMonths', warrantyMonths],
    ['archived', archived],
    ...Object.entries(spec as Record<string, CellValue>),
  ])
}
