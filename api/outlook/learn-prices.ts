import type { Kysely } from 'kysely'
import type { Store } from '../../core/catalog/store.ts'
import { addDays, civilDateAt, type CivilDate } from '../../core/dates.ts'
import type { Database } from '../../db/database.ts'
import { getInstall } from '../../db/install.ts'
import {
  acceptedText,
  dropLearnedBefore,
  keepLearned,
  kindsOfProducts,
  newestLearnedOn,
  sightingsByProduct,
  votesByReporter,
} from '../../db/learned.ts'
import { inTransaction } from '../../db/refusal.ts'
import { listSaleTimes } from '../../db/sale-times.ts'
import { listStores } from '../../db/stores.ts'
import { saleWindows } from '../sale-times/windows.ts'
import { learnInThread } from './learn-thread.ts'
import type { LearnJob, LearnLot } from './learn-worker.ts'

/** What was seen longer ago says little of how a store sells now. */
const TAUGHT_BY_DAYS = 3 * 365
/** A sale time that begins later is not expected by anybody yet. */
const AHEAD_DAYS = 366
/** Who wants to see what was expected a month ago may. */
const KEPT_DAYS = 31

/**
 * Learns from the record once a day, in a thread of its own so that nobody waits for it, and keeps the snapshot. Nothing is done where it was done
 * already, or in a store's install, whose own list is what its prices are. What fails can be tried again. `learn` is what learns.
 */
export async function learnPrices(db: Kysely<Database>, nowMs: number, learn = learnInThread): Promise<'learned' | 'nothing_to_do'> {
  if (underWay.has(db)) return 'nothing_to_do'
  underWay.add(db)
  return learnOnce(db, nowMs, learn).finally(() => underWay.delete(db))
}

/** A large record takes minutes: the next look does not begin a second time. */
const underWay = new WeakSet<Kysely<Database>>()

async function learnOnce(db: Kysely<Database>, nowMs: number, learn: typeof learnInThread): Promise<'learned' | 'nothing_to_do'> {
  const { timeZone, mode } = await getInstall(db)
  const today = civilDateAt(nowMs, timeZone)
  if (mode === 'store' || (await newestLearnedOn(db, today)) === today) return 'nothing_to_do'
  const record = await recordOn(db, today)
  const learned = await learn({ record, trust: await votesByReporter(db) }, await readsOf(db, record))
  const kept = await inTransaction(db, (trx) => keepLearned(trx, learned))
  await dropLearnedBefore(db, addDays(today, -KEPT_DAYS))
  return kept ? 'learned' : 'nothing_to_do'
}

const taughtSince = (asOf: CivilDate): CivilDate => addDays(asOf, -TAUGHT_BY_DAYS)

async function recordOn(db: Kysely<Database>, asOf: CivilDate): Promise<LearnJob['record']> {
  const [times, stores] = [await listSaleTimes(db), await listStores(db, { archived: 'all' })]
  const windows = saleWindows(times, stores.map(asOpen), taughtSince(asOf), addDays(asOf, AHEAD_DAYS))
  return { products: await kindsOfProducts(db), windows, asOf }
}

/** A store that is archived by now had its sales as well: what was seen of them teaches. */
const asOpen = (store: Store): Store => ({ ...store, archived: false })

/** Sightings that are read at a time, but for a product that has more by itself: a megabyte or two, which is gone before what lives longer is cleared. */
const READ_AT_ONCE = 2_000
/** Products that one question names. */
const MOST_PRODUCTS = 500

/** The sightings of all products, lot by lot, each read once the one before was learnt from. */
async function readsOf(db: Kysely<Database>, { products, asOf }: LearnJob['record']): Promise<Array<() => Promise<LearnLot>>> {
  const lots = lotsOf(
    products.map(({ id }) => id),
    await sightingsByProduct(db),
  )
  return lots.map((lot) => async () => ({ told: await acceptedText(db, lot, taughtSince(asOf)) }))
}

/** Products in lists that have few enough sightings together, in the order given. @example lotsOf(['a', 'b'], new Map([['a', 1900], ['b', 200]])) // [['a'], ['b']] */
export function lotsOf(productIds: readonly string[], seen: ReadonlyMap<string, number>): string[][] {
  const lots: string[][] = []
  let room = 0
  for (const id of productIds) {
    const own = seen.get(id) ?? 0
    if (own > room || lots.length === 0 || lots.at(-1)?.length === MOST_PRODUCTS) {
      lots.push([])
      room = READ_AT_ONCE
    }
    lots.at(-1)?.push(id)
    room -= own
  }
  return lots
}
