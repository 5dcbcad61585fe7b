import { sql, type Kysely } from 'kysely'
import type { CurrencyRate } from '../core/pricing/currency-rate.ts'
import type { Database } from './database.ts'
import type { Viewer } from './viewer.ts'

/** The newest rate of each currency that has one, by code. Earlier ones stay: a quote of then was reckoned with them. */
export async function listCurrencyRates(db: Kysely<Database>): Promise<CurrencyRate[]> {
  const rows = await db
    .selectFrom('currency_rate')
    .distinctOn('currency')
    .select(['currency', 'rate', 'seen_on', 'source'])
    .orderBy('currency')
    .orderBy('seen_on', 'desc')
    .execute()
  return rows.map(({ currency, rate, seen_on, source }) => ({ currency, rate, seenOn: seen_on, source }))
}

/** Enters a rate of a day; entered again, the later figure of that day stands. */
export async function enterCurrencyRate(
  db: Kysely<Database>,
  viewer: Viewer,
  { currency, rate, seenOn, source }: CurrencyRate,
): Promise<void> {
  await db
    .insertInto('currency_rate')
    .values({ currency, rate, seen_on: seenOn, source, entered_by: viewer.id })
    .onConflict((clash) =>
      clash.columns(['currency', 'seen_on']).doUpdateSet({ rate, source, entered_by: viewer.id, entered_at: sql`now()` }),
    )
    .execute()
}
