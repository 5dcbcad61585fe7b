import type { Transaction } from 'kysely'
import { yearOf, type CivilDate } from '../core/dates.ts'
import type { BuildLetter, QuoteDraft } from '../core/quote/draft.ts'
import type { RevisionSummary } from '../core/quote/quote-view.ts'
import type { RevisionDocument } from '../core/quote/revision.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { CLOSED, closed, NO_QUOTE, STALE_QUOTE } from './quotes.ts'
import { isId, type Refusal } from './refusal.ts'
import { advises, type Viewer } from './viewer.ts'

/** What a document is written from. The number is the quote's own, or the next of the year at the first issue. */
export interface IssueHeading {
  number: string
  revision: number
  draft: QuoteDraft
  /** The version before, as it was issued; undefined at the first issue. */
  before: RevisionDocument | undefined
}

/**
 * Freezes the draft as the next revision and makes the setup that goes with it. Must run in a transaction: it locks the quote's row and,
 * at the first issue, the year's counter, so that numbers follow each other without a gap.
 *
 * `write` makes the document and must not wait for anything. Errors: `stale` where the quote is not at the version the issue was based on.
 */
export async function issueRevision(
  trx: Transaction<Database>,
  viewer: Viewer,
  quoteId: string,
  expectedVersion: number,
  at: { issuedAt: Date; issuedOn: CivilDate },
  write: (heading: IssueHeading) => RevisionDocument,
): Promise<Result<RevisionDocument, Refusal<'not_found' | 'stale' | 'closed'>>> {
  if (!isId(quoteId)) return refuse(NO_QUOTE)
  const quote = await trx.selectFrom('quote').selectAll().where('id', '=', quoteId).where(advises(viewer)).forUpdate().executeTakeFirst()
  if (!quote) return refuse(NO_QUOTE)
  if (quote.version !== expectedVersion) return refuse(STALE_QUOTE)
  if (CLOSED.includes(quote.state)) return refuse(closed(quote.state))
  const number = quote.number ?? (await nextNumber(trx, yearOf(at.issuedOn)))
  const revision = quote.latest_revision + 1
  const before = await documentOf(trx, quoteId, quote.latest_revision)
  const document = write({ number, revision, draft: quote.draft, before })
  await trx
    .insertInto('quote_revision')
    .values({
      quote_id: quoteId,
      revision,
      document,
      summary: { totals: totalsOf(document) },
      issued_at: at.issuedAt,
      issued_on: at.issuedOn,
      stands_until: document.standsUntil,
    })
    .execute()
  await trx
    .updateTable('quote')
    .set({
      number,
      state: 'issued',
      latest_revision: revision,
      stands_until: document.standsUntil,
      saved_at: at.issuedAt,
      version: quote.version + 1,
    })
    .where('id', '=', quoteId)
    .execute()
  await makeSetup(trx, quoteId, revision, document.builds.find((build) => build.suggested)?.letter ?? 'A')
  return ok(document)
}

async function documentOf(trx: Transaction<Database>, quoteId: string, revision: number): Promise<RevisionDocument | undefined> {
  if (revision === 0) return undefined
  const found = trx.selectFrom('quote_revision').select('document').where('quote_id', '=', quoteId).where('revision', '=', revision)
  return (await found.executeTakeFirst())?.document
}

/** "2026-0147": the year's counter row is locked until the transaction ends. */
async function nextNumber(trx: Transaction<Database>, year: number): Promise<string> {
  const { last } = await trx
    .insertInto('quote_counter')
    .values({ year, last: 1 })
    .onConflict((clash) => clash.column('year').doUpdateSet((eb) => ({ last: eb('quote_counter.last', '+', 1) })))
    .returning('last')
    .executeTakeFirstOrThrow()
  return `${year}-${String(last).padStart(4, '0')}`
}

const totalsOf = (document: RevisionDocument): RevisionSummary['totals'] =>
  document.builds.map((build) => ({
    letter: build.letter,
    name: build.name,
    todayMinor: build.cost.today.complete ? build.cost.today.totalMinor : null,
  }))

/** One a quote: a later revision moves it, its link stays what was printed. */
async function makeSetup(trx: Transaction<Database>, quoteId: string, revision: number, letter: BuildLetter): Promise<void> {
  await trx
    .insertInto('setup')
    .values({ quote_id: quoteId, revision, letter })
    .onConflict((clash) => clash.column('quote_id').doUpdateSet({ revision, letter }))
    .execute()
}
