import type { QueryClient } from '@tanstack/react-query'
import type { BoardRow } from '../../../core/pricing/record.ts'
import type { ProductPage } from '../client/products.ts'
import { byName } from '../parts/by-name.ts'
import { rowsInMemory } from '../prices/board-in-memory.ts'
import { readRecent, type RecentProduct } from './recent.ts'

const productOf = ({ sighting, kind }: BoardRow): RecentProduct => ({ id: sighting.productId, name: sighting.productName, kind })

/** Each product once, where it is named first. */
function once(products: readonly RecentProduct[]): RecentProduct[] {
  const named = new Map<string, RecentProduct>()
  for (const product of products) if (!named.has(product.id)) named.set(product.id, product)
  return [...named.values()]
}

/**
 * What is offered before anything is typed: what was posted from here lately, filled up with what others posted last.
 *
 * @example offeredProducts([], boardRows, 6).length // 6, if the board has as many products
 */
export const offeredProducts = (recent: readonly RecentProduct[], board: readonly BoardRow[], most: number): RecentProduct[] =>
  once([...recent, ...board.map(productOf)]).slice(0, most)

/** Products this phone has read or posted, by name: what can be searched where there is no signal. */
export function productsInMemory(queries: QueryClient, personId: string): RecentProduct[] {
  const read = queries
    .getQueriesData<ProductPage>({ queryKey: ['products', 'pick'] })
    .flatMap(([, page]) => page?.items ?? [])
    .filter(({ archived }) => !archived)
    .map(({ id, name, kind }) => ({ id, name, kind }))
  return once([...readRecent(personId).products, ...rowsInMemory(queries).map(productOf), ...read]).toSorted(byName)
}
