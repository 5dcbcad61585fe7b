import { sql, type Kysely, type Transaction } from 'kysely'
import type { Region } from '../core/catalog/region.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { isId, type Refusal } from './refusal.ts'

export type RegionFields = Omit<Region, 'id' | 'version'>
type RegionRefusal = Refusal<'name_taken' | 'store_unknown'>

/** By name, each with its stores in the order of theirs. */
export async function listRegions(db: Kysely<Database>): Promise<Region[]> {
  const rows = await db
    .selectFrom('region')
    .selectAll()
    .orderBy(sql`lower(name)`)
    .execute()
  const stores = await db
    .selectFrom('region_store')
    .innerJoin('store', 'store.id', 'region_store.store_id')
    .select(['region_id', 'store_id'])
    .orderBy(sql`lower(store.name)`)
    .execute()
  const byRegion = Map.groupBy(stores, (row) => row.region_id)
  return rows.map(({ id, name, version }) => ({ id, name, version, storeIds: (byRegion.get(id) ?? []).map((row) => row.store_id) }))
}

export const findRegion = async (db: Kysely<Database>, id: string): Promise<Region | undefined> =>
  (await listRegions(db)).find((region) => region.id === id)

/** Names of some stores as one text, in their order; "none" of none. */
export async function namesOfStores(db: Kysely<Database>, ids: readonly string[]): Promise<string> {
  if (ids.length === 0) return 'none'
  const rows = await db
    .selectFrom('store')
    .select('name')
    .where('id', 'in', ids)
    .orderBy(sql`lower(name)`)
    .execute()
  return rows.map(({ name }) => name).join(', ')
}

/** Must run in a transaction: the region and its stores are one. */
export async function createRegion(trx: Transaction<Database>, fields: RegionFields): Promise<Result<Region, RegionRefusal>> {
  const fault = await faultOf(trx, fields, null)
  if (fault) return refuse(fault)
  const { id } = await trx.insertInto('region').values({ name: fields.name }).returning('id').executeTakeFirstOrThrow()
  return ok(await writeStores(trx, id, fields))
}

/** Errors: `stale` where the region is not at the version the change was based on. */
export async function updateRegion(
  trx: Transaction<Database>,
  id: string,
  expectedVersion: number,
  fields: RegionFields,
): Promise<Result<Region, RegionRefusal | Refusal<'not_found' | 'stale'>>> {
  if (!isId(id)) return refuse(NO_REGION)
  const found = await trx.selectFrom('region').select('version').where('id', '=', id).forUpdate().executeTakeFirst()
  if (!found) return refuse(NO_REGION)
  if (found.version !== expectedVersion) return refuse({ code: 'stale', message: 'Someone else changed this region meanwhile.' })
  const fault = await faultOf(trx, fields, id)
  if (fault) return refuse(fault)
  await trx
    .updateTable('region')
    .set({ name: fields.name, version: expectedVersion + 1 })
    .where('id', '=', id)
    .execute()
  const before = await trx.deleteFrom('region_store').where('region_id', '=', id).returning('store_id').execute()
  const known = new Set(before.map((row) => row.store_id))
  if (fields.storeIds.some((storeId) => !known.has(storeId))) await lookAtWatchesOf(trx, id)
  return ok(await writeStores(trx, id, fields))
}

/** What a store that came in has already is news to all who watch in the region: their watches are looked at soon after, as one that was just set. */
const lookAtWatchesOf = (trx: Transaction<Database>, id: string) =>
  sql`insert into watch_due (watch_id) select id from watch where region_id = ${id} and ended_at is null`.execute(trx)

/** A draft that names a region that is gone takes the stores it names, or all; the watches of it end. */
export async function deleteRegion(db: Kysely<Database>, id: string): Promise<Result<null, Refusal<'not_found'>>> {
  const { numDeletedRows } = isId(id) ? await db.deleteFrom('region').where('id', '=', id).executeTakeFirst() : { numDeletedRows: 0n }
  return numDeletedRows > 0n ? ok(null) : refuse(NO_REGION)
}

const NO_REGION = { code: 'not_found' as const, message: 'There is no such region.' }

async function faultOf(
  trx: Transaction<Database>,
  { name, storeIds }: RegionFields,
  id: string | null,
): Promise<RegionRefusal | undefined> {
  const twin = await trx
    .selectFrom('region')
    .select('id')
    .where(sql`lower(name)`, '=', name.toLowerCase())
    .executeTakeFirst()
  if (twin && twin.id !== id) return { code: 'name_taken', field: 'name', message: `There is already a region called "${name}".` }
  const known = await trx.selectFrom('store').select('id').where('id', 'in', storeIds).execute()
  const missing = storeIds.findIndex((one) => !known.some((store) => store.id === one))
  if (missing >= 0) return { code: 'store_unknown', field: `storeIds.${missing}`, message: 'This store is not known.' }
  return undefined
}

async function writeStores(trx: Transaction<Database>, id: string, { storeIds }: RegionFields): Promise<Region> {
  await trx
    .insertInto('region_store')
    .values([...new Set(storeIds)].map((storeId) => ({ region_id: id, store_id: storeId })))
    .execute()
  const written = await findRegion(trx, id)
  if (!written) throw new Error('a region that was just written is there')
  return written
}
