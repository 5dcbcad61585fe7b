import { sql, type Kysely, type Selectable, type Transaction } from 'kysely'
import type { Store, StoreRate } from '../core/catalog/store.ts'
import { storeCurrency } from '../core/pricing/foreign-stores.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, StoreTable } from './database.ts'
import { getInstall } from './install.ts'
import { constraintOf, inTransaction, isId, type Refusal } from './refusal.ts'

export type StoreFields = Omit<Store, 'id' | 'version'>

/** By name. Archived ones stay away unless asked for. */
export async function listStores(db: Kysely<Database>, filter: { archived?: boolean | 'all' } = {}): Promise<Store[]> {
  const archived = filter.archived ?? false
  let query = db
    .selectFrom('store')
    .selectAll()
    .orderBy(sql`lower(name)`)
    .orderBy('id')
  if (archived !== 'all') query = query.where('archived', '=', archived)
  return (await query.execute()).map(storeOf)
}

export async function findStore(db: Kysely<Database>, id: string): Promise<Store | undefined> {
  return (await getStores(db, [id]))[0]
}

/** Those that exist, archived ones too. */
export async function getStores(db: Kysely<Database>, ids: string[]): Promise<Store[]> {
  const wanted = ids.filter(isId)
  if (wanted.length === 0) return []
  return (
    await db
      .selectFrom('store')
      .selectAll()
      .where('id', 'in', wanted)
      .orderBy(sql`lower(name)`)
      .execute()
  ).map(storeOf)
}

/** The store whose install this is; undefined where none is marked. */
export async function ownStore(db: Kysely<Database>): Promise<Store | undefined> {
  const row = await db.selectFrom('store').selectAll().where('own', '=', true).executeTakeFirst()
  return row && storeOf(row)
}

export async function createStore(
  db: Kysely<Database>,
  fields: StoreFields,
): Promise<Result<Store, Refusal<'name_taken' | 'own_taken' | 'currency_in_use'>>> {
  if (fields.own && (await ownStore(db))) return refuse(ownTaken)
  const misread = await misreadList(db, undefined, fields)
  if (misread) return refuse(misread)
  try {
    return ok(storeOf(await db.insertInto('store').values(valuesOf(fields)).returningAll().executeTakeFirstOrThrow()))
  } catch (error) {
    return refuse(takenBy(error, fields.name))
  }
}

/** What another store has already, in words. Errors: throws what is none of that. */
function takenBy(error: unknown, name: string): Refusal<'name_taken' | 'own_taken'> {
  const constraint = constraintOf(error)
  if (constraint === 'store_name_once') return nameTaken(name)
  if (constraint === 'store_own_once') return ownTaken
  throw error
}

/** What a store's prices lean on stays: its currency, once sightings or list prices name it. */
export const updateStore = (
  db: Kysely<Database>,
  id: string,
  expectedVersion: number,
  fields: StoreFields,
): Promise<Result<Store, Refusal<'name_taken' | 'own_taken' | 'not_found' | 'stale' | 'currency_in_use'>>> =>
  inTransaction(db, (trx) => changeStore(trx, id, expectedVersion, fields)).catch((error: unknown) => {
    return refuse(takenBy(error, fields.name))
  })

async function changeStore(
  trx: Transaction<Database>,
  id: string,
  expectedVersion: number,
  fields: StoreFields,
): ReturnType<typeof updateStore> {
  // Locked against a sighting too, whose foreign key would lock the same row: what was read of it holds until the end.
  const row = isId(id) ? await trx.selectFrom('store').selectAll().where('id', '=', id).forUpdate().executeTakeFirst() : undefined
  if (!row) return refuse({ code: 'not_found', message: 'There is no such store.' })
  if (row.version !== expectedVersion) return refuse({ code: 'stale', message: 'Someone else changed this store meanwhile.' })
  const own = fields.own ? await ownStore(trx) : undefined
  if (own && own.id !== id) return refuse(ownTaken)
  const inUse = await currencyInUse(trx, storeOf(row), fields)
  if (inUse) return refuse(inUse)
  const misread = await misreadList(trx, storeOf(row), fields)
  if (misread) return refuse(misread)
  const changed = await trx
    .updateTable('store')
    .set({ ...valuesOf(fields), version: expectedVersion + 1 })
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow()
  return ok(storeOf(changed))
}

/** Why the currency must stay; undefined where it does, or where no price is stored in it. The price list is the own store's. */
async function currencyInUse(
  trx: Transaction<Database>,
  before: Store,
  fields: StoreFields,
): Promise<Refusal<'currency_in_use'> | undefined> {
  if ((before.currency ?? null) === (fields.currency ?? null)) return undefined
  const { currency: home } = await getInstall(trx)
  const currency = storeCurrency(before, home)
  if (storeCurrency(fields, home) === currency) return undefined
  if (before.own) await sql`lock table list_price in share mode`.execute(trx)
  const { rows } = await sql<{ sightings: number; listed: number }>`select
    (select count(*) from sighting where store_id = ${before.id}) as sightings,
    (select count(*) from list_price where ${before.own === true}) as listed`.execute(trx)
  const { sightings = 0, listed = 0 } = rows[0] ?? {}
  if (sightings + listed === 0) return undefined
  const held = [counted(listed, 'list price'), counted(sightings, 'sighting')].filter((words) => words !== '').join(' and ')
  return {
    code: 'currency_in_use',
    field: 'currency',
    message: `${held} of "${before.name}" ${sightings + listed === 1 ? 'is' : 'are'} stored in ${currency}, and the amounts would change their meaning. Leave the currency at ${currency}, or add a second store for the other one.`,
  }
}

/**
 * Why the mark "own" may not come or go; undefined where it may. The price list is the marked store's, in its currency, and without a mark it is taken for the
 * install's: so a store of another currency neither takes over a list nor leaves one behind.
 */
async function misreadList(
  db: Kysely<Database>,
  before: Store | undefined,
  fields: StoreFields,
): Promise<Refusal<'currency_in_use'> | undefined> {
  const [was, is] = [before?.own === true, fields.own === true]
  if (was === is) return undefined
  const { currency: home } = await getInstall(db)
  const currency = storeCurrency(is ? fields : (before ?? fields), home)
  if (currency === home) return undefined
  const { listed } = await db
    .selectFrom('list_price')
    .select((eb) => eb.fn.countAll().as('listed'))
    .executeTakeFirstOrThrow()
  if (Number(listed) === 0) return undefined
  const prices = `${counted(Number(listed), 'list price')} ${Number(listed) === 1 ? 'is' : 'are'} stored in`
  return {
    code: 'currency_in_use',
    field: 'own',
    message: is
      ? `${prices} ${home}, and "${fields.name}" prints its prices in ${currency}: the amounts would change their meaning. Mark a store whose prices are in ${home}.`
      : `${prices} ${currency}, the currency of "${fields.name}": without its mark they would be read in ${home}. Leave the mark where it is.`,
  }
}

/** @example counted(2, 'quote') // '2 quotes' */
export const counted = (count: number, what: string): string => (count === 0 ? '' : `${count} ${what}${count === 1 ? '' : 's'}`)

const ownTaken: Refusal<'own_taken'> = {
  code: 'own_taken',
  field: 'own',
  message: 'Another store is marked as your own. Take the mark off there first: one install is one store’s.',
}

const nameTaken = (name: string): Refusal<'name_taken'> => ({
  code: 'name_taken',
  field: 'name',
  message: `There is already a store called "${name}".`,
})

export const valuesOf = (fields: StoreFields) => ({
  name: fields.name,
  kind: fields.kind,
  town: fields.town,
  country: fields.country,
  subdivision: fields.subdivision,
  time_zone: fields.timeZone,
  tax_basis_points: fields.taxBasisPoints,
  prices_include_tax: fields.pricesIncludeTax,
  tax_name: fields.taxName ?? null,
  // A list in place of jsonb would be told to the driver as a list of the database.
  other_rates: sql<StoreRate[]>`${JSON.stringify(fields.otherRates ?? [])}::text::jsonb`,
  delivery_taxed: fields.deliveryTaxed,
  delivery_rate: fields.deliveryRate ?? null,
  delivery: fields.delivery,
  return_days: fields.returnDays,
  warranty_months: fields.warrantyMonths ?? null,
  currency: fields.currency ?? null,
  own: fields.own ?? false,
  note: fields.note,
  archived: fields.archived,
})

const storeOf = (row: Selectable<StoreTable>): Store => ({
  id: row.id,
  name: row.name,
  kind: row.kind,
  town: row.town,
  country: row.country,
  subdivision: row.subdivision,
  timeZone: row.time_zone,
  taxBasisPoints: row.tax_basis_points,
  pricesIncludeTax: row.prices_include_tax,
  taxName: row.tax_name,
  otherRates: row.other_rates,
  deliveryTaxed: row.delivery_taxed,
  deliveryRate: row.delivery_rate,
  delivery: row.delivery,
  returnDays: row.return_days,
  warrantyMonths: row.warranty_months,
  currency: row.currency,
  own: row.own,
  note: row.note,
  archived: row.archived,
  version: row.version,
})
