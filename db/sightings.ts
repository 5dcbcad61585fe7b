import { sql, type Kysely } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { SightingRow } from '../core/pricing/record.ts'
import type { PostedSighting } from '../core/pricing/schema.ts'
import type { Doubt, Sighting } from '../core/pricing/sighting.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { nameFor } from './person-names.ts'
import { factsOf, readBasis, type PairBasis } from './price-summaries.ts'
import { constraintOf, isId, type Refusal } from './refusal.ts'
import { isSightingKey } from './sighting-parts.ts'
import { rowOf, sightingOf, sightingRows } from './sighting-rows.ts'
import type { Viewer } from './viewer.ts'

/** What the phone sends; the reporter is the viewer. */
export type SightingFields = PostedSighting
export type SightingRefusal = Refusal<'id_taken' | 'product_unknown' | 'product_archived' | 'store_unknown' | 'store_archived' | 'too_many'>

/**
 * A member who walks along the shelves posts two a minute for an hour at most. Whoever posts faster is a script, and every further row would
 * bury what others saw. Posts at the same moment do not see each other: some more than this may get in then.
 */
const POSTS_AN_HOUR = 120
/** Each try that fails is one in which somebody else posted the same product at the same store: so many within milliseconds are no crowd but a fault. */
const TRIES = 20

/**
 * Takes a sighting once, whatever a phone repeats: the same id with the same body from the same person answers with the stored one.
 *
 * Errors: `id_taken` where the id stands for something else; `too_many` where this person has posted enough for an hour; the other codes say
 * why no sighting of this product there is taken.
 */
export async function insertSighting(
  db: Kysely<Database>,
  viewer: Viewer,
  fields: SightingFields,
  doubt: Doubt | null,
  known?: PairBasis,
): Promise<Result<{ sighting: SightingRow; repeated: boolean }, SightingRefusal>> {
  let basis = known ?? (await readBasis(db, fields))
  for (let tries = 0; tries < TRIES; tries += 1) {
    const written = await insertAndRead(db, viewer, fields, doubt, basis)
    if (written) return ok({ sighting: written, repeated: false })
    const { version } = basis
    basis = await readBasis(db, fields)
    if (basis.version === version) break
  }
  const stored = await findSighting(db, viewer, fields.id)
  if (stored) {
    if (isSame(stored, fields, viewer)) return ok({ sighting: stored, repeated: true })
    return refuse({ code: 'id_taken', field: 'id', message: 'Another sighting was already taken under this id. Post it as a new one.' })
  }
  return refuse(await reasonAgainst(db, viewer, fields))
}

interface Written {
  received_at: Date
  product_name: string
  store_name: string
  reporter_name: string
}

/**
 * One statement: writes the row unless the id is taken, the product or store takes none, the hour is full or the summary of its product at its store is no longer the one it was
 * added to; keeps that summary; and reads back what the sender does not know. Whoever comes second to a summary waits for the first, and finds it changed.
 */
async function insertAndRead(
  db: Kysely<Database>,
  viewer: Viewer,
  f: SightingFields,
  doubt: Doubt | null,
  { version, accepted }: PairBasis,
): Promise<SightingRow | undefined> {
  const counts = doubt === null
  const added: Omit<Sighting, 'receivedAt'> = { ...f, reporterId: viewer.id, doubt, withdrawn: false, confirmations: 0, disputes: 0 }
  const { rows } = await sql<Written>`
    with place as materialized (
      select product.id as product_id, product.name as product_name, store.id as store_id, store.name as store_name,
        ${nameFor(viewer, 'reporter')} as reporter_name
      from product, store, person as reporter
      where product.id = ${f.productId} and store.id = ${f.storeId} and reporter.id = ${viewer.id} and not product.archived and not store.archived
        and not exists (select from sighting where id = ${f.id}::uuid)
        and (select count(*) from sighting where reporter_id = ${viewer.id} and received_at > now() - interval '1 hour') < ${POSTS_AN_HOUR}
    ), kept as (
      insert into price_summary as kept (product_id, store_id, sightings, newest_id, newest_on, newest_at, facts)
      select product_id, store_id, 1, new.id, new.seen_on, new.at, ${factsOf(counts ? [...accepted, added] : accepted)}::text
      from place, (select case when ${counts}::boolean then ${f.id}::uuid end as id, case when ${counts} then ${f.seenOn}::date end as seen_on,
        case when ${counts} then now() end as at) as new
      on conflict (product_id, store_id) do update set sightings = kept.sightings + 1, version = kept.version + 1, facts = excluded.facts,
        newest_id = case when ${NEWER} then excluded.newest_id else kept.newest_id end,
        newest_on = case when ${NEWER} then excluded.newest_on else kept.newest_on end,
        newest_at = case when ${NEWER} then excluded.newest_at else kept.newest_at end
      where kept.version = ${version}::bigint
      returning product_id, store_id
    ), written as (
      insert into sighting (id, product_id, store_id, condition, price_minor, printed_regular_minor, seen_on, last_day, evidence, note, reporter_id, doubt)
      select ${f.id}::uuid, kept.product_id, kept.store_id, ${f.condition}::text, ${f.priceMinor}::bigint, ${f.printedRegularMinor}::bigint, ${f.seenOn}::date,
        ${f.lastDay}::date, ${f.evidence}::text, ${f.note}::text, ${viewer.id}::uuid, ${doubt}::jsonb
      from kept
      returning received_at
    )
    select written.received_at, place.product_name, place.store_name, place.reporter_name from written, place`
    .execute(db)
    .catch(noneWhereTaken)
  const [row] = rows
  return row && writtenRow(added, row)
}

/** The viewer is the reporter and has voted on nothing that was written this moment. */
const writtenRow = (added: Omit<Sighting, 'receivedAt'>, row: Written): SightingRow => ({
  ...added,
  receivedAt: row.received_at.toISOString(),
  productName: row.product_name,
  storeName: row.store_name,
  reporterName: row.reporter_name,
  goneOn: null,
  own: true,
  imported: false,
  tie: null,
  oneMore: null,
  mayVote: false,
  myVote: null,
  withdrawnReason: null,
  goneBy: null,
})

/** On the board the newer of two stands, the lower id where both came at once: the order of its query. */
const NEWER = sql`(excluded.newest_id is not null and (kept.newest_id is null or (excluded.newest_on, excluded.newest_at) > (kept.newest_on, kept.newest_at)
  or ((excluded.newest_on, excluded.newest_at) = (kept.newest_on, kept.newest_at) and excluded.newest_id < kept.newest_id)))`

/** The same id from two places at one moment: the second meets the first's row, and its summary is left as it was. */
function noneWhereTaken(error: unknown): { rows: Written[] } {
  if (isSightingKey(constraintOf(error))) return { rows: [] }
  throw error
}

function isSame(stored: SightingRow, fields: SightingFields, viewer: Viewer): boolean {
  if (stored.reporterId !== viewer.id) return false
  const { id: _, ...body } = fields
  return Object.entries(body).every(([key, value]) => stored[key as keyof typeof body] === value)
}

async function reasonAgainst(db: Kysely<Database>, viewer: Viewer, fields: SightingFields): Promise<SightingRefusal> {
  const product =
    isId(fields.productId) &&
    (await db.selectFrom('product').select(['name', 'archived']).where('id', '=', fields.productId).executeTakeFirst())
  if (!product) return { code: 'product_unknown', field: 'productId', message: 'There is no such product.' }
  const store =
    isId(fields.storeId) && (await db.selectFrom('store').select(['name', 'archived']).where('id', '=', fields.storeId).executeTakeFirst())
  if (!store) return { code: 'store_unknown', field: 'storeId', message: 'There is no such store.' }
  if (store.archived)
    return { code: 'store_archived', field: 'storeId', message: `"${store.name}" is archived and takes no new sightings.` }
  if (product.archived)
    return { code: 'product_archived', field: 'productId', message: `"${product.name}" is archived and takes no new sightings.` }
  const retryAfterS = await secondsUntilNextPost(db, viewer)
  return {
    code: 'too_many',
    retryAfterS,
    message: `You posted ${POSTS_AN_HOUR} sightings within an hour. The next one is taken in ${Math.ceil(retryAfterS / 60)} min.`,
  }
}

async function secondsUntilNextPost(db: Kysely<Database>, viewer: Viewer): Promise<number> {
  const row = await db
    .selectFrom('sighting')
    .select(sql<number>`ceil(extract(epoch from received_at + interval '1 hour' - now()))::integer`.as('seconds'))
    .where('reporter_id', '=', viewer.id)
    .orderBy('received_at', 'desc')
    .offset(POSTS_AN_HOUR - 1)
    .limit(1)
    .executeTakeFirst()
  return Math.max(1, row?.seconds ?? 1)
}

export async function findSighting(db: Kysely<Database>, viewer: Viewer, id: string): Promise<SightingRow | undefined> {
  if (!isId(id)) return undefined
  const row = await sightingRows(db, viewer).where('sighting.id', '=', id).executeTakeFirst()
  return row && rowOf(row, viewer)
}

/** All that was not withdrawn, oldest first: what prices are made from. */
export async function sightingsOfProducts(db: Kysely<Database>, productIds: string[], since?: CivilDate): Promise<Sighting[]> {
  const wanted = productIds.filter(isId)
  if (wanted.length === 0) return []
  let query = db
    .selectFrom('sighting')
    .selectAll()
    .where('product_id', 'in', wanted)
    .where('withdrawn_at', 'is', null)
    .orderBy('seen_on')
    .orderBy('received_at')
    .orderBy('id')
  if (since !== undefined) query = query.where('seen_on', '>=', since)
  return (await query.execute()).map(sightingOf)
}

/** The whole record of a product, newest first, withdrawn ones included and marked. */
export async function sightingRowsOfProduct(db: Kysely<Database>, viewer: Viewer, productId: string): Promise<SightingRow[]> {
  if (!isId(productId)) return []
  const rows = await sightingRows(db, viewer)
    .where('sighting.product_id', '=', productId)
    .orderBy('sighting.seen_on', 'desc')
    .orderBy('sighting.received_at', 'desc')
    .orderBy('sighting.id', 'desc')
    .execute()
  return rows.map((row) => rowOf(row, viewer))
}

/**
 * The newest sightings of a product, and some others of it by their ids, newest first. One statement of the same words however many there are: planning another takes longer than reading the rows.
 */
export async function newestRowsOfProduct(
  db: Kysely<Database>,
  viewer: Viewer,
  productId: string,
  { newest, others }: { newest: number; others: readonly string[] },
): Promise<SightingRow[]> {
  if (!isId(productId)) return []
  const rows = await sightingRows(db, viewer)
    .where(
      sql<boolean>`sighting.id in (select listed.id from (select id from sighting where product_id = ${productId}
        order by seen_on desc, received_at desc, id desc limit ${newest}) as listed
        union select other.id::uuid from jsonb_array_elements_text(${JSON.stringify(others.filter(isId))}::text::jsonb) as other (id))`,
    )
    .orderBy('sighting.seen_on', 'desc')
    .orderBy('sighting.received_at', 'desc')
    .orderBy('sighting.id', 'desc')
    .execute()
  return rows.map((row) => rowOf(row, viewer))
}
