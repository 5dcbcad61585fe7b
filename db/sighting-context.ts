import { sql, type Kysely, type Selectable } from 'kysely'
import type { Product } from '../core/catalog/product.ts'
import type { Store } from '../core/catalog/store.ts'
import type { CivilDate } from '../core/dates.ts'
import type { Sighting } from '../core/pricing/sighting.ts'
import type { Database, SightingTable } from './database.ts'
import { sightingOf } from './sighting-rows.ts'

/** What a sighting to be is held against: product and store as far as there are any, the install's currency, the product's record. */
export interface SightingContext {
  product: Pick<Product, 'name' | 'archived'> | undefined
  store: Pick<Store, 'name' | 'archived' | 'timeZone'> | undefined
  currency: string
  /** Everything not withdrawn since the day asked for, oldest first. */
  record: Sighting[]
}

interface Place {
  currency: string
  product_name: string | null
  product_archived: boolean | null
  store_name: string | null
  store_archived: boolean | null
  time_zone: string | null
}
type Row = Place & (Selectable<SightingTable> | { id: null })

/** In one query, since a phone in an aisle waits for it: the place stands beside each sighting, and once where there is none. Both ids must be ids. */
export async function sightingContext(
  db: Kysely<Database>,
  productId: string,
  storeId: string,
  since: CivilDate,
): Promise<SightingContext> {
  const { rows } = await sql<Row>`
    select install.currency, product.name as product_name, product.archived as product_archived,
      store.name as store_name, store.archived as store_archived, store.time_zone, sighting.*
    from install
    left join product on product.id = ${productId}
    left join store on store.id = ${storeId}
    left join sighting on sighting.product_id = product.id and sighting.seen_on >= ${since} and sighting.withdrawn_at is null
    order by sighting.seen_on, sighting.received_at, sighting.id`.execute(db)
  const [place] = rows
  if (place === undefined) throw new Error('there is no install yet')
  return { ...placeOf(place), record: rows.flatMap((row) => (row.id === null ? [] : [sightingOf(row)])) }
}

function placeOf({
  currency,
  product_name,
  product_archived,
  store_name,
  store_archived,
  time_zone,
}: Place): Omit<SightingContext, 'record'> {
  return {
    currency,
    product: product_name === null ? undefined : { name: product_name, archived: product_archived === true },
    store: store_name === null ? undefined : { name: store_name, archived: store_archived === true, timeZone: time_zone ?? 'UTC' },
  }
}

/** Other products seen in the same store on the same day at the very same price: what the tag may have belonged to. A few are enough to say so. */
export async function samePriceThatDay(
  db: Kysely<Database>,
  seen: Pick<Sighting, 'productId' | 'storeId' | 'seenOn' | 'priceMinor'>,
): Promise<Array<{ name: string; priceMinor: number }>> {
  return db
    .selectFrom('sighting')
    .innerJoin('product', 'product.id', 'sighting.product_id')
    .select(['product.name', 'sighting.price_minor as priceMinor'])
    .where('sighting.accepted', '=', true)
    .where('sighting.seen_on', '=', seen.seenOn)
    .where('sighting.store_id', '=', seen.storeId)
    .where('sighting.price_minor', '=', seen.priceMinor)
    .where('sighting.product_id', '<>', seen.productId)
    .orderBy('product.name')
    .limit(3)
    .execute()
}
