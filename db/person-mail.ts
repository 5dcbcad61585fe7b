import type { Kysely } from 'kysely'
import type { Database } from './database.ts'

/** The address at which a person wants to hear of deals. */
export interface PersonMail {
  address: string
  confirmed: boolean
  confirmedAt: Date | null
  /** Since when no letter to it was taken; null while they are. */
  failingSince: Date | null
}

export async function findPersonMail(db: Kysely<Database>, personId: string): Promise<PersonMail | undefined> {
  const row = await db.selectFrom('person_mail').selectAll().where('person_id', '=', personId).executeTakeFirst()
  return (
    row && { address: row.address, confirmed: row.confirmed_at !== null, confirmedAt: row.confirmed_at, failingSince: row.failing_since }
  )
}

/** Puts an address in place of the one before; nothing is sent there until it is confirmed. `tokenHash` is that of the link which does so. */
export async function setPersonMail(
  db: Kysely<Database>,
  personId: string,
  { address, tokenHash, tokenEndsAt }: { address: string; tokenHash: string; tokenEndsAt: Date },
): Promise<void> {
  const values = { address, confirmed_at: null, token_hash: tokenHash, token_ends_at: tokenEndsAt, failing_since: null }
  await db
    .insertInto('person_mail')
    .values({ person_id: personId, ...values })
    .onConflict((conflict) => conflict.column('person_id').doUpdateSet(values))
    .execute()
}

/** Nothing is kept of it. False where there was none. */
export async function removePersonMail(db: Kysely<Database>, personId: string): Promise<boolean> {
  const { numDeletedRows } = await db.deleteFrom('person_mail').where('person_id', '=', personId).executeTakeFirst()
  return numDeletedRows > 0n
}

/** The address that a link confirms; undefined once it was used, has expired, or its person was disabled. */
export async function findMailToConfirm(db: Kysely<Database>, tokenHash: string, now: Date): Promise<string | undefined> {
  const row = await db
    .selectFrom('person_mail')
    .innerJoin('person', 'person.id', 'person_mail.person_id')
    .select('person_mail.address')
    .where('person_mail.token_hash', '=', tokenHash)
    .where('person_mail.token_ends_at', '>', now)
    .where('person.disabled_at', 'is', null)
    .executeTakeFirst()
  return row?.address
}

/** Confirms the address of a link and uses the link up. Of two at one moment one gets it. Undefined where the link is over. */
export async function confirmPersonMail(db: Kysely<Database>, tokenHash: string, now: Date): Promise<string | undefined> {
  const row = await db
    .updateTable('person_mail')
    .set({ confirmed_at: now, token_hash: null, token_ends_at: null })
    .where('token_hash', '=', tokenHash)
    .where('token_ends_at', '>', now)
    .where('person_id', 'in', (eb) => eb.selectFrom('person').select('id').where('disabled_at', 'is', null))
    .returning('address')
    .executeTakeFirst()
  return row?.address
}
