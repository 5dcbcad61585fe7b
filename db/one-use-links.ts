import type { ExpressionBuilder, Kysely, Selectable, Transaction } from 'kysely'
import type { Role } from '../core/people/roles.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, OneUseLinkTable } from './database.ts'
import { nameFor } from './person-names.ts'
import type { Refusal } from './refusal.ts'
import { manages, type Viewer } from './viewer.ts'

export interface OneUseLink {
  purpose: 'first_manager' | 'invite' | 'new_password'
  role: Role
  name: string | null
  createdBy: string | null
  expiresAt: Date
  /** Whose password a `new_password` link sets; null for the others. */
  personId: string | null
}

/** Only the hash of the token is stored. */
export async function createOneUseLink(
  db: Kysely<Database>,
  link: Omit<OneUseLink, 'personId'> & { tokenHash: string; personId?: string },
): Promise<void> {
  await db
    .insertInto('one_use_link')
    .values({
      token_hash: link.tokenHash,
      purpose: link.purpose,
      role: link.role,
      name: link.name,
      created_by: link.createdBy,
      expires_at: link.expiresAt,
      person_id: link.personId ?? null,
    })
    .execute()
}

/**
 * The first manager's link comes from the service itself, and a password's may come from its console; any other is as good as the manager who
 * made it still is. A disabled person is sent no way back in.
 */
const stillMeant = (eb: ExpressionBuilder<Database, 'one_use_link'>) =>
  eb.and([hasMaker(eb), eb.or([eb('one_use_link.person_id', 'is', null), eb.exists(enabledPerson(eb))])])

const enabledPerson = (eb: ExpressionBuilder<Database, 'one_use_link'>) =>
  eb
    .selectFrom('person as owner')
    .select('owner.id')
    .whereRef('owner.id', '=', 'one_use_link.person_id')
    .where('owner.disabled_at', 'is', null)

const hasMaker = (eb: ExpressionBuilder<Database, 'one_use_link'>) =>
  eb.or([
    eb.and([eb('purpose', 'in', ['first_manager', 'new_password']), eb('created_by', 'is', null)]),
    eb.exists(
      eb
        .selectFrom('person')
        .select('person.id')
        .whereRef('person.id', '=', 'one_use_link.created_by')
        .where('person.role', '=', 'manager')
        .where('person.disabled_at', 'is', null),
    ),
  ])

/** Undefined once used or expired, or once its maker is no manager any more. */
export async function findOneUseLink(db: Kysely<Database>, tokenHash: string, now: Date): Promise<OneUseLink | undefined> {
  const row = await db
    .selectFrom('one_use_link')
    .selectAll()
    .where('token_hash', '=', tokenHash)
    .where('used_at', 'is', null)
    .where('expires_at', '>', now)
    .where(stillMeant)
    .executeTakeFirst()
  return row && linkOf(row)
}

/** Uses a link of these purposes up. Of two at the same moment exactly one gets it; in a transaction, so that a failure later gives it back. */
export async function useOneUseLink(
  trx: Transaction<Database>,
  tokenHash: string,
  now: Date,
  purposes: readonly OneUseLink['purpose'][] = ['first_manager', 'invite'],
): Promise<Result<OneUseLink, Refusal<'link_gone'>>> {
  const row = await trx
    .updateTable('one_use_link')
    .set({ used_at: now })
    .where('token_hash', '=', tokenHash)
    .where('purpose', 'in', purposes)
    .where('used_at', 'is', null)
    .where('expires_at', '>', now)
    .where(stillMeant)
    .returningAll()
    .executeTakeFirst()
  return row
    ? ok(linkOf(row))
    : refuse({ code: 'link_gone', message: 'This link was used already, has expired or was taken back. Ask for a new one.' })
}

/** An invitation that nobody has used yet. Its token is known to whoever was sent it alone. */
export interface OpenInvitation {
  id: string
  name: string
  role: Role
  /** Name of the manager who made it. */
  madeBy: string
  expiresAt: Date
}

/** The next to expire first; none for anyone but a manager. */
export async function listInvitations(db: Kysely<Database>, viewer: Viewer, now: Date): Promise<OpenInvitation[]> {
  const rows = await db
    .selectFrom('one_use_link')
    .innerJoin('person as maker', 'maker.id', 'one_use_link.created_by')
    .select(['one_use_link.id', 'one_use_link.name', 'one_use_link.role', 'one_use_link.expires_at'])
    .select(nameFor(viewer, 'maker').as('made_by'))
    .where('one_use_link.purpose', '=', 'invite')
    .where('one_use_link.used_at', 'is', null)
    .where('one_use_link.expires_at', '>', now)
    .where('maker.role', '=', 'manager')
    .where('maker.disabled_at', 'is', null)
    .where(manages(viewer))
    .orderBy('one_use_link.expires_at')
    .orderBy('one_use_link.id')
    .execute()
  return rows.map(({ id, name, role, made_by, expires_at }) => ({ id, name: name ?? '', role, madeBy: made_by, expiresAt: expires_at }))
}

/** Takes an invitation back before it was used. False where there is none, or the viewer is no manager. */
export async function withdrawInvitation(db: Kysely<Database>, viewer: Viewer, id: string): Promise<boolean> {
  const row = await db
    .deleteFrom('one_use_link')
    .where('id', '=', id)
    .where('purpose', '=', 'invite')
    .where('used_at', 'is', null)
    .where(manages(viewer))
    .returning('id')
    .executeTakeFirst()
  return row !== undefined
}

/** Unused ones of a purpose: a new start prints a new link for the first manager, and the old one ends. */
export async function deleteOneUseLinks(db: Kysely<Database>, purpose: OneUseLink['purpose']): Promise<void> {
  await db.deleteFrom('one_use_link').where('purpose', '=', purpose).where('used_at', 'is', null).execute()
}

const linkOf = (row: Selectable<OneUseLinkTable>): OneUseLink => ({
  purpose: row.purpose,
  role: row.role,
  name: row.name,
  createdBy: row.created_by,
  expiresAt: row.expires_at,
  personId: row.person_id,
})
