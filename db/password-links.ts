import type { Kysely, Transaction } from 'kysely'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { createOneUseLink, useOneUseLink } from './one-use-links.ts'
import { getPerson, personOf, type Person } from './people.ts'
import { isId, type Refusal } from './refusal.ts'
import { deleteSessionsOf } from './sessions.ts'
import { manages, type Viewer } from './viewer.ts'

/**
 * A link that sets a new password for a person; one made before and not used ends. Without a maker it comes from the service's own console.
 *
 * Errors: `own` where a manager asks for herself: she knows her password, and whoever finds her screen open does not.
 */
export async function createPasswordLink(
  trx: Transaction<Database>,
  maker: Viewer | null,
  personId: string,
  link: { tokenHash: string; expiresAt: Date },
): Promise<Result<Person, Refusal<'not_found' | 'own' | 'disabled'>>> {
  if (!isId(personId)) return refuse(NO_PERSON)
  let query = trx.selectFrom('person').selectAll().where('id', '=', personId)
  if (maker !== null) query = query.where(manages(maker))
  const row = await query.forUpdate().executeTakeFirst()
  if (!row) return refuse(NO_PERSON)
  if (row.id === maker?.id) {
    return refuse({ code: 'own', message: 'Change your own password under your account. If it is lost, another manager makes the link.' })
  }
  if (row.disabled_at !== null) return refuse({ code: 'disabled', message: `${row.name} is disabled. Let them in again first.` })
  await trx.deleteFrom('one_use_link').where('person_id', '=', personId).where('used_at', 'is', null).execute()
  await createOneUseLink(trx, {
    ...link,
    purpose: 'new_password',
    role: row.role,
    name: null,
    createdBy: maker?.id ?? null,
    personId,
  })
  return ok(personOf(row))
}

/** Uses such a link up: the password is set and all sessions of the person end. Of two at the same moment exactly one does it. */
export async function usePasswordLink(
  trx: Transaction<Database>,
  tokenHash: string,
  now: Date,
  passwordHash: string,
): Promise<Result<Person, Refusal<'link_gone'>>> {
  const used = await useOneUseLink(trx, tokenHash, now, ['new_password'])
  if (!used.ok) return used
  const personId = used.value.personId ?? ''
  await trx.updateTable('person').set({ password_hash: passwordHash }).where('id', '=', personId).execute()
  await deleteSessionsOf(trx, personId)
  return ok(await getPerson(trx, personId))
}

/** Managers who may sign in, by name: whom a link from the console can be for. */
export async function enabledManagers(db: Kysely<Database>): Promise<Person[]> {
  const rows = await db
    .selectFrom('person')
    .selectAll()
    .where('role', '=', 'manager')
    .where('disabled_at', 'is', null)
    .orderBy('name')
    .orderBy('id')
    .execute()
  return rows.map(personOf)
}

const NO_PERSON: Refusal<'not_found'> = { code: 'not_found', message: 'There is no such person.' }
