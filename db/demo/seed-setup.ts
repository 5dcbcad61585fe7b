import type { Transaction } from 'kysely'
import { addDays, type CivilDate } from '../../core/dates.ts'
import type { Database } from '../database.ts'
import { addReading } from '../setup-readings.ts'
import { startSetup } from '../setup-progress.ts'
import { findLinkedSetup } from '../setups.ts'
import { demoId } from './seeded.ts'

/** Started a few days after the quote was accepted. */
const STARTED_DAYS_AGO = 38

/**
 * A fishless cycle as it usually goes in hard water: ammonia falls first, nitrite follows and falls, nitrate stays, and what turns ammonia into acid eats
 * the hardness. Days after the start; mg/L, KH in degrees. Common practice; nitrogen in balance: one dose of 2 mg/L as N is 8.9 mg/L of nitrate, so that 80
 * are nine doses.
 */
const READINGS: ReadonlyArray<[day: number, ammonia: number, nitrite: number, nitrate: number, ph: number, kh: number]> = [
  [6, 2, 0, 0, 7.8, 11],
  [10, 1, 1, 0, 7.8, 11],
  [13, 0.25, 2, 5, 7.8, 10],
  [17, 0.5, 5, 10, 7.6, 10],
  [21, 0, 5, 20, 7.6, 9],
  [25, 0, 5, 20, 7.6, 9],
  [29, 0.25, 2, 40, 7.4, 7],
  [32, 0, 1, 40, 7.4, 7],
  [35, 0, 0.5, 80, 7.2, 4],
  [37, 0, 0.25, 80, 7.2, 4],
]
/** Steps of the cycle that are behind it, and when: the first dose before the first reading, the next one once that was eaten. Whether it is ready comes next. */
const CYCLE_DONE: Readonly<Record<string, number>> = { 'first-ammonia': 5, 'daily-readings': 6, 'second-dose': 13 }
/** Steps of these groups wait for readings. */
const BY_READINGS = ['cycle', 'first_fish']

/** The setup of the accepted quote, in its sixth week, at the end of the cycle. */
export async function seedSetup(trx: Transaction<Database>, quoteId: string, today: CivilDate): Promise<void> {
  const { id } = await trx.selectFrom('setup').select('id').where('quote_id', '=', quoteId).executeTakeFirstOrThrow()
  const startedOn = addDays(today, -STARTED_DAYS_AGO)
  await startSetup(trx, id, startedOn)
  const setup = await findLinkedSetup(trx, id)
  const ticks = (setup?.plan.steps ?? []).flatMap((step) => {
    const day = BY_READINGS.includes(step.group) ? CYCLE_DONE[step.id] : (step.earliestDay ?? 1)
    return day === undefined ? [] : [{ setup_id: id, step_id: step.id, ticked_on: addDays(startedOn, day) }]
  })
  await trx.insertInto('setup_tick').values(ticks).execute()
  for (const [day, ammoniaMgL, nitriteMgL, nitrateMgL, ph, khDegrees] of READINGS) {
    await addReading(trx, id, {
      id: demoId('reading', String(day)),
      takenOn: addDays(startedOn, day),
      ammoniaMgL,
      nitriteMgL,
      nitrateMgL,
      ph,
      khDegrees,
      temperatureC: 24,
      note: '',
    })
  }
}
