import { sql, type Kysely, type Transaction } from 'kysely'
import type { Kind } from '../core/catalog/kinds.ts'
import { dealKey, type ToldDeal } from '../core/pricing/watches/news.ts'
import type { Deal } from '../core/pricing/watches/deal.ts'
import type { Watch } from '../core/pricing/watches/watch.ts'
import type { Database } from './database.ts'
import { isId } from './refusal.ts'
import { watchOf } from './watches.ts'

/** A watch with whose it is. */
export type OwnedWatch = Watch & { personId: string }

const running = (db: Kysely<Database>) =>
  db
    .selectFrom('watch')
    .innerJoin('person', 'person.id', 'watch.person_id')
    .selectAll('watch')
    .where('watch.ended_at', 'is', null)
    .where('person.disabled_at', 'is', null)
    .orderBy('watch.created_at')
    .orderBy('watch.id')

const ownedOf = (row: Awaited<ReturnType<ReturnType<typeof running>['execute']>>[number]): OwnedWatch => ({
  ...watchOf(row),
  personId: row.person_id,
})

/** Running watches that may be of a product: those that name it and those of its kind. What other products are watched by is not read. */
export async function watchesAbout(db: Kysely<Database>, productId: string, kind: Kind): Promise<OwnedWatch[]> {
  const named = await running(db).where('watch.product_id', '=', productId).execute()
  const ofKind = await running(db).where('watch.kind', '=', kind).execute()
  return [...named, ...ofKind].map(ownedOf)
}

export async function runningWatch(db: Kysely<Database>, id: string): Promise<OwnedWatch | undefined> {
  if (!isId(id)) return undefined
  const row = await running(db).where('watch.id', '=', id).executeTakeFirst()
  return row && ownedOf(row)
}

/** Ids of products of a kind that are not archived and have been seen since a day, or stand in the own list. */
export async function seenProductsOfKind(db: Kysely<Database>, kind: Kind, since: string): Promise<string[]> {
  const rows = await db
    .selectFrom('product')
    .select('product.id')
    .where('kind', '=', kind)
    .where('archived', '=', false)
    .where((eb) =>
      eb.or([
        eb.exists(eb.selectFrom('sighting').whereRef('product_id', '=', 'product.id').where('seen_on', '>=', since)),
        eb.exists(eb.selectFrom('list_price').whereRef('list_price.product_id', '=', 'product.id')),
      ]),
    )
    .orderBy('product.id')
    .execute()
  return rows.map(({ id }) => id)
}

/** What a watch told of some products; undefined where it has ended. Locks it, so that of two who look at once the second sees what the first told. */
export async function lockTold(
  trx: Transaction<Database>,
  watchId: string,
  productIds: readonly string[],
): Promise<ToldDeal[] | undefined> {
  const watch = await trx
    .selectFrom('watch')
    .select('id')
    .where('id', '=', watchId)
    .where('ended_at', 'is', null)
    .forUpdate()
    .executeTakeFirst()
  if (!watch) return undefined
  if (productIds.length === 0) return []
  const rows = await trx
    .selectFrom('notice')
    .select(['product_id', 'store_id', 'condition', 'price_minor', 'seen_on', 'deal_from', 'deal_until'])
    .where('watch_id', '=', watchId)
    .where('product_id', 'in', productIds)
    .execute()
  return rows.map((row) => ({
    productId: row.product_id,
    storeId: row.store_id,
    condition: row.condition,
    priceMinor: row.price_minor,
    seenOn: row.seen_on,
    from: row.deal_from,
    until: row.deal_until,
  }))
}

/** What all watches of a person told since an instant: which watch, and when. */
export async function toldSince(
  trx: Transaction<Database>,
  personId: string,
  since: Date,
): Promise<Array<{ watchId: string; toldAt: Date }>> {
  const rows = await trx
    .selectFrom('notice')
    .select(['watch_id', 'told_at'])
    .where('person_id', '=', personId)
    .where('told_at', '>=', since)
    .execute()
  return rows.map((row) => ({ watchId: row.watch_id, toldAt: row.told_at }))
}

/** Tells deals of a watch: each once, whoever else tells it at the same moment. Returns the ids of what was told. */
export async function tellDeals(
  trx: Transaction<Database>,
  { id, personId }: Pick<OwnedWatch, 'id' | 'personId'>,
  deals: ReadonlyArray<Deal & { noticeId: string }>,
  home: string,
  now: Date,
): Promise<string[]> {
  if (deals.length === 0) return []
  const rows = await trx
    .insertInto('notice')
    .values(
      deals.map((deal) => ({
        id: deal.noticeId,
        watch_id: id,
        person_id: personId,
        product_id: deal.productId,
        store_id: deal.storeId,
        condition: deal.condition,
        price_minor: deal.priceMinor,
        currency: deal.currency,
        total_minor: deal.totalMinor,
        total_currency: home,
        deal_key: dealKey(deal),
        sighting_id: deal.sightingId,
        seen_on: deal.seenOn,
        deal_from: deal.from,
        deal_until: deal.until,
        last_day_stated: deal.lastDayStated,
        told_at: now,
      })),
    )
    .onConflict((clash) => clash.columns(['watch_id', 'deal_key']).doNothing())
    .returning('id')
    .execute()
  return rows.map((row) => row.id)
}

/** Ids of the stores of some regions. */
export async function storesOfRegions(db: Kysely<Database>, regionIds: readonly string[]): Promise<Map<string, Set<string>>> {
  if (regionIds.length === 0) return new Map()
  const rows = await db.selectFrom('region_store').select(['region_id', 'store_id']).where('region_id', 'in', regionIds).execute()
  return new Map([...Map.groupBy(rows, (row) => row.region_id)].map(([id, of]) => [id, new Set(of.map((row) => row.store_id))]))
}

/** How many wait to be looked at: for whoever waits for it. */
export const countDue = async (db: Kysely<Database>): Promise<number> =>
  (await sql<{ count: number }>`select count(*) as count from watch_due`.execute(db)).rows[0]?.count ?? 0
