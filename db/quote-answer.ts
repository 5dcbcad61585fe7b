import type { Transaction } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { QuoteState } from '../core/quote/draft.ts'
import type { QuoteAnswer } from '../core/quote/quote-view.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { answerOf } from './quote-record.ts'
import { isId, type Refusal } from './refusal.ts'

export type AnswerRefusal = Refusal<
  'not_found' | 'answered' | 'superseded' | 'lapsed' | 'withdrawn' | 'letter_unknown' | 'letter_incomplete'
>

/**
 * Takes the customer's answer to a revision. The link was the right to give it. Must run in a transaction: it locks the quote's row,
 * so that of two answers at the same moment exactly one stands.
 */
export async function answerQuote(
  trx: Transaction<Database>,
  quoteId: string,
  given: Omit<QuoteAnswer, 'at'> & { at: Date; today: CivilDate },
): Promise<Result<QuoteAnswer, AnswerRefusal>> {
  if (!isId(quoteId)) return refuse({ code: 'not_found', message: 'There is no such quote.' })
  const quote = await trx.selectFrom('quote').selectAll().where('id', '=', quoteId).forUpdate().executeTakeFirst()
  if (!quote || quote.latest_revision === 0) return refuse({ code: 'not_found', message: 'There is no such quote.' })
  const reason = reasonAgainst(quote, given)
  if (reason) return refuse(reason)
  const letter = given.answer === 'accepted' ? given.letter : null
  if (given.answer === 'accepted') {
    const against = await reasonAgainstLetter(trx, quoteId, given.revision, letter)
    if (against) return refuse(against)
  }
  const row = await trx
    .insertInto('quote_answer')
    .values({ quote_id: quoteId, revision: given.revision, answer: given.answer, letter, note: given.note, at: given.at })
    .returningAll()
    .executeTakeFirstOrThrow()
  await trx
    .updateTable('quote')
    .set({ state: given.answer, version: quote.version + 1 })
    .where('id', '=', quoteId)
    .execute()
  if (letter !== null) await trx.updateTable('setup').set({ revision: given.revision, letter }).where('quote_id', '=', quoteId).execute()
  return ok(answerOf(row))
}

function reasonAgainst(
  quote: { state: QuoteState; latest_revision: number; stands_until: CivilDate | null },
  given: { revision: number; today: CivilDate },
): AnswerRefusal | undefined {
  if (quote.state === 'accepted' || quote.state === 'declined') return { code: 'answered', message: 'This quote was answered already.' }
  if (quote.state === 'withdrawn') return { code: 'withdrawn', message: 'This quote was taken back. Ask for a new one.' }
  if (given.revision !== quote.latest_revision) {
    return {
      code: 'superseded',
      field: 'revision',
      message: `Version ${quote.latest_revision} has replaced the one you were reading. Read it first.`,
    }
  }
  if (quote.state === 'lapsed' || (quote.stands_until !== null && quote.stands_until < given.today)) {
    return { code: 'lapsed', message: `This quote stood until ${quote.stands_until}. Ask for a new one.` }
  }
  return undefined
}

/** A yes is to a build with a price: one whose total is not known binds nobody to anything. */
async function reasonAgainstLetter(
  trx: Transaction<Database>,
  quoteId: string,
  revision: number,
  letter: string | null,
): Promise<AnswerRefusal | undefined> {
  const { summary } = await trx
    .selectFrom('quote_revision')
    .select('summary')
    .where('quote_id', '=', quoteId)
    .where('revision', '=', revision)
    .executeTakeFirstOrThrow()
  const total = summary.totals.find((one) => one.letter === letter)
  if (!total) return { code: 'letter_unknown', field: 'letter', message: 'Say which of the builds you accept.' }
  if (total.todayMinor !== null) return undefined
  return {
    code: 'letter_incomplete',
    field: 'letter',
    message: `Build ${total.letter} has no total yet, because a price in it is missing. Accept another build, or ask for a new version of this quote.`,
  }
}
