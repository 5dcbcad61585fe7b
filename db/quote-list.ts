import type { Kysely } from 'kysely'
import type { QuoteState } from '../core/quote/draft.ts'
import type { QuoteListRow } from '../core/quote/quote-view.ts'
import type { Database } from './database.ts'
import { containing, isId } from './refusal.ts'
import { advises, type Viewer } from './viewer.ts'

export interface QuoteFilter {
  state?: QuoteState
  /** Found anywhere in number, title or the customer's name. */
  q?: string
  customerId?: string
  limit?: number
}

/** Beyond this many one narrows by state, number or name. */
const LIST_LIMIT = 500

/** Last saved first; advisors only. Totals are the newest revision's: a quote never issued has none. */
export async function listQuotes(db: Kysely<Database>, viewer: Viewer, filter: QuoteFilter = {}): Promise<QuoteListRow[]> {
  if (filter.customerId !== undefined && !isId(filter.customerId)) return []
  let query = db
    .selectFrom('quote')
    .innerJoin('person', 'person.id', 'quote.advisor_id')
    .innerJoin('customer', 'customer.id', 'quote.customer_id')
    .leftJoin('quote_revision as newest', (join) =>
      join.onRef('newest.quote_id', '=', 'quote.id').onRef('newest.revision', '=', 'quote.latest_revision'),
    )
    .leftJoin('quote_answer as accepted', (join) =>
      join.onRef('accepted.quote_id', '=', 'quote.id').on('accepted.answer', '=', 'accepted').on('quote.state', '=', 'accepted'),
    )
    .select(['quote.id', 'quote.number', 'quote.title', 'quote.state', 'quote.saved_at', 'quote.stands_until'])
    .select(['customer.name as customer_name', 'person.name as advisor', 'newest.summary', 'accepted.letter'])
    .where(advises(viewer))
  if (filter.state !== undefined) query = query.where('quote.state', '=', filter.state)
  if (filter.customerId !== undefined) query = query.where('quote.customer_id', '=', filter.customerId)
  const q = filter.q?.trim()
  if (q) {
    const columns = ['quote.number', 'quote.title', 'customer.name'] as const
    query = query.where((eb) => eb.or(columns.map((column) => eb(column, 'ilike', containing(q)))))
  }
  const rows = await query
    .orderBy('quote.saved_at', 'desc')
    .orderBy('quote.id')
    .limit(filter.limit ?? LIST_LIMIT)
    .execute()
  return rows.map((row) => ({
    id: row.id,
    number: row.number,
    title: row.title,
    customerName: row.customer_name,
    state: row.state,
    advisor: row.advisor,
    savedAt: row.saved_at.toISOString(),
    standsUntil: row.stands_until,
    acceptedLetter: row.letter,
    todayMinor: row.summary?.totals.map((total) => total.todayMinor) ?? [],
  }))
}
