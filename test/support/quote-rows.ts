import type { Kysely } from 'kysely'
import type { CivilDate } from '../../core/dates.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { emptyDraft } from '../../core/quote/empty-draft.ts'
import type { QuoteDraft } from '../../core/quote/draft.ts'
import { createCustomer } from '../../db/customers.ts'
import type { Database } from '../../db/database.ts'
import { issueRevision, type IssueHeading } from '../../db/quote-issue.ts'
import type { QuoteRecord } from '../../db/quote-record.ts'
import { createQuote, findQuote } from '../../db/quotes.ts'
import type { Viewer } from '../../db/viewer.ts'
import { granted, unique } from './rows.ts'

export const draft = (title = unique('Quote')): QuoteDraft => ({ ...emptyDraft('build-a'), title })

export async function quote(db: Kysely<Database>, advisor: Viewer): Promise<QuoteRecord> {
  const customer = granted(await createCustomer(db, advisor, { name: unique('Customer'), reach: '', note: '' }))
  return granted(await createQuote(db, advisor, { customerId: customer.id, draft: draft() }))
}

const build = (letter: 'A' | 'B', todayMinor: number | null, suggested: boolean): Partial<AssembledBuild> => ({
  id: `build-${letter}`,
  letter,
  name: `Build ${letter}`,
  suggested,
  cost: {
    lines: [],
    receipts: [],
    full: { complete: false, missing: [] },
    bestSeen: { complete: false, missing: [] },
    today:
      todayMinor === null
        ? { complete: false, missing: [] }
        : { complete: true, goodsMinor: todayMinor, deliveryMinor: 0, taxMinor: 0, totalMinor: todayMinor },
  },
  plan: { title: [`tank of build ${letter}`], waterVolumeL: 100, notComputed: [], steps: ['level', 'leak-test'].map(step) },
})

const step = (id: string) => ({
  id,
  group: 'place' as const,
  title: id,
  why: [],
  amounts: [],
  actions: [],
  howLong: '',
  stopAndAsk: [],
  done: '',
  earliestDay: 0,
  drawing: null,
  caution: null,
})

/** The parts of a document that the database reads; what the rest holds is not its business. */
export const document = (heading: IssueHeading, standsUntil: CivilDate = '2026-12-10'): RevisionDocument =>
  ({
    format: 1,
    number: heading.number,
    revision: heading.revision,
    issuedOn: '2026-11-10',
    standsUntil,
    title: heading.draft.title,
    builds: [build('A', 110_703, false), build('B', null, true)],
  }) as unknown as RevisionDocument

export const issue = (db: Kysely<Database>, advisor: Viewer, of: { id: string; version: number }, issuedOn = '2026-11-10') =>
  db
    .transaction()
    .execute((trx) =>
      issueRevision(trx, advisor, of.id, of.version, { issuedAt: new Date(`${issuedOn}T15:00:00Z`), issuedOn }, (heading) =>
        document(heading),
      ),
    )

/** A quote with one revision and its version after that. */
export async function issued(db: Kysely<Database>, advisor: Viewer): Promise<QuoteRecord> {
  const made = await quote(db, advisor)
  granted(await issue(db, advisor, made))
  const record = await findQuote(db, advisor, made.id)
  if (!record) throw new Error('The quote was issued.')
  return record
}
