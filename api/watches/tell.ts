import { randomBytes } from 'node:crypto'
import type { Kysely, Transaction } from 'kysely'
import type { Product } from '../../core/catalog/product.ts'
import { addDays, civilDateAt, type CivilDate } from '../../core/dates.ts'
import { CURRENT_DAYS } from '../../core/pricing/age.ts'
import type { PricedThere } from '../../core/pricing/watches/deal.ts'
import { isOf, newDeals, roomLeft } from '../../core/pricing/watches/match.ts'
import { uuidV7 } from '../../core/uuid-v7.ts'
import type { Database } from '../../db/database.ts'
import { getInstall, type InstallRow } from '../../db/install.ts'
import { findProduct, getProducts } from '../../db/products.ts'
import { inTransaction } from '../../db/refusal.ts'
import { lookedAtWhole } from '../../db/watch-due.ts'
import {
  lockTold,
  runningWatch,
  seenProductsOfKind,
  storesOfRegions,
  tellDeals,
  toldSince,
  watchesAbout,
  type OwnedWatch,
} from '../../db/watch-matching.ts'
import { fitting } from './fitting.ts'
import { limits, type LimitOf } from './limits.ts'
import { pricedThere } from './priced-there.ts'

interface Round {
  db: Kysely<Database>
  install: InstallRow
  nowMs: number
  today: CivilDate
  limitOf: LimitOf
}

async function roundOf(db: Kysely<Database>, nowMs: number): Promise<Round> {
  const install = await getInstall(db)
  const today = civilDateAt(nowMs, install.timeZone)
  return { db, install, nowMs, today, limitOf: limits(db, install, today) }
}

/**
 * Looks at everything that watches a product, after its record at a store has changed; at all stores where none is named. Tells each deal that was
 * not told before; leaves a watch of any of a kind to its own look where many products wait. Returns the ids of the new notices.
 */
export async function tellOfProduct(
  db: Kysely<Database>,
  { productId, storeId }: { productId: string; storeId: string | null },
  nowMs: number,
): Promise<string[]> {
  const product = await findProduct(db, productId)
  if (!product || product.archived) return []
  const about = (await watchesAbout(db, productId, product.kind)).filter((watch) => isOf(watch, product))
  const whole = await lookedAtWhole(db, about.flatMap(({ id, requirement }) => (requirement === null ? [] : id))) // prettier-ignore
  const watches = about.filter(({ id }) => !whole.has(id))
  if (watches.length === 0) return []
  const round = await roundOf(db, nowMs)
  const prices = await pricedThere(db, [product], storeId, round.today, round.install)
  const told: string[] = []
  for (const watch of watches) told.push(...(await tellOne(round, watch, [product], prices)))
  return told
}

/** Looks at all that one watch is of: when it is set or changed, and once a day. Returns the ids of the new notices. */
export async function tellOfWatch(db: Kysely<Database>, watchId: string, nowMs: number): Promise<string[]> {
  const watch = await runningWatch(db, watchId)
  if (!watch) return []
  const round = await roundOf(db, nowMs)
  const products = await productsOf(round, watch)
  return tellOne(round, watch, products, await pricedThere(db, products, null, round.today, round.install))
}

async function productsOf({ db, today }: Round, watch: OwnedWatch): Promise<Product[]> {
  const { productId, requirement } = watch
  if (requirement === null) return (await getProducts(db, productId === null ? [] : [productId])).filter((product) => isOf(watch, product))
  const ids = await seenProductsOfKind(db, requirement.kind, addDays(today, -CURRENT_DAYS))
  return (await getProducts(db, ids)).filter((product) => isOf(watch, product))
}

/** What may take long, a price to buy at and the physics of a build, comes before the transaction, and only where there is a price at all. */
async function tellOne(round: Round, watch: OwnedWatch, products: readonly Product[], prices: PricedThere[]): Promise<string[]> {
  const { db, install, nowMs, limitOf } = round
  const priced = new Set(prices.map(({ productId }) => productId))
  const fit = await fitting(db, watch, products.filter(({ id }) => priced.has(id))) // prettier-ignore
  const limited: Array<{ limitMinor: number; there: PricedThere[] }> = []
  for (const { id } of fit) {
    const limitMinor = await limitOf(watch, id)
    if (limitMinor !== null) limited.push({ limitMinor, there: prices.filter(({ productId }) => productId === id) })
  }
  if (limited.length === 0) return []
  return inTransaction(db, async (trx) => {
    const before = await lockTold(trx, watch.id, fit.map(({ id }) => id)) // prettier-ignore
    if (before === undefined) return []
    const region = watch.regionId === null ? null : await regionOf(trx, watch.regionId)
    const room = await roomOf(trx, round, watch)
    const deals = newDeals(watch, limited, before, region, room).map((deal) => ({ ...deal, noticeId: uuidV7(nowMs, randomBytes(10)) }))
    return tellDeals(trx, watch, deals, install.currency, new Date(nowMs))
  })
}

/** A day has 25 hours at most. Two looks at once at two watches of one person may both find the same room: a few more are told then, each once. */
async function roomOf(trx: Transaction<Database>, { install, nowMs, today }: Round, { id, personId }: OwnedWatch): Promise<number> {
  const lately = await toldSince(trx, personId, new Date(nowMs - 26 * 3_600_000))
  const onToday = lately.filter(({ toldAt }) => civilDateAt(toldAt.getTime(), install.timeZone) === today)
  return roomLeft(onToday.filter(({ watchId }) => watchId === id).length, onToday.length)
}

/** A region without a store has none where anything could be bought. */
const regionOf = async (trx: Transaction<Database>, regionId: string): Promise<ReadonlySet<string>> =>
  (await storesOfRegions(trx, [regionId])).get(regionId) ?? new Set()
