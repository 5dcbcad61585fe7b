import type { Slot } from '../../../core/catalog/kinds.ts'
import { getPriceViews, listProducts } from '../client/products.ts'
import type { Offered } from './fill-rest.ts'
import { kindsFor } from './meets-want.ts'

/** As many of a kind as are tried: the whole shelf of a store, and quickly done. */
const TRIED = 60

/** What the catalog holds for a slot, with its prices. */
export async function offerOf(slot: Slot): Promise<Offered> {
  const pages = await Promise.all(kindsFor(slot).map((kind) => listProducts({ kind, limit: TRIED })))
  const products = pages.flatMap((page) => page.items).filter((product) => !product.archived)
  if (products.length === 0) return { products, prices: [] }
  return { products, prices: (await getPriceViews(products.map((product) => product.id))).prices }
}
