import type { Kysely, Transaction } from 'kysely'
import type { Database } from '../db/database.ts'

class Undone<Outcome> extends Error {
  readonly outcome: Outcome
  constructor(outcome: Outcome) {
    super('undone')
    this.outcome = outcome
  }
}

/**
 * Runs several writes as one: a refusal at any step undoes the steps before it, and is returned.
 *
 * `keep: false` undoes them even where all went well: a dry run.
 */
export async function transact<Outcome extends { ok: boolean }>(
  db: Kysely<Database>,
  work: (trx: Transaction<Database>) => Promise<Outcome>,
  keep = true,
): Promise<Outcome> {
  try {
    return await db.transaction().execute(async (trx) => {
      const outcome = await work(trx)
      if (!outcome.ok || !keep) throw new Undone(outcome)
      return outcome
    })
  } catch (error) {
    if (error instanceof Undone) return error.outcome as Outcome
    throw error
  }
}
