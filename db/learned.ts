import { sql, type Kysely, type Transaction } from 'kysely'
import type { Kind } from '../core/catalog/kinds.ts'
import type { CivilDate } from '../core/dates.ts'
import type { Learned, ProductLearned } from '../core/pricing/outlook/learned.ts'
import type { Sighting } from '../core/pricing/sighting.ts'
import type { Database } from './database.ts'
import { isId } from './refusal.ts'
import { sightingOf } from './sighting-rows.ts'

/** Raised with every change of what `learn` gives or how: a snapshot of another method is not read. */
const METHOD = 1
/** Rows that one statement carries. */
const BATCH = 500

/** All accepted sightings since a day, oldest first: what there is to learn from. */
export async function acceptedSince(db: Kysely<Database>, since: CivilDate): Promise<Sighting[]> {
  const rows = await db
    .selectFrom('sighting')
    .selectAll()
    .where('accepted', '=', true)
    .where('seen_on', '>=', since)
    .orderBy('seen_on')
    .orderBy('received_at')
    .orderBy('id')
    .execute()
  return rows.map(sightingOf)
}

/** Newest day up to `today` whose record was learnt from by the present method; null where none was. */
export async function newestLearnedOn(db: Kysely<Database>, today: CivilDate): Promise<CivilDate | null> {
  const row = await db
    .selectFrom('price_snapshot')
    .select('day')
    .where('method', '=', METHOD)
    .where('day', '<=', today)
    .orderBy('day', 'desc')
    .limit(1)
    .executeTakeFirst()
  return row?.day ?? null
}

/** Keeps a snapshot in place of one of the same day, and of days that have not come yet: a clock was ahead. Must run in a transaction. */
export async function keepLearned(trx: Transaction<Database>, { products, ...learned }: Learned): Promise<void> {
  await trx.deleteFrom('price_snapshot').where('day', '>=', learned.asOf).execute()
  await trx
    .insertInto('price_snapshot')
    .values({ day: learned.asOf, method: METHOD, learned: sql<Omit<Learned, 'products'>>`${JSON.stringify(learned)}::text::jsonb` })
    .execute()
  const entries = Object.entries(products)
  for (let start = 0; start < entries.length; start += BATCH)
    await trx
      .insertInto('price_snapshot_product')
      .values(
        entries.slice(start, start + BATCH).map(([productId, product]) => ({
          day: learned.asOf,
          product_id: productId,
          learned: sql<ProductLearned>`${JSON.stringify(product)}::text::jsonb`,
        })),
      )
      .execute()
}

/** Snapshots of days before one are let go. */
export async function dropLearnedBefore(db: Kysely<Database>, day: CivilDate): Promise<void> {
  await db.deleteFrom('price_snapshot').where('day', '<', day).execute()
}

/** The newest snapshot up to `today` with what it says of some products; undefined where nothing was learnt yet. */
export async function readLearned(db: Kysely<Database>, productIds: readonly string[], today: CivilDate): Promise<Learned | undefined> {
  const head = await db
    .selectFrom('price_snapshot')
    .select(['day', 'learned'])
    .where('method', '=', METHOD)
    .where('day', '<=', today)
    .orderBy('day', 'desc')
    .limit(1)
    .executeTakeFirst()
  if (!head) return undefined
  const wanted = productIds.filter(isId)
  const rows =
    wanted.length === 0
      ? []
      : await db
          .selectFrom('price_snapshot_product')
          .select(['product_id', 'learned'])
          .where('day', '=', head.day)
          .where('product_id', 'in', wanted)
          .execute()
  return { ...head.learned, products: Object.fromEntries(rows.map((row) => [row.product_id, row.learned])) }
}

/** Every product with its kind, archived ones too: their sales teach of the kind. */
export const kindsOfProducts = (db: Kysely<Database>): Promise<Array<{ id: string; kind: Kind }>> =>
  db.selectFrom('product').select(['id', 'kind']).orderBy('id').execute()
