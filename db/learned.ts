import { sql, type Kysely, type RawBuilder, type Transaction } from 'kysely'
import type { Kind } from '../core/catalog/kinds.ts'
import type { CivilDate } from '../core/dates.ts'
import type { Learned, LearnedHead, ProductLearned } from '../core/pricing/outlook/learned.ts'
import type { ReporterVotes } from '../core/pricing/trust.ts'
import type { Database } from './database.ts'
import { isId } from './refusal.ts'

/** Which of two processes that learnt the same day keeps it, the other finds it kept. Any number, as long as no other lock here has it. */
const ONE_AT_A_TIME = 20_261_201
/** Raised with every change of what `learn` gives or how: a snapshot of another method is not read. */
const METHOD = 3
/** Rows that one statement carries. */
const BATCH = 500

/**
 * Accepted sightings of some products since a day, oldest first, as a text that `pricesTold` reads: what there is to learn from. The record of a region is too much for one answer, and a row that
 * is only passed on need not become an object for it.
 */
export async function acceptedText(db: Kysely<Database>, productIds: readonly string[], since: CivilDate): Promise<string> {
  if (productIds.length === 0) return '[]'
  const { told } = await db
    .selectFrom('sighting')
    .select(sql<string>`coalesce(json_agg(${TOLD} order by seen_on, received_at, id), '[]')::text`.as('told'))
    .where('product_id', 'in', productIds)
    .where('accepted', '=', true)
    .where('seen_on', '>=', since)
    .executeTakeFirstOrThrow()
  return told
}

/** One sighting as `pricesTold` takes it. */
const TOLD = sql`json_build_array(id, product_id, store_id, condition, price_minor, printed_regular_minor, seen_on, reporter_id, confirmations, disputes)`

/** How many sightings each product has, of whatever age; those without are left out. */
export async function sightingsByProduct(db: Kysely<Database>): Promise<Map<string, number>> {
  const { rows } = await sql<{ product_id: string; seen: number }>`
    select product_id, sum(sightings)::int as seen from price_summary group by product_id`.execute(db)
  return new Map(rows.map(({ product_id, seen }) => [product_id, seen]))
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

/**
 * Keeps a snapshot, unless another process kept one of the same day meanwhile: then false. Those of days that have not come yet go: a clock was ahead.
 * Must run in a transaction, which holds the lock.
 */
export async function keepLearned(trx: Transaction<Database>, { products, trust, ...learned }: Learned): Promise<boolean> {
  await sql`select pg_advisory_xact_lock(${sql.lit(ONE_AT_A_TIME)})`.execute(trx)
  await trx.deleteFrom('price_snapshot').where('day', '>', learned.asOf).execute()
  const kept = await trx
    .insertInto('price_snapshot')
    .values({ day: learned.asOf, method: METHOD, learned: sql<LearnedHead>`${JSON.stringify(learned)}::text::jsonb` })
    .onConflict((conflict) => conflict.columns(['day', 'method']).doNothing())
    .returning('day')
    .executeTakeFirst()
  if (kept === undefined) return false
  const ofSnapshot = { day: learned.asOf, method: METHOD }
  for (const some of batches(Object.entries(products)))
    await trx
      .insertInto('price_snapshot_product')
      .values(
        some.map(([product_id, product]) => ({
          ...ofSnapshot,
          product_id,
          learned: sql<ProductLearned>`${JSON.stringify(product)}::text::jsonb`,
        })),
      )
      .execute()
  for (const some of batches(Object.entries(trust)))
    await trx
      .insertInto('price_snapshot_reporter')
      .values(some.map(([reporter_id, votes]) => ({ ...ofSnapshot, reporter_id, ...votes })))
      .execute()
  return true
}

const batches = <Value>(values: readonly Value[]): Value[][] =>
  Array.from({ length: Math.ceil(values.length / BATCH) }, (_, index) => values.slice(index * BATCH, (index + 1) * BATCH))

/**
 * What others said of each reporter's sightings: one counts once, however many votes it has, and withdrawn ones count as nothing (`trustByReporter`). What came with a file is the word of
 * a list: a vote on it says nothing of whoever imported it.
 */
export async function votesByReporter(db: Kysely<Database>): Promise<Record<string, ReporterVotes>> {
  const { rows } = await sql<{ reporter_id: string } & ReporterVotes>`
    select reporter_id, (count(*) filter (where disputes < confirmations))::int as confirmed,
      (count(*) filter (where disputes >= confirmations))::int as disputed
    from sighting where withdrawn_at is null and not imported and confirmations + disputes > 0 group by reporter_id`.execute(db)
  return Object.fromEntries(rows.map(({ reporter_id, confirmed, disputed }) => [reporter_id, { confirmed, disputed }]))
}

/** Snapshots of days before one are let go. */
export async function dropLearnedBefore(db: Kysely<Database>, day: CivilDate): Promise<void> {
  await db.deleteFrom('price_snapshot').where('day', '<', day).execute()
}

/** The newest snapshot up to `today` with what it says of some products and of whoever reported them; undefined where nothing was learnt yet. */
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
  if (wanted.length === 0) return { ...head.learned, products: {}, trust: {} }
  const products = await db
    .selectFrom('price_snapshot_product')
    .select(['product_id', 'learned'])
    .where('day', '=', head.day)
    .where('method', '=', METHOD)
    .where('product_id', 'in', wanted)
    .execute()
  return {
    ...head.learned,
    products: Object.fromEntries(products.map((row) => [row.product_id, row.learned])),
    trust: await readTrust(db, wanted, head.day),
  }
}

/** What the newest snapshot says of one reporter, as a column of another query: null for a newcomer. */
export const votesOnReporter = (reporterId: string): RawBuilder<ReporterVotes | null> =>
  sql`(select json_build_object('confirmed', confirmed, 'disputed', disputed) from price_snapshot_reporter where method = ${sql.lit(METHOD)} and reporter_id = ${reporterId}
    and day = (select max(day) from price_snapshot where method = ${sql.lit(METHOD)}))`

async function readTrust(db: Kysely<Database>, productIds: readonly string[], day: CivilDate): Promise<Learned['trust']> {
  const rows = await db
    .selectFrom('price_snapshot_reporter')
    .select(['reporter_id', 'confirmed', 'disputed'])
    .where('day', '=', day)
    .where('method', '=', METHOD)
    .where('reporter_id', 'in', (of) => of.selectFrom('sighting').select('reporter_id').where('product_id', 'in', productIds))
    .execute()
  return Object.fromEntries(rows.map(({ reporter_id, confirmed, disputed }) => [reporter_id, { confirmed, disputed }]))
}

/** Every product with its kind, archived ones too: their sales teach of the kind. */
export const kindsOfProducts = (db: Kysely<Database>): Promise<Array<{ id: string; kind: Kind }>> =>
  db.selectFrom('product').select(['id', 'kind']).orderBy('id').execute()
