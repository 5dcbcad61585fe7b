import { sql, type Kysely, type Selectable, type Transaction } from 'kysely'
import type { Role } from '../core/people/roles.ts'
import { foldSignInName } from '../core/people/sign-in-name.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, PersonTable } from './database.ts'
import { isId, type Refusal } from './refusal.ts'
import { follow, lockGoneOf } from './sighting-gone.ts'
import { manages, type Viewer } from './viewer.ts'

export interface Person {
  id: string
  name: string
  signInName: string
  role: Role
  invitedBy: string | null
  disabled: boolean
  createdAt: string
  version: number
}
export interface PersonFields {
  name: string
  signInName: string
  role: Role
  passwordHash: string
  invitedBy: string | null
}

/** Two names that fold to one are one: the new one is refused. */
export async function createPerson(db: Kysely<Database>, fields: PersonFields): Promise<Result<Person, Refusal<'sign_in_name_taken'>>> {
  const alike = (await foldedAlike(db, fields.signInName)).length > 0
  const row = alike
    ? undefined
    : await db
        .insertInto('person')
        .values({
          name: fields.name,
          sign_in_name: fields.signInName,
          role: fields.role,
          password_hash: fields.passwordHash,
          invited_by: fields.invitedBy,
        })
        .onConflict((clash) => clash.doNothing())
        .returningAll()
        .executeTakeFirst()
  if (row) return ok(personOf(row))
  return refuse({
    code: 'sign_in_name_taken',
    field: 'signInName',
    message: `"${fields.signInName}" is taken. Choose another name to sign in with.`,
  })
}

/**
 * Names that were kept before names were folded, and read like this one. What is kept today is folded, and a plain name of before is so by its
 * small letters: only the others are looked at, and there are hardly any.
 */
async function foldedAlike(db: Kysely<Database>, signInName: string): Promise<Array<{ id: string; kept: string }>> {
  const folded = foldSignInName(signInName)
  const others = await db
    .selectFrom('person')
    .select(['id', 'sign_in_name as kept'])
    .where((eb) => eb.or([eb(sql`lower(sign_in_name)`, '=', folded), sql<boolean>`sign_in_name ~ '[^ -~]'`]))
    .execute()
  return others.filter((other) => foldSignInName(other.kept) === folded)
}

/**
 * The person of a name as it was typed. The exact spelling comes first, in any case; else the folded one, else a name that reads alike, where there is
 * one only. Accounts of before whose names read alike are so each found by their own spelling.
 *
 * A disabled person is found too: say so only after the password was right.
 */
export async function findPersonBySignIn(
  db: Kysely<Database>,
  signInName: string,
): Promise<(Person & { passwordHash: string }) | undefined> {
  const row = await db
    .selectFrom('person')
    .selectAll()
    // Lowered here as well: a database without a language lowers nothing beyond ASCII.
    .where(sql`lower(sign_in_name)`, '=', sql`lower(${signInName.toLowerCase()})`)
    .executeTakeFirst()
  if (row) return { ...personOf(row), passwordHash: row.password_hash }
  const alike = await foldedAlike(db, signInName)
  const one = alike.length === 1 ? alike[0] : alike.find(({ kept }) => kept === foldSignInName(signInName))
  const only = one && (await db.selectFrom('person').selectAll().where('id', '=', one.id).executeTakeFirst())
  return only && { ...personOf(only), passwordHash: only.password_hash }
}

export async function findPerson(db: Kysely<Database>, id: string): Promise<Person | undefined> {
  if (!isId(id)) return undefined
  const row = await db.selectFrom('person').selectAll().where('id', '=', id).executeTakeFirst()
  return row && personOf(row)
}

/** Errors: throws where there is none. */
export async function getPerson(db: Kysely<Database>, id: string): Promise<Person> {
  return personOf(await db.selectFrom('person').selectAll().where('id', '=', id).executeTakeFirstOrThrow())
}

/** By name; nobody for anyone but a manager. */
export async function listPeople(db: Kysely<Database>, viewer: Viewer): Promise<Person[]> {
  const rows = await db
    .selectFrom('person')
    .selectAll()
    .where(manages(viewer))
    .orderBy(sql`lower(name)`)
    .orderBy('id')
    .execute()
  return rows.map(personOf)
}

export async function countPeople(db: Kysely<Database>): Promise<number> {
  const { count } = await db
    .selectFrom('person')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .executeTakeFirstOrThrow()
  return count
}

/**
 * Managers only. The last manager who can sign in keeps the role: the managers' rows are locked while it is decided. Whoever stops being a
 * manager takes the invitations along that nobody has used. What a disabled person found gone is there again, until she is let in.
 */
export async function updatePerson(
  trx: Transaction<Database>,
  viewer: Viewer,
  id: string,
  expectedVersion: number,
  change: { role?: Role; disabled?: boolean },
): Promise<Result<Person, Refusal<'not_found' | 'stale' | 'last_manager'>>> {
  if (!isId(id)) return refuse({ code: 'not_found', message: 'There is no such person.' })
  const foundGone = change.disabled === undefined ? [] : await lockGoneOf(trx, id)
  const managers = await trx
    .selectFrom('person')
    .select('id')
    .where('role', '=', 'manager')
    .where('disabled_at', 'is', null)
    .orderBy('id')
    .forUpdate()
    .execute()
  const found = await trx.selectFrom('person').selectAll().where('id', '=', id).where(manages(viewer)).forUpdate().executeTakeFirst()
  if (!found) return refuse({ code: 'not_found', message: 'There is no such person.' })
  if (found.version !== expectedVersion) return refuse({ code: 'stale', message: 'Someone else changed this person meanwhile.' })
  const leaves = change.disabled === true || (change.role !== undefined && change.role !== 'manager')
  if (leaves && managers.length === 1 && managers[0]?.id === id) {
    return refuse({
      code: 'last_manager',
      field: change.disabled ? 'disabled' : 'role',
      message: 'This is the last manager. Make another one first.',
    })
  }
  const row = await trx
    .updateTable('person')
    .set({
      role: change.role ?? found.role,
      disabled_at: change.disabled === undefined ? found.disabled_at : change.disabled ? (found.disabled_at ?? sql`now()`) : null,
      version: found.version + 1,
    })
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow()
  await follow(trx, foundGone)
  if (change.disabled === true) await trx.deleteFrom('one_use_link').where('person_id', '=', id).where('used_at', 'is', null).execute()
  if (leaves) await trx.deleteFrom('one_use_link').where('created_by', '=', id).where('used_at', 'is', null).execute()
  return ok(personOf(row))
}

/** Puts a hash in the place of the one that was verified. False where that is no longer the hash, or the person was disabled. */
export async function replacePasswordHash(db: Kysely<Database>, id: string, verifiedHash: string, passwordHash: string): Promise<boolean> {
  const row = await db
    .updateTable('person')
    .set({ password_hash: passwordHash })
    .where('id', '=', id)
    .where('password_hash', '=', verifiedHash)
    .where('disabled_at', 'is', null)
    .returning('id')
    .executeTakeFirst()
  return row !== undefined
}

export const personOf = (row: Selectable<PersonTable>): Person => ({
  id: row.id,
  name: row.name,
  signInName: row.sign_in_name,
  role: row.role,
  invitedBy: row.invited_by,
  disabled: row.disabled_at !== null,
  createdAt: row.created_at.toISOString(),
  version: row.version,
})
