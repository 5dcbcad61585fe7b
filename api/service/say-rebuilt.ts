import type { Kysely } from 'kysely'
import type { Database } from '../../db/database.ts'
import type { Pair } from '../../db/price-summaries.ts'
import { getProducts } from '../../db/products.ts'
import { listStores } from '../../db/stores.ts'
import type { Rebuilt } from '../../db/summary-rebuild.ts'

/** Some products at stores by their names. @example ['Torvane 100 W at Upriver'] */
export async function namesOf(db: Kysely<Database>, pairs: readonly Pair[]): Promise<string[]> {
  if (pairs.length === 0) return []
  const products = await getProducts(
    db,
    pairs.map(({ productId }) => productId),
  )
  const stores = await listStores(db, { archived: 'all' })
  const nameIn = (rows: ReadonlyArray<{ id: string; name: string }>, id: string): string => rows.find((row) => row.id === id)?.name ?? id
  return pairs.map(({ productId, storeId }) => `${nameIn(products, productId)} at ${nameIn(stores, storeId)}`)
}

/**
 * What came of making the summaries anew: which were otherwise, why, and what there is to do. `wereCurrent` says whether they were of this release before.
 *
 * @example sayRebuilt({ pairs: 224, changed: 0, some: [] }, true, []) // 'All 224 summaries (one for each product at a store) say what their sightings say. Nothing was changed.'
 */
export function sayRebuilt({ pairs, changed }: Rebuilt, wereCurrent: boolean, names: readonly string[]): string {
  const all = `${pairs} summaries (one for each product at a store)`
  if (changed === 0) return `All ${all} say what their sightings say. Nothing was changed.`
  if (!wereCurrent)
    return [
      `Made the ${all} in the way of this release.`,
      `${changed} had still been as an older release leaves them, which is usual after an upgrade or after an older backup was put back.`,
      'No sighting was changed, and nothing is left to do: the next start would have done the same.',
    ].join('\n')
  const more = changed - names.length
  return [
    `Made the ${all} anew. ${changed} did not say what the sightings say, and ${changed === 1 ? 'does' : 'do'} now:`,
    ...names.map((name) => `  ${name}`),
    ...(more > 0 ? [`  and ${more} more`] : []),
    'No sighting was changed. Until now prices of these may have been told wrong: look again at what was quoted of them lately.',
    'That happens where rows were changed past the service, as by hand in the database. If nobody did so, please report it.',
  ].join('\n')
}
