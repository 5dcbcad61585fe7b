import { sql, type Kysely, type SelectQueryBuilder } from 'kysely'
import type { Kind } from '../core/catalog/kinds.ts'
import type { CivilDate } from '../core/dates.ts'
import type { SightingRow } from '../core/pricing/record.ts'
import type { Sighting } from '../core/pricing/sighting.ts'
import type { Database } from './database.ts'
import { productsSaying, type Narrowed } from './product-search.ts'
import { isId } from './refusal.ts'
import { rowOf, sightingOf, sightingRows } from './sighting-rows.ts'
import type { Viewer } from './viewer.ts'

export interface BoardFilter {
  kind?: Kind
  storeId?: string
  /** Only stores of this region. */
  regionId?: string
  /** Said of the product, as a list of products is searched: slips forgiven. */
  q?: string
  /** Nothing older: beyond the age at which a price is no longer known. */
  since: CivilDate
  limit: number
  offset: number
}

/** Newest accepted sighting of each product at each store, newest first. How each stands against its record is for core/pricing to say. */
export async function board(
  db: Kysely<Database>,
  viewer: Viewer,
  filter: BoardFilter,
): Promise<{ rows: Array<{ sighting: SightingRow; kind: Kind }>; total: number }> {
  if ([filter.storeId, filter.regionId].some((id) => id !== undefined && !isId(id))) return { rows: [], total: 0 }
  const saying = filter.q === undefined ? undefined : await productsSaying(db, filter.q)
  const { total } = await db
    .selectFrom(newestOfPairs(db, filter, saying).as('newest'))
    .select((eb) => eb.fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow()
  const rows = await sightingRows(db, viewer)
    .where('sighting.id', 'in', (eb) =>
      eb
        .selectFrom(newestOfPairs(db, filter, saying).as('newest'))
        .select('newest.id')
        .orderBy('newest.seen_on', 'desc')
        .orderBy('newest.received_at', 'desc')
        .orderBy('newest.id')
        .limit(filter.limit)
        .offset(filter.offset),
    )
    .orderBy('sighting.seen_on', 'desc')
    .orderBy('sighting.received_at', 'desc')
    .orderBy('sighting.id')
    .execute()
  return { rows: rows.map((row) => ({ sighting: rowOf(row, viewer), kind: row.product_kind })), total }
}

type Newest = { id: string; seen_on: string; received_at: Date }

function newestOfPairs(
  db: Kysely<Database>,
  filter: BoardFilter,
  saying: Narrowed | undefined,
): SelectQueryBuilder<Database, 'sighting' | 'product' | 'store', Newest> {
  let query = db
    .selectFrom('sighting')
    .innerJoin('product', 'product.id', 'sighting.product_id')
    .innerJoin('store', 'store.id', 'sighting.store_id')
    .where('sighting.accepted', '=', true)
    .where('sighting.seen_on', '>=', filter.since)
    .where('product.archived', '=', false)
    .where('store.archived', '=', false)
  if (filter.kind !== undefined) query = query.where('product.kind', '=', filter.kind)
  if (filter.storeId !== undefined) query = query.where('sighting.store_id', '=', filter.storeId)
  if (filter.regionId !== undefined) {
    const { regionId } = filter
    query = query.where('sighting.store_id', 'in', (eb) =>
      eb.selectFrom('region_store').select('region_store.store_id').where('region_id', '=', regionId),
    )
  }
  if (saying !== undefined) query = query.where('sighting.product_id', 'in', saying.select('product.id'))
  return query
    .distinctOn(['sighting.product_id', 'sighting.store_id'])
    .select(['sighting.id', 'sighting.seen_on', 'sighting.received_at'])
    .orderBy('sighting.product_id')
    .orderBy('sighting.store_id')
    .orderBy('sighting.seen_on', 'desc')
    .orderBy('sighting.received_at', 'desc')
    .orderBy('sighting.id')
}

/** Everything not withdrawn of some pairs of product and store since a day, oldest first. */
export async function recordOfPairs(
  db: Kysely<Database>,
  pairs: Array<{ productId: string; storeId: string }>,
  since: CivilDate,
): Promise<Sighting[]> {
  const known = pairs.filter((pair) => isId(pair.productId) && isId(pair.storeId))
  if (known.length === 0) return []
  const list = sql.join(known.map((pair) => sql`(${pair.productId}::uuid, ${pair.storeId}::uuid)`))
  const rows = await db
    .selectFrom('sighting')
    .selectAll()
    .where(sql<boolean>`(product_id, store_id) in (${list})`)
    .where('withdrawn_at', 'is', null)
    .where('seen_on', '>=', since)
    .orderBy('seen_on')
    .orderBy('received_at')
    .orderBy('id')
    .execute()
  return rows.map(sightingOf)
}
