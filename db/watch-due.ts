import { sql, type Kysely, type Transaction } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { Database } from './database.ts'

/** What waits to be looked at: a product whose record changed at a store, or a watch that was set or changed; all its rows at this moment. */
export interface Due {
  of: { productId: string; storeId: string | null } | { watchId: string }
  ids: number[]
}

/** What waits longest; undefined where nothing waits. It stays until it is dropped. */
export async function oldestDue(db: Kysely<Database>): Promise<Due | undefined> {
  const first = await db.selectFrom('watch_due').selectAll().orderBy('id').limit(1).executeTakeFirst()
  if (!first) return undefined
  const { watch_id: watchId, product_id: productId, store_id: storeId } = first
  const same = await db
    .selectFrom('watch_due')
    .select('id')
    .where('watch_id', 'is not distinct from', watchId)
    .where('product_id', 'is not distinct from', productId)
    .where('store_id', 'is not distinct from', storeId)
    .limit(MOST_ROWS)
    .execute()
  const ids = same.map(({ id }) => id)
  if (watchId !== null) return { of: { watchId }, ids }
  if (productId === null) throw new Error('what is due names a product or a watch')
  return { of: { productId, storeId }, ids }
}

/** The rest has its turn a moment later. */
const MOST_ROWS = 1000

/**
 * Takes rows away after the look that they asked for. By their ids and not by what they name: what was written while somebody looked asks for another
 * look, whichever of the two transactions was kept first.
 */
export async function dropDue(db: Kysely<Database>, ids: readonly number[]): Promise<void> {
  if (ids.length > 0) await db.deleteFrom('watch_due').where('id', 'in', ids).execute()
}

/** With more products than this waiting, as after an import, a watch of any of a kind is looked at once, whole. */
const CROWD = 20

/**
 * Those of some watches that are to be looked at whole, and not product by product as each comes: the first ones met would be told in place of the
 * cheapest. They are put in line where many products wait, and stay so until they had their turn.
 */
export async function lookedAtWhole(db: Kysely<Database>, watchIds: readonly string[]): Promise<Set<string>> {
  if (watchIds.length === 0) return new Set()
  const rows = await db.selectFrom('watch_due').select('watch_id').distinct().where('watch_id', 'in', watchIds).execute()
  const inLine = new Set(rows.flatMap((row) => row.watch_id ?? []))
  const products = await db.selectFrom('watch_due').select('product_id').distinct().where('product_id', 'is not', null).limit(CROWD + 1).execute() // prettier-ignore
  if (products.length <= CROWD) return inLine
  const others = watchIds.filter((id) => !inLine.has(id))
  if (others.length > 0) await db.insertInto('watch_due').values(others.map((watch_id) => ({ watch_id }))).execute() // prettier-ignore
  return new Set(watchIds)
}

/** Ends watches whose day is past, and has every other looked at: a price to buy at is another one each day, and a sale that ended leaves a regular price. */
export async function turnWatches(trx: Transaction<Database>, today: CivilDate): Promise<void> {
  await trx
    .updateTable('watch')
    .set((eb) => ({ ended_at: sql<Date>`now()`, version: eb('version', '+', 1) }))
    .where('ended_at', 'is', null)
    .where('by_day', '<', today)
    .execute()
  await sql`insert into watch_due (watch_id) select id from watch where ended_at is null`.execute(trx)
}
