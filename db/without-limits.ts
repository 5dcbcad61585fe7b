import { sql, type Transaction } from 'kysely'
import type { Database } from './database.ts'
import { WITHOUT_LIMIT } from './postgres-lanes.ts'

/** Lifts the limits of connect.ts from one transaction: new tables, a copy, and a copy put back work on every row there is. */
export async function withoutLimits(trx: Transaction<Database>): Promise<void> {
  await sql.raw(WITHOUT_LIMIT).execute(trx)
  await sql`set local idle_in_transaction_session_timeout = 0`.execute(trx)
}
