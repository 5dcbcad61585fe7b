import type { Kysely } from 'kysely'
import type { CivilDate } from '../../core/dates.ts'
import type { Database } from '../../db/database.ts'
import { lapseQuotes } from '../../db/quotes.ts'
import type { Ctx } from '../context.ts'
import { installToday } from '../day.ts'

/** Last day on which this process let quotes lapse, a database: within a day none can newly lapse. */
const doneOn = new WeakMap<Kysely<Database>, CivilDate>()

/** Marks quotes that stood until yesterday as lapsed. On every read of quotes, so that none is shown as open after its last day. */
export async function lapse(c: Ctx): Promise<void> {
  const { today } = await installToday(c)
  await lapseOn(c.get('db'), today)
}

export async function lapseOn(db: Kysely<Database>, today: CivilDate): Promise<void> {
  if (doneOn.get(db) === today) return
  await lapseQuotes(db, today)
  doneOn.set(db, today)
}
