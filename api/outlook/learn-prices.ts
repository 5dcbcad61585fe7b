import { once } from 'node:events'
import { Worker } from 'node:worker_threads'
import type { Kysely } from 'kysely'
import type { Store } from '../../core/catalog/store.ts'
import { addDays, civilDateAt, type CivilDate } from '../../core/dates.ts'
import type { Learned, MarketRecord } from '../../core/pricing/outlook/outlook.ts'
import type { Database } from '../../db/database.ts'
import { getInstall } from '../../db/install.ts'
import { acceptedSince, dropLearnedBefore, keepLearned, kindsOfProducts, newestLearnedOn, votesByReporter } from '../../db/learned.ts'
import { inTransaction } from '../../db/refusal.ts'
import { listSaleTimes } from '../../db/sale-times.ts'
import { listStores } from '../../db/stores.ts'
import { saleWindows } from '../sale-times/windows.ts'
import type { LearnAnswer, LearnJob } from './learn-worker.ts'

/** What was seen longer ago says little of how a store sells now. */
const TAUGHT_BY_DAYS = 3 * 365
/** A sale time that begins later is not expected by anybody yet. */
const AHEAD_DAYS = 366
/** Who wants to see what was expected a month ago may. */
const KEPT_DAYS = 31

/**
 * Learns from the record once a day, in a thread of its own so that nobody waits for it, and keeps the snapshot. Nothing is done where it was done
 * already, or in a store's install, whose own list is what its prices are.
 */
export async function learnPrices(db: Kysely<Database>, nowMs: number): Promise<'learned' | 'nothing_to_do'> {
  if (underWay.has(db)) return 'nothing_to_do'
  underWay.add(db)
  return learnOnce(db, nowMs).finally(() => underWay.delete(db))
}

/** A large record takes minutes: the next look does not begin a second time. */
const underWay = new WeakSet<Kysely<Database>>()

async function learnOnce(db: Kysely<Database>, nowMs: number): Promise<'learned' | 'nothing_to_do'> {
  const { timeZone, mode } = await getInstall(db)
  const today = civilDateAt(nowMs, timeZone)
  if (mode === 'store' || (await newestLearnedOn(db, today)) === today) return 'nothing_to_do'
  const learned = await inThread({ record: await recordOn(db, today), trust: await votesByReporter(db) })
  const kept = await inTransaction(db, (trx) => keepLearned(trx, learned))
  await dropLearnedBefore(db, addDays(today, -KEPT_DAYS))
  return kept ? 'learned' : 'nothing_to_do'
}

async function recordOn(db: Kysely<Database>, asOf: CivilDate): Promise<MarketRecord> {
  const since = addDays(asOf, -TAUGHT_BY_DAYS)
  const [sightings, times, stores] = [await acceptedSince(db, since), await listSaleTimes(db), await listStores(db, { archived: 'all' })]
  const products = await kindsOfProducts(db)
  return { sightings, products, windows: saleWindows(times, stores.map(asOpen), since, addDays(asOf, AHEAD_DAYS)), asOf }
}

/** A store that is archived by now had its sales as well: what was seen of them teaches. */
const asOpen = (store: Store): Store => ({ ...store, archived: false })

async function inThread(job: LearnJob): Promise<Learned> {
  const worker = new Worker(new URL('learn-worker.ts', import.meta.url))
  try {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread of this process has no origin
    worker.postMessage(job)
    const [answer] = (await once(worker, 'message')) as [LearnAnswer]
    if (!answer.ok) throw new Error(`the record could not be learnt from: ${answer.reason}`)
    return answer.learned
  } finally {
    await worker.terminate()
  }
}
