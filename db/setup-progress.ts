import { sql, type Kysely } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { isId, type Refusal } from './refusal.ts'
import { findLinkedSetup } from './setups.ts'

const NO_SETUP: Refusal<'not_found'> = { code: 'not_found', message: 'There is no such setup.' }

/** Sets the day a setup starts, which all its later days count from. */
export async function startSetup(db: Kysely<Database>, setupId: string, on: CivilDate): Promise<Result<void, Refusal<'not_found'>>> {
  if (!isId(setupId)) return refuse(NO_SETUP)
  const row = await db
    .updateTable('setup')
    .set({ started_on: on, last_used_at: sql`now()` })
    .where('id', '=', setupId)
    .returning('id')
    .executeTakeFirst()
  return row ? ok(undefined) : refuse(NO_SETUP)
}

/**
 * Ticks a step, or takes the tick back. Doing so twice changes nothing: the first day stays. `word` is that of whoever ticks, where the log does not
 * bear the step out; by it `late`, a step before, was done by that day, and its own tick moves back to it.
 */
export async function tickStep(
  db: Kysely<Database>,
  setupId: string,
  stepId: string,
  done: boolean,
  on: CivilDate,
  word: { late?: { stepId: string; on: CivilDate } | undefined } | null = null,
): Promise<Result<void, Refusal<'not_found' | 'step_unknown'>>> {
  const setup = await findLinkedSetup(db, setupId)
  if (!setup) return refuse(NO_SETUP)
  if (!setup.plan.steps.some((step) => step.id === stepId)) {
    return refuse({ code: 'step_unknown', field: 'step', message: 'This setup has no such step.' })
  }
  if (done) {
    await db
      .insertInto('setup_tick')
      .values({ setup_id: setupId, step_id: stepId, ticked_on: on, on_word: word !== null })
      .onConflict((clash) => clash.doNothing())
      .execute()
    if (word?.late !== undefined) await moveBack(db, setupId, word.late)
  } else {
    await db.deleteFrom('setup_tick').where('setup_id', '=', setupId).where('step_id', '=', stepId).execute()
  }
  await markUsed(db, setupId)
  return ok(undefined)
}

async function moveBack(db: Kysely<Database>, setupId: string, { stepId, on }: { stepId: string; on: CivilDate }): Promise<void> {
  await db
    .updateTable('setup_tick')
    .set({ ticked_on: on })
    .where('setup_id', '=', setupId)
    .where('step_id', '=', stepId)
    .where('ticked_on', '>', on)
    .execute()
}

/** A link ends a year after its last use. */
async function markUsed(db: Kysely<Database>, setupId: string): Promise<void> {
  await db
    .updateTable('setup')
    .set({ last_used_at: sql`now()` })
    .where('id', '=', setupId)
    .execute()
}
