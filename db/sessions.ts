import type { Kysely } from 'kysely'
import type { Database } from './database.ts'
import { personOf, type Person } from './people.ts'

/** Only the hash of a session's id is ever stored: a copy of the database signs nobody in. */
export interface SessionRow {
  idHash: string
  personId: string
  createdAt: Date
  expiresAt: Date
  lastSeenAt: Date
  person: Person
}

export async function insertSession(
  db: Kysely<Database>,
  session: { idHash: string; personId: string; createdAt: Date; expiresAt: Date },
): Promise<void> {
  await db
    .insertInto('session')
    .values({
      id_hash: session.idHash,
      person_id: session.personId,
      created_at: session.createdAt,
      expires_at: session.expiresAt,
      last_seen_at: session.createdAt,
    })
    .execute()
}

/** With its person; undefined for a person who was disabled. Whether it has expired is for the caller, who knows the time. */
export async function findSessionByHash(db: Kysely<Database>, idHash: string): Promise<SessionRow | undefined> {
  const row = await db
    .selectFrom('session')
    .innerJoin('person', 'person.id', 'session.person_id')
    .selectAll('person')
    .select(['session.created_at as session_created_at', 'session.expires_at', 'session.last_seen_at'])
    .where('session.id_hash', '=', idHash)
    .where('person.disabled_at', 'is', null)
    .executeTakeFirst()
  if (!row) return undefined
  const person = personOf(row)
  return { idHash, personId: person.id, createdAt: row.session_created_at, expiresAt: row.expires_at, lastSeenAt: row.last_seen_at, person }
}

export async function touchSession(db: Kysely<Database>, idHash: string, to: { expiresAt: Date; lastSeenAt: Date }): Promise<void> {
  await db.updateTable('session').set({ expires_at: to.expiresAt, last_seen_at: to.lastSeenAt }).where('id_hash', '=', idHash).execute()
}

export async function deleteSession(db: Kysely<Database>, idHash: string): Promise<void> {
  await db.deleteFrom('session').where('id_hash', '=', idHash).execute()
}

/** Signs a person out everywhere: after a change of password or role, and when disabled. */
export async function deleteSessionsOf(db: Kysely<Database>, personId: string): Promise<void> {
  await db.deleteFrom('session').where('person_id', '=', personId).execute()
}

/** Returns how many there were. */
export async function deleteExpiredSessions(db: Kysely<Database>, now: Date): Promise<number> {
  const { numDeletedRows } = await db.deleteFrom('session').where('expires_at', '<=', now).executeTakeFirst()
  return Number(numDeletedRows)
}
