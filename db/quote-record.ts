import type { Kysely, Selectable } from 'kysely'
import type { QuoteDraft, QuoteState } from '../core/quote/draft.ts'
import type { Customer, QuoteAnswer, RevisionSummary } from '../core/quote/quote-view.ts'
import { customerOf } from './customers.ts'
import type { Database, QuoteAnswerTable } from './database.ts'

/** A quote with all that hangs on it, but for the documents of its revisions. */
export interface QuoteRecord {
  id: string
  number: string | null
  state: QuoteState
  version: number
  draft: QuoteDraft
  customer: Customer
  advisor: string
  advisorId: string
  savedAt: string
  linkVersion: number
  /** Oldest first. */
  revisions: RevisionSummary[]
  /** To the newest revision. */
  answer: QuoteAnswer | null
  setup: { id: string; linkVersion: number } | null
}

/** For callers that have made sure that it may be seen. Errors: throws where there is none. */
export async function readQuote(db: Kysely<Database>, id: string): Promise<QuoteRecord> {
  const row = await db
    .selectFrom('quote')
    .innerJoin('person', 'person.id', 'quote.advisor_id')
    .innerJoin('customer', 'customer.id', 'quote.customer_id')
    .leftJoin('setup', 'setup.quote_id', 'quote.id')
    .selectAll('quote')
    .select(['person.name as advisor', 'setup.id as setup_id', 'setup.link_version as setup_link_version'])
    .select([
      'customer.name as customer_name',
      'customer.reach',
      'customer.note',
      'customer.erased_on',
      'customer.gear',
      'customer.version as customer_version',
    ])
    .where('quote.id', '=', id)
    .executeTakeFirstOrThrow()
  return {
    id: row.id,
    number: row.number,
    state: row.state,
    version: row.version,
    draft: row.draft,
    customer: customerOf({ ...row, id: row.customer_id, name: row.customer_name, version: row.customer_version }),
    advisor: row.advisor,
    advisorId: row.advisor_id,
    savedAt: row.saved_at.toISOString(),
    linkVersion: row.link_version,
    revisions: await revisionSummaries(db, id),
    answer: await answerTo(db, id, row.latest_revision),
    setup: row.setup_id === null || row.setup_link_version === null ? null : { id: row.setup_id, linkVersion: row.setup_link_version },
  }
}

async function revisionSummaries(db: Kysely<Database>, quoteId: string): Promise<RevisionSummary[]> {
  const rows = await db
    .selectFrom('quote_revision')
    .select(['revision', 'issued_on', 'stands_until', 'summary'])
    .where('quote_id', '=', quoteId)
    .orderBy('revision')
    .execute()
  return rows.map((row) => ({ revision: row.revision, issuedOn: row.issued_on, standsUntil: row.stands_until, totals: row.summary.totals }))
}

export async function answerTo(db: Kysely<Database>, quoteId: string, revision: number): Promise<QuoteAnswer | null> {
  const row = await db
    .selectFrom('quote_answer')
    .selectAll()
    .where('quote_id', '=', quoteId)
    .where('revision', '=', revision)
    .executeTakeFirst()
  return row ? answerOf(row) : null
}

export const answerOf = (row: Selectable<QuoteAnswerTable>): QuoteAnswer => ({
  revision: row.revision,
  answer: row.answer,
  letter: row.letter,
  note: row.note,
  at: row.at.toISOString(),
})
