import type { Transaction } from 'kysely'
import { addDays, type CivilDate } from '../../core/dates.ts'
import type { Database } from '../database.ts'
import { addReading } from '../setup-readings.ts'
import { startSetup } from '../setup-progress.ts'
import { findLinkedSetup } from '../setups.ts'
import { demoId } from './seeded.ts'

/** Started a few days after the quote was accepted. */
const STARTED_DAYS_AGO = 38

/** A fishless cycle as it usually goes: ammonia falls first, nitrite follows, nitrate stays. Days after the start; mg/L. Common practice. */
const READINGS: ReadonlyArray<[day: number, ammonia: number, nitrite: number, nitrate: number, ph: number]> = [
  [6, 2, 0, 0, 7.6],
  [10, 2, 0.25, 5, 7.6],
  [14, 1, 1, 10, 7.4],
  [18, 0.5, 2, 20, 7.4],
  [22, 0.25, 5, 40, 7.2],
  [26, 0.25, 5, 40, 7.2],
  [30, 0, 2, 80, 7.2],
  [34, 0, 0.5, 80, 7],
  [37, 0, 0.25, 80, 7],
]
/** The steps that are behind it: all but the cycle's end and the first fish. */
const OPEN_GROUPS = ['cycle', 'first_fish']

/** The setup of the accepted quote, in the fifth week of its cycle. */
export async function seedSetup(trx: Transaction<Database>, quoteId: string, today: CivilDate): Promise<void> {
  const { id } = await trx.selectFrom('setup').select('id').where('quote_id', '=', quoteId).executeTakeFirstOrThrow()
  const startedOn = addDays(today, -STARTED_DAYS_AGO)
  await startSetup(trx, id, startedOn)
  const setup = await findLinkedSetup(trx, id)
  const done = (setup?.plan.steps ?? []).filter((step) => !OPEN_GROUPS.includes(step.group))
  const ticks = done.map((step) => ({ setup_id: id, step_id: step.id, ticked_on: addDays(startedOn, step.earliestDay ?? 1) }))
  await trx.insertInto('setup_tick').values(ticks).execute()
  for (const [day, ammoniaMgL, nitriteMgL, nitrateMgL, ph] of READINGS) {
    await addReading(trx, id, {
      id: demoId('reading', String(day)),
      takenOn: addDays(startedOn, day),
      ammoniaMgL,
      nitriteMgL,
      nitrateMgL,
      ph,
      temperatureC: 24,
      note: '',
    })
  }
}
