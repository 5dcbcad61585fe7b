import { sql, type Kysely, type Selectable, type Transaction } from 'kysely'
import type { DeviceWord } from '../core/people/device.ts'
import type { Database, PersonTable } from './database.ts'
import { personOf, replacePasswordHash, type Person } from './people.ts'

/** Only the hash of a session's id is ever stored: a copy of the database signs nobody in. */
export interface SessionRow {
  idHash: string
  personId: string
  createdAt: Date
  expiresAt: Date
  lastSeenAt: Date
  person: Person
}

/**
 * Begins a session of whoever gave the right password. False, and none begun, where the password was changed since it was verified or the
 * person was disabled: the person's row is shared until it is written, so that a change of password either sees this session or stops it.
 */
export async function insertSession(
  db: Kysely<Database>,
  session: { idHash: string; personId: string; verifiedHash: string; device?: DeviceWord; createdAt: Date; expiresAt: Date },
): Promise<boolean> {
  const row = await db
    .insertInto('session')
    .columns(['id_hash', 'person_id', 'created_at', 'expires_at', 'last_seen_at', 'device'])
    .expression((eb) =>
      eb
        .selectFrom('person')
        .where('id', '=', session.personId)
        .where('password_hash', '=', session.verifiedHash)
        .where('disabled_at', 'is', null)
        .select([
          sql<string>`${session.idHash}::text`.as('id_hash'),
          'id as person_id',
          sql<Date>`${session.createdAt}::timestamptz`.as('created_at'),
          sql<Date>`${session.expiresAt}::timestamptz`.as('expires_at'),
          sql<Date>`${session.createdAt}::timestamptz`.as('last_seen_at'),
          sql<DeviceWord>`${session.device ?? 'computer'}::text`.as('device'),
        ])
        .forShare(),
    )
    .returning('person_id')
    .executeTakeFirst()
  return row !== undefined
}

/**
 * Sets a new password and ends every session of the person, and every link that would set another. Must run in a transaction: it locks the person's row.
 *
 * False, and nothing done, where the password was changed since `verifiedHash` was verified or the person was disabled.
 */
export async function changePassword(
  trx: Transaction<Database>,
  personId: string,
  verifiedHash: string,
  passwordHash: string,
): Promise<boolean> {
  if (!(await replacePasswordHash(trx, personId, verifiedHash, passwordHash))) return false
  await deleteSessionsOf(trx, personId)
  await trx.deleteFrom('one_use_link').where('person_id', '=', personId).where('used_at', 'is', null).execute()
  return true
}

/** With its person; undefined for a person who was disabled. Whether it has expired is for the caller, who knows the time. */
export async function findSessionByHash(db: Kysely<Database>, idHash: string): Promise<SessionRow | undefined> {
  // Written out: every request asks this, and building it anew took as long as asking.
  const { rows } = await sql<Selectable<PersonTable> & { session_created_at: Date; expires_at: Date; last_seen_at: Date }>`
    select person.*, session.created_at as session_created_at, session.expires_at, session.last_seen_at
    from session join person on person.id = session.person_id
    where session.id_hash = ${idHash} and person.disabled_at is null`.execute(db)
  const [row] = rows
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

/** One of a person's sessions as she tells them apart. The hash ends it and signs nobody in. */
export interface OwnSession {
  idHash: string
  /** Empty for one that began before devices were told apart. */
  device: DeviceWord | ''
  createdAt: Date
  lastSeenAt: Date
}

/** Those that are still good, last used first. */
export async function listSessions(db: Kysely<Database>, personId: string, now: Date): Promise<OwnSession[]> {
  const rows = await db
    .selectFrom('session')
    .select(['id_hash', 'device', 'created_at', 'last_seen_at'])
    .where('person_id', '=', personId)
    .where('expires_at', '>', now)
    .orderBy('last_seen_at', 'desc')
    .orderBy('id_hash')
    .execute()
  return rows.map((row) => ({ idHash: row.id_hash, device: row.device, createdAt: row.created_at, lastSeenAt: row.last_seen_at }))
}

/** Ends one of a person's own sessions. False where it is not hers, or over already. */
export async function endSession(db: Kysely<Database>, personId: string, idHash: string): Promise<boolean> {
  const { numDeletedRows } = await db
    .deleteFrom('session')
    .where('person_id', '=', personId)
    .where('id_hash', '=', idHash)
    .executeTakeFirst()
  return numDeletedRows > 0n
}

/** Ends all of a person's sessions but the one named. Returns how many. */
export async function endOtherSessions(db: Kysely<Database>, personId: string, keptHash: string): Promise<number> {
  const { numDeletedRows } = await db
    .deleteFrom('session')
    .where('person_id', '=', personId)
    .where('id_hash', '<>', keptHash)
    .executeTakeFirst()
  return Number(numDeletedRows)
}

/** Writes down that a session was used; never earlier than it says already. */
export async function markSessionSeen(db: Kysely<Database>, idHash: string, at: Date): Promise<void> {
  await db.updateTable('session').set({ last_seen_at: at }).where('id_hash', '=', idHash).where('last_seen_at', '<', at).execute()
}

/** Notes that whoever is signed in gave the password once more. It ends with the session. */
export async function noteProof(db: Kysely<Database>, idHash: string, at: Date): Promise<void> {
  await db.updateTable('session').set({ proven_at: at }).where('id_hash', '=', idHash).execute()
}

export async function isProvenSince(db: Kysely<Database>, idHash: string, since: Date): Promise<boolean> {
  const row = await db
    .selectFrom('session')
    .select('id_hash')
    .where('id_hash', '=', idHash)
    .where('proven_at', '>', since)
    .executeTakeFirst()
  return row !== undefined
}

/** Returns how many there were. */
export async function deleteExpiredSessions(db: Kysely<Database>, now: Date): Promise<number> {
  const { numDeletedRows } = await db.deleteFrom('session').where('expires_at', '<=', now).executeTakeFirst()
  return Number(numDeletedRows)
}
