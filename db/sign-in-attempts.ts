import type { Kysely } from 'kysely'
import type { Database } from './database.ts'

/** A failed sign-in under a key: the name typed, or the address it came from. */
export async function recordFailure(db: Kysely<Database>, key: string, at: Date): Promise<void> {
  await db.insertInto('sign_in_attempt').values({ key, at }).execute()
}

export async function failuresSince(db: Kysely<Database>, key: string, since: Date): Promise<number> {
  const { count } = await db
    .selectFrom('sign_in_attempt')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('key', '=', key)
    .where('at', '>=', since)
    .executeTakeFirstOrThrow()
  return count
}

export async function clearFailures(db: Kysely<Database>, key: string): Promise<void> {
  await db.deleteFrom('sign_in_attempt').where('key', '=', key).execute()
}

/** Forgets what no limit looks back to any more. */
export async function deleteFailuresBefore(db: Kysely<Database>, before: Date): Promise<void> {
  await db.deleteFrom('sign_in_attempt').where('at', '<', before).execute()
}
