import { sql, type Kysely } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { QuoteDraft, QuoteState } from '../core/quote/draft.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { readQuote, type QuoteRecord } from './quote-record.ts'
import { isId, type Refusal } from './refusal.ts'
import { advises, type Viewer } from './viewer.ts'

export interface QuoteFields {
  customerId: string
  draft: QuoteDraft
}

/** A quote that was answered with yes, or taken back, is done: its draft changes no more. */
export const CLOSED: readonly QuoteState[] = ['accepted', 'withdrawn']

export const NO_QUOTE: Refusal<'not_found'> = { code: 'not_found', message: 'There is no such quote.' }
export const STALE_QUOTE: Refusal<'stale'> = { code: 'stale', message: 'Someone else changed this quote meanwhile.' }

/** With its customer, revisions, answer and setup; undefined for anyone but an advisor. */
export async function findQuote(db: Kysely<Database>, viewer: Viewer, id: string): Promise<QuoteRecord | undefined> {
  if (!isId(id)) return undefined
  const allowed = await db.selectFrom('quote').select('id').where('id', '=', id).where(advises(viewer)).executeTakeFirst()
  return allowed && readQuote(db, id)
}

export async function createQuote(
  db: Kysely<Database>,
  viewer: Viewer,
  fields: QuoteFields,
): Promise<Result<QuoteRecord, Refusal<'customer_unknown'>>> {
  const customer =
    isId(fields.customerId) &&
    (await db.selectFrom('customer').select('id').where('id', '=', fields.customerId).where(advises(viewer)).executeTakeFirst())
  if (!customer) return refuse(NO_CUSTOMER)
  const { id } = await db
    .insertInto('quote')
    .values({ advisor_id: viewer.id, customer_id: customer.id, title: fields.draft.title, draft: fields.draft })
    .returning('id')
    .executeTakeFirstOrThrow()
  return ok(await readQuote(db, id))
}

/**
 * Saves the draft over the version it was based on. What was issued stays as it was until the next issue, the customer for good: a link
 * that was printed for one person never comes to name another.
 */
export async function saveDraft(
  db: Kysely<Database>,
  viewer: Viewer,
  id: string,
  expectedVersion: number,
  fields: QuoteFields,
): Promise<Result<QuoteRecord, Refusal<'not_found' | 'stale' | 'closed' | 'customer_unknown' | 'customer_fixed'>>> {
  const before = await stateOf(db, viewer, id)
  if (!before) return refuse(NO_QUOTE)
  if (CLOSED.includes(before.state)) return refuse(closed(before.state))
  const customer =
    isId(fields.customerId) && (await db.selectFrom('customer').select('id').where('id', '=', fields.customerId).executeTakeFirst())
  if (!customer) return refuse(NO_CUSTOMER)
  if (before.latest_revision > 0 && customer.id !== before.customer_id) return refuse(CUSTOMER_FIXED)
  const row = await db
    .updateTable('quote')
    .set({
      customer_id: customer.id,
      title: fields.draft.title,
      draft: fields.draft,
      saved_at: sql`now()`,
      version: expectedVersion + 1,
    })
    .where('id', '=', id)
    .where('version', '=', expectedVersion)
    .where('state', 'not in', CLOSED)
    .where((eb) => eb.or([eb('latest_revision', '=', 0), eb('customer_id', '=', customer.id)]))
    .where(advises(viewer))
    .returning('id')
    .executeTakeFirst()
  return row ? ok(await readQuote(db, id)) : refuse(STALE_QUOTE)
}

/** Takes a quote back. Its link then says so; an accepted one stands. */
export async function withdrawQuote(
  db: Kysely<Database>,
  viewer: Viewer,
  id: string,
): Promise<Result<QuoteRecord, Refusal<'not_found' | 'closed'>>> {
  const before = await stateOf(db, viewer, id)
  if (!before) return refuse(NO_QUOTE)
  const row = await db
    .updateTable('quote')
    .set((eb) => ({ state: 'withdrawn' as const, version: eb('version', '+', 1), saved_at: sql`now()` }))
    .where('id', '=', id)
    .where('state', 'not in', CLOSED)
    .where(advises(viewer))
    .returning('id')
    .executeTakeFirst()
  return row ? ok(await readQuote(db, id)) : refuse(closed((await stateOf(db, viewer, id))?.state ?? before.state))
}

/**
 * Deletes a quote that was never issued. Nothing hangs on it yet: number, revisions, answer, links and setup all begin with the first issue.
 * Errors: `issued` once its customer may hold it, `stale` where it is not at the version that the advisor saw.
 */
export async function discardDraft(
  db: Kysely<Database>,
  viewer: Viewer,
  id: string,
  expectedVersion: number,
): Promise<Result<null, Refusal<'not_found' | 'stale' | 'issued'>>> {
  const deleted = isId(id)
    ? await db
        .deleteFrom('quote')
        .where('id', '=', id)
        .where('version', '=', expectedVersion)
        .where('latest_revision', '=', 0)
        .where(advises(viewer))
        .returning('id')
        .executeTakeFirst()
    : undefined
  if (deleted) return ok(null)
  const left = await stateOf(db, viewer, id)
  if (!left) return refuse(NO_QUOTE)
  return refuse(left.latest_revision > 0 ? ISSUED : STALE_QUOTE)
}

/** Ends every issued quote whose last day is past. Returns how many. */
export async function lapseQuotes(db: Kysely<Database>, today: CivilDate): Promise<number> {
  const { numUpdatedRows } = await db
    .updateTable('quote')
    .set((eb) => ({ state: 'lapsed' as const, version: eb('version', '+', 1) }))
    .where('state', '=', 'issued')
    .where('stands_until', '<', today)
    .executeTakeFirst()
  return Number(numUpdatedRows)
}

async function stateOf(
  db: Kysely<Database>,
  viewer: Viewer,
  id: string,
): Promise<{ state: QuoteState; latest_revision: number; customer_id: string } | undefined> {
  if (!isId(id)) return undefined
  return db
    .selectFrom('quote')
    .select(['state', 'latest_revision', 'customer_id'])
    .where('id', '=', id)
    .where(advises(viewer))
    .executeTakeFirst()
}

export const closed = (state: QuoteState): Refusal<'closed'> => ({
  code: 'closed',
  message: state === 'accepted' ? 'The customer accepted this quote. Make a new one.' : 'This quote was withdrawn. Make a new one.',
})

const NO_CUSTOMER: Refusal<'customer_unknown'> = { code: 'customer_unknown', field: 'customerId', message: 'There is no such customer.' }
const ISSUED: Refusal<'issued'> = {
  code: 'issued',
  message: 'This quote was issued, so its customer may hold it. Withdraw it instead: it stays on record, and its link says so.',
}
const CUSTOMER_FIXED: Refusal<'customer_fixed'> = {
  code: 'customer_fixed',
  field: 'customerId',
  message: 'This quote was issued to its customer, who may hold it on paper. Make a new quote for another customer.',
}
