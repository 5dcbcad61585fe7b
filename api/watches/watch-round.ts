import type { Kysely } from 'kysely'
import type { Logger } from 'pino'
import { civilDateAt, type CivilDate } from '../../core/dates.ts'
import type { Database } from '../../db/database.ts'
import { getInstall } from '../../db/install.ts'
import { isUnreachable } from '../../db/reach.ts'
import { inTransaction } from '../../db/refusal.ts'
import { dropDue, oldestDue, turnWatches } from '../../db/watch-due.ts'
import { loggable } from '../http/log.ts'
import { tellOfProduct, tellOfWatch } from './tell.ts'

/** Day on which this process last had every watch looked at, a database. */
const turnedOn = new WeakMap<Kysely<Database>, CivilDate>()
/** A long round, after an import, does not begin a second time. */
const underWay = new WeakSet<Kysely<Database>>()

/** As many looks at most in one round: a round that never ended would hold up the stop of the service. */
const MOST_LOOKS = 500

/**
 * Looks at what changed since the last round and tells of it; on a new day, at every watch. Returns how many notices there are by it. What cannot be
 * looked at because of a fault here is logged and left out, so that what waits behind it has its turn.
 */
export async function watchRound(db: Kysely<Database>, nowMs: number, log: Logger): Promise<number> {
  if (underWay.has(db)) return 0
  underWay.add(db)
  return round(db, nowMs, log).finally(() => underWay.delete(db))
}

async function round(db: Kysely<Database>, nowMs: number, log: Logger): Promise<number> {
  await turnOncePerDay(db, nowMs)
  let told = 0
  for (let looks = 0; looks < MOST_LOOKS; looks += 1) {
    const due = await oldestDue(db)
    if (due === undefined) break
    try {
      const look = 'watchId' in due.of ? tellOfWatch(db, due.of.watchId, nowMs) : tellOfProduct(db, due.of, nowMs)
      told += (await look).length
    } catch (error) {
      if (isUnreachable(error)) throw error
      log.error({ err: loggable(error) }, 'a watch could not be looked at')
    }
    await dropDue(db, due.ids)
  }
  return told
}

async function turnOncePerDay(db: Kysely<Database>, nowMs: number): Promise<void> {
  const { timeZone } = await getInstall(db)
  const today = civilDateAt(nowMs, timeZone)
  if (turnedOn.get(db) === today) return
  await inTransaction(db, (trx) => turnWatches(trx, today))
  turnedOn.set(db, today)
}
