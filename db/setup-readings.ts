import { sql, type Kysely, type Selectable } from 'kysely'
import type { Reading } from '../core/quote/quote-view.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, SetupReadingTable } from './database.ts'
import { inTransaction, isId, type Refusal } from './refusal.ts'

/** A tank is tested daily for some six weeks of cycling and weekly after that: this is several years of it. A page shows them all. */
const READINGS_MAX = 500

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

/** Takes a reading once: the same id with the same figures answers with the stored one. `full` where the setup has all it takes. */
export function addReading(
  db: Kysely<Database>,
  setupId: string,
  reading: Reading,
): Promise<Result<{ reading: Reading; repeated: boolean }, Refusal<'not_found' | 'id_taken' | 'full'>>> {
  return inTransaction(db, async (trx) => {
    const setup = isId(setupId) && (await trx.selectFrom('setup').select('id').where('id', '=', setupId).forUpdate().executeTakeFirst())
    if (!setup) return refuse({ code: 'not_found', message: 'There is no such setup.' })
    const stored = await trx.selectFrom('setup_reading').selectAll().where('id', '=', reading.id).executeTakeFirst()
    if (stored) return repeatOf(stored, setupId, reading)
    const { count } = await trx
      .selectFrom('setup_reading')
      .select((eb) => eb.fn.countAll<number>().as('count'))
      .where('setup_id', '=', setupId)
      .executeTakeFirstOrThrow()
    if (count >= READINGS_MAX) return refuse(FULL)
    const row = await trx
      .insertInto('setup_reading')
      .values(valuesOf(setupId, reading))
      .onConflict((clash) => clash.column('id').doNothing())
      .returningAll()
      .executeTakeFirst()
    if (!row) return refuse(ID_TAKEN)
    await trx.updateTable('setup').set({ last_used_at: row.received_at }).where('id', '=', setupId).execute()
    return ok({ reading: readingOf(row), repeated: false })
  })
}

/** Takes a reading out of a setup's log for good. `not_found` where this setup has none of that id. */
export async function removeReading(db: Kysely<Database>, setupId: string, readingId: string): Promise<Result<void, Refusal<'not_found'>>> {
  const gone = refuse({ code: 'not_found', message: 'There is no such reading in this log. It may have been taken out already.' } as const)
  if (!isId(setupId) || !isId(readingId)) return gone
  return inTransaction(db, async (trx) => {
    const row = await trx
      .deleteFrom('setup_reading')
      .where('id', '=', readingId)
      .where('setup_id', '=', setupId)
      .returning('id')
      .executeTakeFirst()
    if (!row) return gone
    await trx
      .updateTable('setup')
      .set({ last_used_at: sql`now()` })
      .where('id', '=', setupId)
      .execute()
    return ok(undefined)
  })
}

function repeatOf(stored: Selectable<SetupReadingTable>, setupId: string, reading: Reading) {
  const same =
    stored.setup_id === setupId && Object.entries(reading).every(([key, value]) => readingOf(stored)[key as keyof Reading] === value)
  return same ? ok({ reading: readingOf(stored), repeated: true }) : refuse(ID_TAKEN)
}

const ID_TAKEN: Refusal<'id_taken'> = {
  code: 'id_taken',
  field: 'id',
  message: 'Another reading was already taken under this id. Send it as a new one.',
}
const FULL: Refusal<'full'> = {
  code: 'full',
  message: `This setup holds ${READINGS_MAX} readings and takes no more. What was measured before stays readable.`,
}

const valuesOf = (setupId: string, reading: Reading) => ({
  id: reading.id,
  setup_id: setupId,
  taken_on: reading.takenOn,
  ammonia_mg_l: reading.ammoniaMgL,
  nitrite_mg_l: reading.nitriteMgL,
  nitrate_mg_l: reading.nitrateMgL,
  ph: reading.ph,
  kh_degrees: reading.khDegrees,
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
  khDegrees: row.kh_degrees,
  temperatureC: row.temperature_c,
  note: row.note,
})
