import { sql, type Kysely, type Transaction } from 'kysely'
import type { SaleTime, SaleTimeRule } from '../core/pricing/sale-time.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { isId, type Refusal } from './refusal.ts'

export type SaleTimeFields = Omit<SaleTime, 'id' | 'version'>
type SaleTimeRefusal = Refusal<'name_taken' | 'store_unknown'>
/** A calendar of more lines than these is read by nobody. */
const MOST_SALE_TIMES = 100

/** By name, each with the stores it is kept to in the order of theirs. */
export async function listSaleTimes(db: Kysely<Database>): Promise<SaleTime[]> {
  const rows = await db
    .selectFrom('sale_time')
    .selectAll()
    .orderBy(sql`lower(name)`)
    .execute()
  const stores = await db
    .selectFrom('sale_time_store')
    .innerJoin('store', 'store.id', 'sale_time_store.store_id')
    .select(['sale_time_id', 'store_id'])
    .orderBy(sql`lower(store.name)`)
    .execute()
  const ofTime = Map.groupBy(stores, (row) => row.sale_time_id)
  return rows.map(({ id, name, rule, length_days, note, version }) => ({
    id,
    name,
    when: rule,
    lengthDays: length_days,
    storeIds: (ofTime.get(id) ?? []).map((row) => row.store_id),
    note,
    version,
  }))
}

export const findSaleTime = async (db: Kysely<Database>, id: string): Promise<SaleTime | undefined> =>
  (await listSaleTimes(db)).find((one) => one.id === id)

/** Must run in a transaction: the sale time and its stores are one. */
export async function createSaleTime(
  trx: Transaction<Database>,
  fields: SaleTimeFields,
): Promise<Result<SaleTime, SaleTimeRefusal | Refusal<'full'>>> {
  const { count } = await trx
    .selectFrom('sale_time')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .executeTakeFirstOrThrow()
  if (count >= MOST_SALE_TIMES)
    return refuse({ code: 'full', message: `There are ${MOST_SALE_TIMES} sale times, which is the most. Take out those that are over.` })
  const fault = await faultOf(trx, fields, null)
  if (fault) return refuse(fault)
  const { id } = await trx.insertInto('sale_time').values(valuesOf(fields)).returning('id').executeTakeFirstOrThrow()
  return ok(await writeStores(trx, id, fields))
}

/** Errors: `stale` where the sale time is not at the version the change was based on. */
export async function updateSaleTime(
  trx: Transaction<Database>,
  id: string,
  expectedVersion: number,
  fields: SaleTimeFields,
): Promise<Result<SaleTime, SaleTimeRefusal | Refusal<'not_found' | 'stale'>>> {
  const found = isId(id)
    ? await trx.selectFrom('sale_time').select('version').where('id', '=', id).forUpdate().executeTakeFirst()
    : undefined
  if (!found) return refuse(NO_SALE_TIME)
  if (found.version !== expectedVersion) return refuse({ code: 'stale', message: 'Someone else changed this sale time meanwhile.' })
  const fault = await faultOf(trx, fields, id)
  if (fault) return refuse(fault)
  await trx
    .updateTable('sale_time')
    .set({ ...valuesOf(fields), version: expectedVersion + 1 })
    .where('id', '=', id)
    .execute()
  await trx.deleteFrom('sale_time_store').where('sale_time_id', '=', id).execute()
  return ok(await writeStores(trx, id, fields))
}

/** What was seen in its days stays on record. */
export async function deleteSaleTime(db: Kysely<Database>, id: string): Promise<Result<null, Refusal<'not_found'>>> {
  const { numDeletedRows } = isId(id) ? await db.deleteFrom('sale_time').where('id', '=', id).executeTakeFirst() : { numDeletedRows: 0n }
  return numDeletedRows > 0n ? ok(null) : refuse(NO_SALE_TIME)
}

const NO_SALE_TIME = { code: 'not_found' as const, message: 'There is no such sale time.' }

const valuesOf = ({ name, when, lengthDays, note }: SaleTimeFields) => ({
  name,
  rule: sql<SaleTimeRule>`${JSON.stringify(when)}::text::jsonb`,
  length_days: lengthDays,
  note,
})

async function faultOf(
  trx: Transaction<Database>,
  { name, storeIds }: SaleTimeFields,
  id: string | null,
): Promise<SaleTimeRefusal | undefined> {
  const twin = await trx
    .selectFrom('sale_time')
    .select('id')
    .where(sql`lower(name)`, '=', sql`lower(${name})`)
    .executeTakeFirst()
  if (twin && twin.id !== id) return { code: 'name_taken', field: 'name', message: `There is already a sale time called "${name}".` }
  if (storeIds.length === 0) return undefined
  const known = await trx.selectFrom('store').select('id').where('id', 'in', storeIds).execute()
  const missing = storeIds.findIndex((one) => !known.some((store) => store.id === one))
  return missing < 0 ? undefined : { code: 'store_unknown', field: `storeIds.${missing}`, message: 'This store is not known.' }
}

async function writeStores(trx: Transaction<Database>, id: string, { storeIds }: SaleTimeFields): Promise<SaleTime> {
  if (storeIds.length > 0)
    await trx
      .insertInto('sale_time_store')
      .values([...new Set(storeIds)].map((storeId) => ({ sale_time_id: id, store_id: storeId })))
      .execute()
  const written = await findSaleTime(trx, id)
  if (!written) throw new Error('a sale time that was just written is there')
  return written
}
