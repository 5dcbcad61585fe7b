import { sql, type Kysely, type Selectable, type Transaction } from 'kysely'
import {
  MOST_WATCHES,
  type NewWatch,
  type Watch,
  type WatchedRequirement,
  type WatchTerms,
  type WatchView,
} from '../core/pricing/watches/watch.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, WatchTable } from './database.ts'
import { isId, type Refusal } from './refusal.ts'
import { advises, type Viewer } from './viewer.ts'

type WatchRefusal = Refusal<'product_unknown' | 'region_unknown' | 'store_unknown' | 'quote_unknown'>

/** One's own that run, newest first, and those that ended with their region, until their owner takes them off the list. */
export async function listWatches(db: Kysely<Database>, viewer: Viewer): Promise<WatchView[]> {
  const rows = await views(db, viewer)
    .where((eb) => eb.or([eb('watch.ended_at', 'is', null), eb('watch.region_gone', '=', true)]))
    .orderBy('watch.created_at', 'desc')
    .orderBy('watch.id')
    .execute()
  return rows.map(viewOf)
}

/** One's own, ended or not. */
export async function findWatch(db: Kysely<Database>, viewer: Viewer, id: string): Promise<WatchView | undefined> {
  if (!isId(id)) return undefined
  const row = await views(db, viewer).where('watch.id', '=', id).executeTakeFirst()
  return row && viewOf(row)
}

/**
 * Takes a watch once, whatever a phone repeats: the same id from the same person answers with the stored one. It is looked at soon after.
 *
 * Errors: `id_taken` where the id is somebody else's; `full` where this person has as many as anybody may; else what it names is not there.
 */
export async function createWatch(
  trx: Transaction<Database>,
  viewer: Viewer,
  watch: NewWatch,
  currency: string,
): Promise<Result<{ watch: WatchView; repeated: boolean }, WatchRefusal | Refusal<'full' | 'id_taken'>>> {
  // One at a time of a person, so that two at once are not both the last that fits.
  await sql`select from person where id = ${viewer.id} for update`.execute(trx)
  const before = await findWatch(trx, viewer, watch.id)
  if (before) return ok({ watch: before, repeated: true })
  const fault = (await fullOf(trx, viewer)) ?? (await faultOf(trx, viewer, watch))
  if (fault) return refuse(fault)
  const written = await trx
    .insertInto('watch')
    .values({
      id: watch.id,
      person_id: viewer.id,
      product_id: watch.productId,
      requirement: watch.requirement && sql<WatchedRequirement>`${JSON.stringify(watch.requirement)}::text::jsonb`,
      currency,
      ...termValues(watch),
    })
    .onConflict((clash) => clash.column('id').doNothing())
    .returning('id')
    .executeTakeFirst()
  if (!written)
    return refuse({ code: 'id_taken', field: 'id', message: 'Another watch was already taken under this id. Set it as a new one.' })
  await trx.insertInto('watch_due').values({ watch_id: watch.id }).execute()
  return ok({ watch: await readBack(trx, viewer, watch.id), repeated: false })
}

/** Errors: `stale` where the watch is not at the version the change was based on; `closed` where it has ended. */
export async function updateWatch(
  trx: Transaction<Database>,
  viewer: Viewer,
  id: string,
  expectedVersion: number,
  terms: WatchTerms,
  currency: string,
): Promise<Result<WatchView, WatchRefusal | Refusal<'not_found' | 'stale' | 'closed'>>> {
  const found = await lockOwn(trx, viewer, id)
  if (!found) return refuse(NO_WATCH)
  if (found.ended_at !== null) return refuse({ code: 'closed', message: 'This watch has ended. Set a new one.' })
  if (found.version !== expectedVersion) return refuse({ code: 'stale', message: 'This watch was changed meanwhile, on another device.' })
  const fault = await placeFault(trx, terms)
  if (fault) return refuse(fault)
  await trx
    .updateTable('watch')
    .set({ ...termValues(terms), currency, version: expectedVersion + 1 })
    .where('id', '=', id)
    .execute()
  await trx.insertInto('watch_due').values({ watch_id: id }).execute()
  return ok(await readBack(trx, viewer, id))
}

/** How many running watches there are of a region, whoever set them. */
export async function watchesOfRegion(db: Kysely<Database>, regionId: string): Promise<number> {
  const { count } = await db
    .selectFrom('watch')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('region_id', '=', regionId)
    .where('ended_at', 'is', null)
    .executeTakeFirstOrThrow()
  return count
}

/** What it told stays. One that ended with its region is taken off the list; ending another again changes nothing. */
export async function endWatch(db: Kysely<Database>, viewer: Viewer, id: string): Promise<Result<null, Refusal<'not_found'>>> {
  if (!isId(id)) return refuse(NO_WATCH)
  const { numUpdatedRows } = await db
    .updateTable('watch')
    .set((eb) => ({ ended_at: sql<Date>`coalesce(ended_at, now())`, region_gone: false, version: eb('version', '+', 1) }))
    .where('id', '=', id)
    .where('person_id', '=', viewer.id)
    .executeTakeFirst()
  return numUpdatedRows > 0n ? ok(null) : refuse(NO_WATCH)
}

const NO_WATCH: Refusal<'not_found'> = { code: 'not_found', message: 'There is no such watch.' }

const lockOwn = (trx: Transaction<Database>, viewer: Viewer, id: string) =>
  isId(id)
    ? trx
        .selectFrom('watch')
        .select(['version', 'ended_at'])
        .where('id', '=', id)
        .where('person_id', '=', viewer.id)
        .forUpdate()
        .executeTakeFirst()
    : Promise.resolve(undefined)

async function readBack(trx: Transaction<Database>, viewer: Viewer, id: string): Promise<WatchView> {
  const watch = await findWatch(trx, viewer, id)
  if (!watch) throw new Error('a watch that was just written is there')
  return watch
}

async function fullOf(trx: Transaction<Database>, viewer: Viewer): Promise<Refusal<'full'> | undefined> {
  const { count } = await trx
    .selectFrom('watch')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('person_id', '=', viewer.id)
    .where('ended_at', 'is', null)
    .executeTakeFirstOrThrow()
  if (count < MOST_WATCHES) return undefined
  return {
    code: 'full',
    message: `You have ${MOST_WATCHES} watches, which is the most. End one that you no longer need, then set this one.`,
  }
}

async function faultOf(trx: Transaction<Database>, viewer: Viewer, watch: NewWatch): Promise<WatchRefusal | undefined> {
  const { productId, requirement } = watch
  if (productId !== null && !(await isThere(trx, 'product', productId)))
    return { code: 'product_unknown', field: 'productId', message: 'There is no such product.' }
  const fits = requirement?.fits ?? null
  if (fits !== null && !(await isQuoteFor(trx, viewer, fits.quoteId)))
    return { code: 'quote_unknown', field: 'requirement.fits.quoteId', message: 'There is no such quote.' }
  return placeFault(trx, watch)
}

async function placeFault(trx: Transaction<Database>, { regionId, storeIds }: WatchTerms): Promise<WatchRefusal | undefined> {
  if (regionId !== null && !(await isThere(trx, 'region', regionId)))
    return { code: 'region_unknown', field: 'regionId', message: 'There is no such region.' }
  if (storeIds.length === 0) return undefined
  const known = new Set((await trx.selectFrom('store').select('id').where('id', 'in', storeIds).execute()).map(({ id }) => id))
  const missing = storeIds.findIndex((id) => !known.has(id))
  return missing < 0 ? undefined : { code: 'store_unknown', field: `storeIds.${missing}`, message: 'This store is not known.' }
}

const isQuoteFor = async (trx: Transaction<Database>, viewer: Viewer, id: string): Promise<boolean> =>
  isId(id) && (await trx.selectFrom('quote').select('id').where('id', '=', id).where(advises(viewer)).executeTakeFirst()) !== undefined

const isThere = async (trx: Transaction<Database>, table: 'product' | 'region', id: string): Promise<boolean> =>
  isId(id) && (await trx.selectFrom(table).select('id').where('id', '=', id).executeTakeFirst()) !== undefined

/** Words and ids only: neither needs quoting in the text of an array. */
const arrayOf = (items: readonly string[]): string => `{${items.join(',')}}`
const termValues = ({ limitMinor, byDay, conditions, regionId, storeIds }: WatchTerms) => ({
  limit_minor: limitMinor,
  by_day: byDay,
  conditions: sql<Watch['conditions']>`${arrayOf(conditions)}::text::text[]`,
  region_id: regionId,
  store_ids: sql<string[]>`${arrayOf(storeIds)}::text::uuid[]`,
})

const views = (db: Kysely<Database>, viewer: Viewer) =>
  db
    .selectFrom('watch')
    .leftJoin('product', 'product.id', 'watch.product_id')
    .leftJoin('quote', (join) =>
      // Whoever advises no longer reads no number of a quote either.
      join.on(sql<boolean>`quote.id = (watch.requirement -> 'fits' ->> 'quoteId')::uuid`).on(advises(viewer)),
    )
    .selectAll('watch')
    .select(['product.name as product_name', 'product.kind as product_kind', 'quote.number as quote_number'])
    .select((eb) =>
      eb
        .selectFrom('notice')
        .select((inner) => inner.fn.countAll<number>().as('count'))
        .whereRef('notice.watch_id', '=', 'watch.id')
        .as('told'),
    )
    .where('watch.person_id', '=', viewer.id)

type ViewRow = Selectable<WatchTable> & {
  product_name: string | null
  product_kind: WatchView['kind'] | null
  quote_number: string | null
  told: number | null
}

function viewOf(row: ViewRow): WatchView {
  const watch = watchOf(row)
  const kind = row.product_kind ?? watch.requirement?.kind
  if (kind === undefined) throw new Error('a watch is of a product or of a requirement')
  return { ...watch, productName: row.product_name, kind, quoteNumber: row.quote_number, regionGone: row.region_gone, told: row.told ?? 0 }
}

export const watchOf = (row: Omit<Selectable<WatchTable>, 'kind'>): Watch => ({
  id: row.id,
  productId: row.product_id,
  requirement: row.requirement,
  limitMinor: row.limit_minor,
  currency: row.currency,
  byDay: row.by_day,
  conditions: row.conditions,
  regionId: row.region_id,
  storeIds: row.store_ids,
  createdAt: row.created_at.toISOString(),
  endedAt: row.ended_at?.toISOString() ?? null,
  version: row.version,
})
