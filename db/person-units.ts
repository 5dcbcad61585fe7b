import type { Kysely } from 'kysely'
import type { ReaderUnits } from '../core/units/quantity.ts'
import type { Database } from './database.ts'

/** The units a person chose; null where the install's are good enough. */
export async function findPersonUnits(db: Kysely<Database>, personId: string): Promise<ReaderUnits | null> {
  const row = await db.selectFrom('person').select('units').where('id', '=', personId).executeTakeFirst()
  return row?.units ?? null
}

/** Sets them for the person alone; null: the install's from now on. Nobody else edits them, so no version is asked for. */
export async function setPersonUnits(db: Kysely<Database>, personId: string, units: ReaderUnits | null): Promise<void> {
  await db.updateTable('person').set({ units }).where('id', '=', personId).execute()
}
