import type { Kysely } from 'kysely'
import type { Database } from './database.ts'

/** A try to sign in, under each of its keys (what was tried, and from where). Returns the rows' ids: they count until they are forgotten. */
export async function recordAttempt(db: Kysely<Database>, keys: readonly string[], at: Date): Promise<number[]> {
  const rows = await db
    .insertInto('sign_in_attempt')
    .values(keys.map((key) => ({ key, at })))
    .returning('id')
    .execute()
  return rows.map((row) => row.id)
}

/** How many of each key, in the order of the keys. */
export async function attemptsSince(db: Kysely<Database>, keys: readonly string[], since: Date): Promise<number[]> {
  const rows = await db
    .selectFrom('sign_in_attempt')
    .select((eb) => ['key', eb.fn.countAll<number>().as('count')])
    .where('key', 'in', keys)
    .where('at', '>=', since)
    .groupBy('key')
    .execute()
  const counts = new Map(rows.map((row) => [row.key, row.count]))
  return keys.map((key) => counts.get(key) ?? 0)
}

/** Takes one try back. */
export async function forgetAttempt(db: Kysely<Database>, ids: readonly number[]): Promise<void> {
  await db.deleteFrom('sign_in_attempt').where('id', 'in', ids).execute()
}

/** Takes every try under these keys back. */
export async function forgetAttemptsUnder(db: Kysely<Database>, keys: readonly string[]): Promise<void> {
  await db.deleteFrom('sign_in_attempt').where('key', 'in', keys).execute()
}

/** Forgets what no limit looks back to any more. */
export async function deleteAttemptsBefore(db: Kysely<Database>, before: Date): Promise<void> {
  await db.deleteFrom('sign_in_attempt').where('at', '<', before).execute()
}
