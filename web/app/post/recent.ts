import type { Kind } from '../../../core/catalog/kinds.ts'
import type { Keep } from './unsent.ts'

export interface RecentProduct {
  id: string
  name: string
  kind: Kind
}
interface Kept {
  products: RecentProduct[]
  storeId: string | null
}

/** A thumb reaches six rows without scrolling. */
const MOST = 6
const keyOf = (personId: string): string => `driploop.recent.${personId}`

/** What this account last posted from this device: products, newest first, and the store. */
export function readRecent(personId: string, keep: Keep = localStorage): Kept {
  try {
    const kept = JSON.parse(keep.getItem(keyOf(personId)) ?? 'null') as Partial<Kept> | null
    return {
      products: Array.isArray(kept?.products) ? kept.products : [],
      storeId: typeof kept?.storeId === 'string' ? kept.storeId : null,
    }
  } catch {
    return { products: [], storeId: null }
  }
}

/** Puts a product first and remembers the store. Storage that refuses only costs the convenience. */
export function keepRecent(personId: string, product: RecentProduct, storeId: string, keep: Keep = localStorage): void {
  const others = readRecent(personId, keep).products.filter(({ id }) => id !== product.id)
  const { id, name, kind } = product
  try {
    keep.setItem(keyOf(personId), JSON.stringify({ products: [{ id, name, kind }, ...others].slice(0, MOST), storeId }))
  } catch {
    return
  }
}

export function forgetRecent(personId: string, keep: Keep = localStorage): void {
  keep.removeItem(keyOf(personId))
}
