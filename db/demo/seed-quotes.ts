import type { Transaction } from 'kysely'
import { addDays, daysBetween, type CivilDate } from '../../core/dates.ts'
import { priceViews } from '../../core/pricing/price-views.ts'
import { assembleBuild } from '../../core/quote/assemble.ts'
import type { QuoteDraft } from '../../core/quote/draft.ts'
import type { QuoteInputs } from '../../core/quote/revision.ts'
import { revisionDocument } from '../../core/quote/revision-document.ts'
import type { Result } from '../../core/result.ts'
import type { Database } from '../database.ts'
import { votesByReporter } from '../learned.ts'
import { answerQuote } from '../quote-answer.ts'
import { issueRevision } from '../quote-issue.ts'
import { createQuote, lapseQuotes, withdrawQuote } from '../quotes.ts'
import type { Viewer } from '../viewer.ts'
import { CATALOG } from './catalog.ts'
import { CLUB, CUSTOMERS, personNamed } from './club.ts'
import { expectedBuilds, taughtBy } from './expected-builds.ts'
import { demoQuotes, type DemoQuote } from './quotes.ts'
import type { DemoRecord } from './sightings.ts'
import type { SeededSaleTime } from './seed-sale-times.ts'
import { STORES } from './stores.ts'

/** What is on record by the time that the quotes are made. */
interface Known {
  record: DemoRecord
  saleTimes: readonly SeededSaleTime[]
}

/** Quotes go the way that the desk's own do: made, issued, answered. Returns their ids by their keys. */
export async function seedQuotes(
  trx: Transaction<Database>,
  known: Known,
  today: CivilDate,
  now: Date,
): Promise<Record<DemoQuote['key'], string>> {
  const ids: Partial<Record<DemoQuote['key'], string>> = {}
  for (const quote of demoQuotes(today)) ids[quote.key] = await seedQuote(trx, quote, known, today, now)
  await lapseQuotes(trx, today)
  return ids as Record<DemoQuote['key'], string>
}

async function seedQuote(trx: Transaction<Database>, quote: DemoQuote, known: Known, today: CivilDate, now: Date): Promise<string> {
  const advisor: Viewer = personNamed(quote.advisor)
  const customerId = CUSTOMERS.find((customer) => customer.name === quote.customer)?.id ?? ''
  const draft = quote.issuedDaysAgo === null ? quote.draft : withinSales(quote, known.record, addDays(today, -quote.issuedDaysAgo))
  const made = granted(await createQuote(trx, advisor, { customerId, draft }))
  const savedDaysAgo = quote.issuedDaysAgo ?? quote.madeDaysAgo
  if (quote.issuedDaysAgo !== null) await issue(trx, { ...quote, draft }, advisor, made, known, addDays(today, -quote.issuedDaysAgo), now)
  if (quote.outcome === 'withdrawn') granted(await withdrawQuote(trx, advisor, made.id))
  else if (quote.outcome) await answer(trx, made.id, quote.outcome, today, now)
  await trx
    .updateTable('quote')
    .set({ saved_at: daysBefore(now, savedDaysAgo) })
    .where('id', '=', made.id)
    .execute()
  return made.id
}

async function issue(
  trx: Transaction<Database>,
  quote: DemoQuote,
  advisor: Viewer,
  made: { id: string; version: number },
  { record, saleTimes }: Known,
  issuedOn: CivilDate,
  now: Date,
): Promise<void> {
  const inputs = inputsOn(quote, record, issuedOn)
  const issuedAt = daysBefore(now, quote.issuedDaysAgo ?? 0)
  // The record is learnt from for the one that shows the job done: the others were issued before anybody had taught it.
  const taught = quote.key === 'showcase' ? taughtBy(record, saleTimes, await votesByReporter(trx), issuedOn) : undefined
  const expected = taught && expectedBuilds(inputs, taught)
  const document = await issueRevision(trx, advisor, made.id, made.version, { issuedAt, issuedOn }, ({ number, revision }) =>
    revisionDocument(
      inputs,
      { number, revision, issuedOn, standsUntil: quote.draft.standsUntil ?? issuedOn, advisor: quote.advisor },
      expected,
    ),
  )
  granted(document)
}

/** A quote stands no shorter than this, however soon a sale ends: people sleep on it. Own. */
const SHORTEST_DAYS = 5

/** As an advisor would do it: the quote stands no longer than the sales that its builds are reckoned with. */
function withinSales(quote: DemoQuote, record: DemoRecord, issuedOn: CivilDate): QuoteDraft {
  const { draft } = quote
  if (draft.standsUntil === null) return draft
  const inputs = inputsOn(quote, record, issuedOn)
  const ends = draft.builds.flatMap((_, index) => assembleBuild(inputs, index).cost.lines.flatMap((line) => line.holdsUntil ?? []))
  const earliest = [draft.standsUntil, ...ends].toSorted()[0] ?? draft.standsUntil
  const shortest = addDays(issuedOn, SHORTEST_DAYS)
  return { ...draft, standsUntil: earliest < shortest ? shortest : earliest }
}

/** What was known on a day: prices from what had been seen until then, and the products of the draft with what is inside its kits. */
function inputsOn(quote: DemoQuote, record: DemoRecord, asOf: CivilDate): QuoteInputs {
  const bought = quote.draft.builds.flatMap((build) => build.lines.flatMap((line) => (line.answer === 'buy' ? [line.productId] : [])))
  const named = CATALOG.filter(({ product }) => bought.includes(product.id)).map(({ product }) => product)
  const inside = new Set([...bought, ...named.flatMap((product) => product.parts.map((part) => part.productId))])
  const products = CATALOG.map(({ product }) => product).filter((product) => inside.has(product.id))
  const seen = record.sightings.filter((one) => inside.has(one.productId) && one.seenOn <= asOf)
  return { draft: quote.draft, products, stores: STORES.map(({ store }) => store), prices: priceViews(seen, asOf), install: CLUB, asOf }
}

async function answer(
  trx: Transaction<Database>,
  quoteId: string,
  outcome: Exclude<DemoQuote['outcome'], 'withdrawn' | null>,
  today: CivilDate,
  now: Date,
): Promise<void> {
  const letter = outcome.answer === 'accepted' ? outcome.letter : null
  const on = addDays(today, -outcome.daysAgo)
  const at = daysBefore(now, daysBetween(on, today))
  granted(await answerQuote(trx, quoteId, { revision: 1, answer: outcome.answer, letter, note: outcome.note, at, today: on }))
}

const DAY_MS = 86_400_000
const daysBefore = (now: Date, days: number): Date => new Date(now.getTime() - days * DAY_MS)

function granted<Value>(result: Result<Value, { code: string; message: string }>): Value {
  if (!result.ok) throw new Error(`The scenario contradicts itself: ${result.refusal.message}`)
  return result.value
}
