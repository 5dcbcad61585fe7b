import { sql, type Kysely } from 'kysely'
import type { Product } from '../core/catalog/product.ts'
import type { Store } from '../core/catalog/store.ts'
import type { CivilDate } from '../core/dates.ts'
import type { Sighting } from '../core/pricing/sighting.ts'
import type { Database } from './database.ts'
import { sightingOf } from './sighting-rows.ts'

/** Product and store of a sighting to be, as far as there are any, and the install's currency. */
export interface SightingPlace {
  product: Pick<Product, 'name' | 'archived'> | undefined
  store: Pick<Store, 'name' | 'archived' | 'timeZone'> | undefined
  currency: string
}

/** In one query: a phone in an aisle waits for it. Both ids must be ids. */
export async function sightingPlace(db: Kysely<Database>, productId: string, storeId: string): Promise<SightingPlace> {
  const row = await db
    .selectFrom('install')
    .leftJoin('product', (join) => join.on('product.id', '=', productId))
    .leftJoin('store', (join) => join.on('store.id', '=', storeId))
    .select(['install.currency', 'product.name as productName', 'product.archived as productArchived'])
    .select(['store.name as storeName', 'store.archived as storeArchived', 'store.time_zone as timeZone'])
    .executeTakeFirstOrThrow()
  const { productName, productArchived, storeName, storeArchived, timeZone } = row
  return {
    product: productName === null || productArchived === null ? undefined : { name: productName, archived: productArchived },
    store:
      storeName === null || storeArchived === null || timeZone === null
        ? undefined
        : { name: storeName, archived: storeArchived, timeZone },
    currency: row.currency,
  }
}

/** What a new sighting is held against: the product's record since a day, and what else was seen in the same store on the same day. */
export async function sightingRecord(
  db: Kysely<Database>,
  { productId, storeId, seenOn }: Pick<Sighting, 'productId' | 'storeId' | 'seenOn'>,
  since: CivilDate,
): Promise<{ record: Sighting[]; othersThatDay: Array<{ name: string; priceMinor: number }> }> {
  const rows = await db
    .selectFrom('sighting')
    .innerJoin('product', 'product.id', 'sighting.product_id')
    .selectAll('sighting')
    .select('product.name as product_name')
    .where('withdrawn_at', 'is', null)
    .where((eb) =>
      eb.or([
        eb.and([eb('product_id', '=', productId), eb('seen_on', '>=', since)]),
        eb.and([eb('store_id', '=', storeId), eb('seen_on', '=', seenOn), eb(sql.ref('accepted'), '=', true)]),
      ]),
    )
    .orderBy('seen_on')
    .orderBy('received_at')
    .orderBy('sighting.id')
    .execute()
  return {
    record: rows.filter((row) => row.product_id === productId).map(sightingOf),
    othersThatDay: rows
      .filter((row) => row.product_id !== productId)
      .map((row) => ({ name: row.product_name, priceMinor: row.price_minor })),
  }
}
