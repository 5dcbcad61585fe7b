import { sql, type Kysely, type Selectable } from 'kysely'
import type { Store, StoreRate } from '../core/catalog/store.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, StoreTable } from './database.ts'
import { constraintOf, isId, type Refusal } from './refusal.ts'

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

export async function createStore(db: Kysely<Database>, fields: StoreFields): Promise<Result<Store, Refusal<'name_taken'>>> {
  const row = await db
    .insertInto('store')
    .values(valuesOf(fields))
    .onConflict((clash) => clash.doNothing())
    .returningAll()
    .executeTakeFirst()
  return row ? ok(storeOf(row)) : refuse(nameTaken(fields.name))
}

export async function updateStore(
  db: Kysely<Database>,
  id: string,
  expectedVersion: number,
  fields: StoreFields,
): Promise<Result<Store, Refusal<'name_taken' | 'not_found' | 'stale'>>> {
  const before = await findStore(db, id)
  if (!before) return refuse({ code: 'not_found', message: 'There is no such store.' })
  try {
    const row = await db
      .updateTable('store')
      .set({ ...valuesOf(fields), version: expectedVersion + 1 })
      .where('id', '=', id)
      .where('version', '=', expectedVersion)
      .returningAll()
      .executeTakeFirst()
    return row ? ok(storeOf(row)) : refuse({ code: 'stale', message: 'Someone else changed this store meanwhile.' })
  } catch (error) {
    if (constraintOf(error) === 'store_name_once') return refuse(nameTaken(fields.name))
    throw error
  }
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
