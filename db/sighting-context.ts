import { sql, type Kysely } from 'kysely'
import type { Product } from '../core/catalog/product.ts'
import type { Store } from '../core/catalog/store.ts'
import type { CivilDate } from '../core/dates.ts'
import type { DatedPrice } from '../core/pricing/sale-spells.ts'
import type { Doubt, Sighting } from '../core/pricing/sighting.ts'
import { trust, type ReporterVotes } from '../core/pricing/trust.ts'
import type { Database } from './database.ts'
import { votesOnReporter } from './learned.ts'
import { acceptedOf, PACKED, type PackedPrice, type PairBasis } from './price-summaries.ts'

/** What a sighting to be is held against: product and store as far as there are any, the currency of the store, the product's record. */
export interface SightingContext {
  product: Pick<Product, 'name' | 'archived'> | undefined
  store: Pick<Store, 'name' | 'archived' | 'timeZone'> | undefined
  /** ISO 4217, of the store's prices; the install's where there is no store. */
  currency: string
  /** The install's own. */
  home: string
  /** Everything accepted since the day asked for at stores of that currency, oldest first: amounts of another one compare with nothing here. */
  record: DatedPrice[]
  /** Which change of the summary of this product at this store the record is of; null where there is none yet. */
  version: number | null
  /** Of whoever reports, by the newest snapshot of what others said of each. */
  trust: number
}

interface Place {
  currency: string
  home: string
  product_name: string | null
  product_archived: boolean | null
  store_name: string | null
  store_archived: boolean | null
  time_zone: string | null
  version: number | null
  votes: ReporterVotes | null
}
type Row = Place & { record: PackedPrice[] | null }

/** In one query, since a phone in an aisle waits for it: the place stands beside each sighting, and once where there is none. All three ids must be ids. */
export async function sightingContext(
  db: Kysely<Database>,
  { productId, storeId, reporterId }: Pick<Sighting, 'productId' | 'storeId' | 'reporterId'>,
  since: CivilDate,
): Promise<SightingContext> {
  const { rows } = await sql<Row>`
    select coalesce(store.currency, install.currency) as currency, install.currency as home, product.name as product_name, product.archived as product_archived,
      store.name as store_name, store.archived as store_archived, store.time_zone,
      (select version from price_summary where product_id = ${productId} and store_id = ${storeId}) as version, ${votesOnReporter(reporterId)} as votes,
      (select json_agg(${PACKED}
        order by seen_on, received_at, id) from sighting where product_id = ${productId} and seen_on >= ${since} and accepted and store_id in
        (select other.id from store other where coalesce(other.currency, install.currency) = coalesce(store.currency, install.currency))) as record
    from install
    left join product on product.id = ${productId}
    left join store on store.id = ${storeId}`.execute(db)
  const [place] = rows
  if (place === undefined) throw new Error('there is no install yet')
  return { ...placeOf(place), record: (place.record ?? []).map(acceptedOf) }
}

/**
 * What a sighting to be is added to, as far as a record of `SUMMARY_DAYS` before its day tells. Undefined where it is doubted, and so none that a summary is of:
 * the newest of those may be so much older that the summary reaches back further than the record.
 */
export function basisOf(
  { version, record }: Pick<SightingContext, 'version' | 'record'>,
  { storeId }: Pick<Sighting, 'storeId'>,
  doubt: Doubt | null,
): PairBasis | undefined {
  if (doubt !== null) return undefined
  return { version, accepted: record.filter((one) => one.storeId === storeId) }
}

function placeOf({
  currency,
  home,
  product_name,
  product_archived,
  store_name,
  store_archived,
  time_zone,
  version,
  votes,
}: Place): Omit<SightingContext, 'record'> {
  return {
    currency,
    home,
    version,
    trust: trust(votes?.confirmed ?? 0, votes?.disputed ?? 0),
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
