import type { Kysely } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { QuoteState } from '../core/quote/draft.ts'
import type { QuoteAnswer } from '../core/quote/quote-view.ts'
import type { RevisionDocument } from '../core/quote/revision.ts'
import type { Database } from './database.ts'
import { answerTo } from './quote-record.ts'
import { isId } from './refusal.ts'
import { advises, type Viewer } from './viewer.ts'

/** A document as it was issued; advisors only. */
export async function findRevision(
  db: Kysely<Database>,
  viewer: Viewer,
  quoteId: string,
  revision: number,
): Promise<RevisionDocument | undefined> {
  if (!isId(quoteId) || !Number.isInteger(revision) || revision < 1 || revision > 2 ** 31 - 1) return undefined
  const row = await db
    .selectFrom('quote_revision')
    .select('document')
    .where('quote_id', '=', quoteId)
    .where('revision', '=', revision)
    .where(advises(viewer))
    .executeTakeFirst()
  return row?.document
}

/** What a quote link opens: the newest revision and what became of it. */
export interface LinkedQuote {
  id: string
  number: string
  state: QuoteState
  linkVersion: number
  revision: number
  standsUntil: CivilDate
  document: RevisionDocument
  /** Null once the customer's data was erased. */
  customerName: string | null
  erasedOn: CivilDate | null
  answer: QuoteAnswer | null
  setup: { id: string; linkVersion: number } | null
}

/** For whoever holds a link that was checked: nobody signs in to read a quote. Undefined before the first issue. */
export async function findLinkedQuote(db: Kysely<Database>, quoteId: string): Promise<LinkedQuote | undefined> {
  if (!isId(quoteId)) return undefined
  const row = await db
    .selectFrom('quote')
    .innerJoin('quote_revision as newest', (join) =>
      join.onRef('newest.quote_id', '=', 'quote.id').onRef('newest.revision', '=', 'quote.latest_revision'),
    )
    .innerJoin('customer', 'customer.id', 'quote.customer_id')
    .leftJoin('setup', 'setup.quote_id', 'quote.id')
    .select(['quote.id', 'quote.state', 'quote.link_version', 'newest.revision', 'newest.stands_until', 'newest.document'])
    .select(['customer.name', 'customer.erased_on', 'setup.id as setup_id', 'setup.link_version as setup_link_version'])
    .where('quote.id', '=', quoteId)
    .executeTakeFirst()
  if (!row) return undefined
  return {
    id: row.id,
    number: row.document.number,
    state: row.state,
    linkVersion: row.link_version,
    revision: row.revision,
    standsUntil: row.stands_until,
    document: row.document,
    customerName: row.erased_on === null ? row.name : null,
    erasedOn: row.erased_on,
    answer: await answerTo(db, quoteId, row.revision),
    setup: row.setup_id === null || row.setup_link_version === null ? null : { id: row.setup_id, linkVersion: row.setup_link_version },
  }
}
