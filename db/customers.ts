import { sql, type Kysely, type Selectable, type Transaction } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { OwnedLine } from '../core/quote/draft.ts'
import type { Customer } from '../core/quote/quote-view.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { CustomerTable, Database } from './database.ts'
import { containing, isId, type Refusal } from './refusal.ts'
import { advises, manages, type Viewer } from './viewer.ts'

/** `gear` left out: what is kept stays. */
export type CustomerFields = Pick<Customer, 'name' | 'reach' | 'note'> & { gear?: OwnedLine[] | undefined }

/** A page of customers that nobody scrolls past: beyond it one types more of the name. */
const LIST_LIMIT = 200

/** By name. Advisors only, here as below: nobody else sees that a customer exists. */
export async function listCustomers(
  db: Kysely<Database>,
  viewer: Viewer,
  filter: { q?: string; limit?: number; offset?: number } = {},
): Promise<Customer[]> {
  let query = db
    .selectFrom('customer')
    .selectAll()
    .where(advises(viewer))
    .orderBy(sql`lower(name)`)
    .orderBy('id')
  const q = filter.q?.trim()
  if (q) query = query.where((eb) => eb.or((['name', 'reach'] as const).map((column) => eb(column, 'ilike', containing(q)))))
  const rows = await query
    .limit(filter.limit ?? LIST_LIMIT)
    .offset(filter.offset ?? 0)
    .execute()
  return rows.map(customerOf)
}

export async function findCustomer(db: Kysely<Database>, viewer: Viewer, id: string): Promise<Customer | undefined> {
  if (!isId(id)) return undefined
  const row = await db.selectFrom('customer').selectAll().where('id', '=', id).where(advises(viewer)).executeTakeFirst()
  return row && customerOf(row)
}

export async function createCustomer(
  db: Kysely<Database>,
  viewer: Viewer,
  fields: CustomerFields,
): Promise<Result<Customer, Refusal<'not_found'>>> {
  const row = await db
    .insertInto('customer')
    .columns(['name', 'reach', 'note'])
    .expression(
      db
        .selectNoFrom([
          sql<string>`${fields.name}::text`.as('name'),
          sql<string>`${fields.reach}::text`.as('reach'),
          sql<string>`${fields.note}::text`.as('note'),
        ])
        .where(advises(viewer)),
    )
    .returningAll()
    .executeTakeFirst()
  return row ? ok(customerOf(row)) : refuse({ code: 'not_found', message: 'Only an advisor adds customers.' })
}

export async function updateCustomer(
  db: Kysely<Database>,
  viewer: Viewer,
  id: string,
  expectedVersion: number,
  fields: CustomerFields,
): Promise<Result<Customer, Refusal<'not_found' | 'stale'>>> {
  if (!(await findCustomer(db, viewer, id))) return refuse({ code: 'not_found', message: 'There is no such customer.' })
  const row = await db
    .updateTable('customer')
    .set({
      name: fields.name,
      reach: fields.reach,
      note: fields.note,
      version: expectedVersion + 1,
      ...(fields.gear && { gear: sql<OwnedLine[]>`${JSON.stringify(fields.gear)}::text::jsonb` }),
    })
    .where('id', '=', id)
    .where('version', '=', expectedVersion)
    .where('erased_on', 'is', null)
    .where(advises(viewer))
    .returningAll()
    .executeTakeFirst()
  return row ? ok(customerOf(row)) : refuse({ code: 'stale', message: 'Someone else changed this customer meanwhile.' })
}

/**
 * Forgets a person: name, reach, note, gear, and what they wrote with an answer. Quotes that were issued stay and say "erased on …". Must run in a
 * transaction. Managers only. Errors: `stale` where the customer is not at the version that was looked at, `erased` where nothing is left to forget.
 */
export async function eraseCustomer(
  trx: Transaction<Database>,
  viewer: Viewer,
  id: string,
  expectedVersion: number,
  on: CivilDate,
): Promise<Result<Customer, Refusal<'not_found' | 'stale' | 'closed'>>> {
  const before = await findCustomer(trx, viewer, id)
  if (!before) return refuse({ code: 'not_found', message: 'There is no such customer.' })
  if (before.erasedOn !== null) return refuse({ code: 'closed', message: `This customer was erased on ${before.erasedOn}.` })
  const row = await trx
    .updateTable('customer')
    .set({ name: 'erased', reach: '', note: '', gear: sql<OwnedLine[]>`'[]'::jsonb`, erased_on: on, version: expectedVersion + 1 })
    .where('id', '=', id)
    .where('version', '=', expectedVersion)
    .where('erased_on', 'is', null)
    .where(manages(viewer))
    .returningAll()
    .executeTakeFirst()
  if (!row) return refuse({ code: 'stale', message: 'Someone else changed this customer meanwhile.' })
  await trx
    .updateTable('quote_answer')
    .set({ note: '' })
    .where('quote_id', 'in', (eb) => eb.selectFrom('quote').select('quote.id').where('quote.customer_id', '=', id))
    .execute()
  return ok(customerOf(row))
}

export const customerOf = (row: Omit<Selectable<CustomerTable>, 'created_at'>): Customer => ({
  id: row.id,
  name: row.name,
  reach: row.reach,
  note: row.note,
  gear: row.gear,
  erasedOn: row.erased_on,
  version: row.version,
})
