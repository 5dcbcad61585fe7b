import type { Kysely, Selectable } from 'kysely'
import type { Reading } from '../core/quote/quote-view.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, SetupReadingTable } from './database.ts'
import { isId, type Refusal } from './refusal.ts'

/** Oldest first. */
export async function readingsOf(db: Kysely<Database>, setupId: string): Promise<Reading[]> {
  const rows = await db
    .selectFrom('setup_reading')
    .selectAll()
    .where('setup_id', '=', setupId)
    .orderBy('taken_on')
    .orderBy('received_at')
    .orderBy('id')
    .execute()
  return rows.map(readingOf)
}

/** Takes a reading once: the same id with the same figures answers with the stored one. */
export async function addReading(
  db: Kysely<Database>,
  setupId: string,
  reading: Reading,
): Promise<Result<{ reading: Reading; repeated: boolean }, Refusal<'not_found' | 'id_taken'>>> {
  const setup = isId(setupId) && (await db.selectFrom('setup').select('id').where('id', '=', setupId).executeTakeFirst())
  if (!setup) return refuse({ code: 'not_found', message: 'There is no such setup.' })
  const row = await db
    .insertInto('setup_reading')
    .values(valuesOf(setupId, reading))
    .onConflict((clash) => clash.column('id').doNothing())
    .returningAll()
    .executeTakeFirst()
  if (row) {
    await db.updateTable('setup').set({ last_used_at: row.received_at }).where('id', '=', setupId).execute()
    return ok({ reading: readingOf(row), repeated: false })
  }
  const stored = await db
    .selectFrom('setup_reading')
    .selectAll()
    .where('id', '=', reading.id)
    .where('setup_id', '=', setupId)
    .executeTakeFirst()
  const same = stored && Object.entries(reading).every(([key, value]) => readingOf(stored)[key as keyof Reading] === value)
  if (same) return ok({ reading: readingOf(stored), repeated: true })
  return refuse({ code: 'id_taken', field: 'id', message: 'Another reading was already taken under this id. Send it as a new one.' })
}

const valuesOf = (setupId: string, reading: Reading) => ({
  id: reading.id,
  setup_id: setupId,
  taken_on: reading.takenOn,
  ammonia_mg_l: reading.ammoniaMgL,
  nitrite_mg_l: reading.nitriteMgL,
  nitrate_mg_l: reading.nitrateMgL,
  ph: reading.ph,
  temperature_c: reading.temperatureC,
  note: reading.note,
})

const readingOf = (row: Selectable<SetupReadingTable>): Reading => ({
  id: row.id,
  takenOn: row.taken_on,
  ammoniaMgL: row.ammonia_mg_l,
  nitriteMgL: row.nitrite_mg_l,
  nitrateMgL: row.nitrate_mg_l,
  ph: row.ph,
  temperatureC: row.temperature_c,
  note: row.note,
})
