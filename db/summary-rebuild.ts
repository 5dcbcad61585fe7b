import { sql, type Kysely } from 'kysely'
import type { Database } from './database.ts'
import { refreshPairs, type Pair } from './price-summaries.ts'
import { inTransaction } from './refusal.ts'

/** Raised with every change of what a summary says or how: one made by another method is made anew at the next start. */
const METHOD = 3
/** Products that one transaction holds: their pairs fit into memory, and whoever posts one of them waits for a moment only. */
const PRODUCTS_AT_ONCE = 25
const FIRST = '00000000-0000-0000-0000-000000000000'

export interface Rebuilt {
  pairs: number
  /** Summaries that were not what their sightings say: 0 where they had been kept as they should. */
  changed: number
  /** The first of them. */
  some: Pair[]
}

/** Enough to see what they have in common. */
const NAMED = 5

/** Whether every summary was made by this release's method. */
export async function areSummariesCurrent(db: Kysely<Database>): Promise<boolean> {
  const row = await db.selectFrom('price_summary_method').select('method').executeTakeFirst()
  return row?.method === METHOD
}

/**
 * Makes every summary anew from the sightings, some products at a time, while others go on posting. The same sightings give the same bytes as were kept with each of them.
 */
export async function rebuildSummaries(db: Kysely<Database>): Promise<Rebuilt> {
  const rebuilt: Rebuilt = { pairs: 0, changed: 0, some: [] }
  for (let after = FIRST; ;) {
    const products = await nextProducts(db, after)
    const last = products.at(-1)
    if (last === undefined) break
    const pairs = await pairsBetween(db, after, last)
    const changed = await inTransaction(db, (trx) => refreshPairs(trx, pairs, true))
    rebuilt.changed += changed.length
    rebuilt.some = [...rebuilt.some, ...changed].slice(0, NAMED)
    rebuilt.pairs += pairs.length
    after = last
  }
  await db
    .insertInto('price_summary_method')
    .values({ method: METHOD })
    .onConflict((clash) => clash.column('only_one').doUpdateSet({ method: METHOD }))
    .execute()
  return rebuilt
}

const nextProducts = async (db: Kysely<Database>, after: string): Promise<string[]> =>
  (await db.selectFrom('product').select('id').where('id', '>', after).orderBy('id').limit(PRODUCTS_AT_ONCE).execute()).map(({ id }) => id)

/** Those that have sightings, and those that have a summary. */
async function pairsBetween(db: Kysely<Database>, after: string, last: string): Promise<Pair[]> {
  const { rows } =
    await sql<Pair>`select product_id as "productId", store_id as "storeId" from sighting where product_id > ${after} and product_id <= ${last}
    union select product_id, store_id from price_summary where product_id > ${after} and product_id <= ${last}`.execute(db)
  return rows
}
