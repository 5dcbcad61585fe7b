import { sql, type Kysely, type RawBuilder } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import { COUNTED_DAYS } from '../core/pricing/age.ts'
import { MOST_OPEN_PRICES, type OpenPrice } from '../core/other-clubs/open-prices.ts'
import type { Database } from './database.ts'

/** Whether this club tells its prices to others. */
export async function publishesPrices(db: Kysely<Database>): Promise<boolean> {
  return (await db.selectFrom('open_prices').select('publishes').executeTakeFirst())?.publishes === true
}

export async function setPublishesPrices(db: Kysely<Database>, publishes: boolean): Promise<void> {
  await db
    .insertInto('open_prices')
    .values({ publishes })
    .onConflict((clash) => clash.column('one').doUpdateSet({ publishes }))
    .execute()
}

/** A price with the ids of ours that must not be told as they are. */
export interface OwnPrice extends Omit<OpenPrice, 'originId' | 'store'> {
  id: string
  storeId: string
  store: Omit<OpenPrice['store'], 'key'>
}

/** A shelf tag below its own printed price is a sale (`effectiveCondition`). */
const isShelf = (row: string): RawBuilder<boolean> =>
  sql`(${sql.ref(`${row}.condition`)} = 'shelf' and ${sql.ref(`${row}.price_minor`)} >= coalesce(${sql.ref(`${row}.printed_regular_minor`)}, 0))`

/** Only what counted as a price by then can have been found gone (`foundGone`). */
const wasFoundGone = (row: string): RawBuilder<boolean> =>
  sql`coalesce(${sql.ref(`${row}.gone_on`)} - ${sql.ref(`${row}.seen_on`)} between 0 and ${sql.lit(COUNTED_DAYS)}, false)`

/**
 * The rules of `core/pricing/gone.ts` in SQL: a used piece goes alone; a sale goes with whoever saw it at its price; a regular price that is gone takes everything new of the product there with
 * it. Whatever was seen there again on that day or later has come back.
 */
const NOT_GONE = sql<boolean>`case when sighting.condition = 'used' then not ${wasFoundGone('sighting')} else not exists (
  select from sighting gone where gone.product_id = sighting.product_id and gone.store_id = sighting.store_id and gone.gone_on >= sighting.seen_on
    and gone.accepted and gone.condition <> 'used' and ${wasFoundGone('gone')}
    and (${isShelf('gone')} or (not ${isShelf('sighting')} and gone.price_minor = sighting.price_minor))
    and not exists (select from sighting again where again.product_id = gone.product_id and again.store_id = gone.store_id and again.seen_on >= gone.gone_on
      and again.accepted and again.condition <> 'used' and not (${wasFoundGone('again')} and again.gone_on <= gone.gone_on)
      and (${isShelf('gone')} or (not ${isShelf('again')} and again.price_minor = gone.price_minor)))) end`

/**
 * What members saw for themselves since a day, the newest first, as many as are told: what counts and is not gone, of products and stores that are in use. What came with a
 * file may be what another club told, so that none of it is told on. Only
 * the day is told, so that the order within one is by id alone and says nothing of the hour.
 */
export async function ownOpenPrices(db: Kysely<Database>, since: CivilDate): Promise<OwnPrice[]> {
  const rows = await db
    .selectFrom('sighting')
    .innerJoin('product', 'product.id', 'sighting.product_id')
    .innerJoin('store', 'store.id', 'sighting.store_id')
    .innerJoin('install', (join) => join.onTrue())
    .select([
      'sighting.id',
      'sighting.store_id as storeId',
      'sighting.condition',
      'sighting.price_minor as priceMinor',
      'sighting.printed_regular_minor as printedRegularMinor',
      'sighting.seen_on as seenOn',
      'sighting.last_day as lastDay',
      'product.name as productName',
      'product.maker',
      'product.gtin',
      'product.kind',
      'store.name as storeName',
      'store.kind as storeKind',
      'store.town',
      'store.country',
      'store.prices_include_tax as includesTax',
      sql<string>`coalesce(store.currency, install.currency)`.as('currency'),
    ])
    .where('sighting.accepted', '=', true)
    .where('sighting.imported', '=', false)
    .where('sighting.seen_on', '>=', since)
    .where(NOT_GONE)
    .where('product.archived', '=', false)
    .where('store.archived', '=', false)
    .orderBy('sighting.seen_on', 'desc')
    .orderBy('sighting.id', 'desc')
    .limit(MOST_OPEN_PRICES)
    .execute()
  return rows.map(({ productName, maker, gtin, kind, storeName, storeKind, town, country, ...price }) => ({
    ...price,
    product: { name: productName, maker, gtin, kind },
    store: { name: storeName, kind: storeKind, town, country },
  }))
}
