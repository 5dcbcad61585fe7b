import { sql, type Kysely, type SelectQueryBuilder } from 'kysely'
import type { Kind } from '../core/catalog/kinds.ts'
import type { CivilDate } from '../core/dates.ts'
import { BOARD_COUNTED } from '../core/pricing/board.ts'
import type { SightingRow } from '../core/pricing/record.ts'
import type { Doubt, Sighting } from '../core/pricing/sighting.ts'
import type { Database } from './database.ts'
import { productsSaying, type Narrowed } from './product-search.ts'
import { isId } from './refusal.ts'
import { rowOf, sightingRows } from './sighting-rows.ts'
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

/** Newest accepted sighting of each product at each store, newest first; `total` is told up to a thousand, and as one more beyond. How each stands against its record is for core/pricing to say. */
export async function board(
  db: Kysely<Database>,
  viewer: Viewer,
  filter: BoardFilter,
): Promise<{ rows: Array<{ sighting: SightingRow; kind: Kind }>; total: number }> {
  if ([filter.storeId, filter.regionId].some((id) => id !== undefined && !isId(id))) return { rows: [], total: 0 }
  const saying = filter.q === undefined ? undefined : await productsSaying(db, filter.q)
  const { total } = await db
    .selectFrom(
      newestOfPairs(db, filter, saying)
        .limit(BOARD_COUNTED + 1)
        .as('newest'),
    )
    .select((eb) => eb.fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow()
  const shown = await newestOfPairs(db, filter, saying)
    .orderBy('newest_on', 'desc')
    .orderBy('newest_at', 'desc')
    .orderBy('newest_id')
    .limit(filter.limit)
    .offset(filter.offset)
    .execute()
  if (shown.length === 0) return { rows: [], total }
  const rows = await sightingRows(db, viewer)
    .where(
      'sighting.id',
      'in',
      shown.map(({ id }) => id),
    )
    .orderBy('sighting.seen_on', 'desc')
    .orderBy('sighting.received_at', 'desc')
    .orderBy('sighting.id')
    .execute()
  return { rows: rows.map((row) => ({ sighting: rowOf(row, viewer), kind: row.product_kind })), total }
}

/** One row a product and store, out of their summaries. */
function newestOfPairs(
  db: Kysely<Database>,
  filter: BoardFilter,
  saying: Narrowed | undefined,
): SelectQueryBuilder<Database, 'price_summary' | 'product' | 'store', { id: string }> {
  let query = db
    .selectFrom('price_summary')
    .innerJoin('product', 'product.id', 'price_summary.product_id')
    .innerJoin('store', 'store.id', 'price_summary.store_id')
    .where('price_summary.newest_id', 'is not', null)
    .where('price_summary.newest_on', '>=', filter.since)
    .where('product.archived', '=', false)
    .where('store.archived', '=', false)
  if (filter.kind !== undefined) query = query.where('product.kind', '=', filter.kind)
  if (filter.storeId !== undefined) query = query.where('price_summary.store_id', '=', filter.storeId)
  if (filter.regionId !== undefined) {
    const { regionId } = filter
    query = query.where('price_summary.store_id', 'in', (eb) =>
      eb.selectFrom('region_store').select('region_store.store_id').where('region_id', '=', regionId),
    )
  }
  if (saying !== undefined) query = query.where('price_summary.product_id', 'in', saying.select('product.id'))
  return query.select('price_summary.newest_id as id').$narrowType<{ id: string }>()
}

/** An accepted sighting as a list: columns of their own take the driver ten times as long. */
type Packed = [
  id: string,
  productId: string,
  storeId: string,
  condition: Sighting['condition'],
  priceMinor: number,
  printedRegularMinor: number | null,
  seenOn: CivilDate,
  lastDay: CivilDate | null,
  evidence: Sighting['evidence'],
  note: string | null,
  reporterId: string,
  receivedAt: string,
  doubt: Doubt | null,
  confirmations: number,
  disputes: number,
  goneOn: CivilDate | null,
  imported: boolean,
]
const unpacked = ([
  id,
  productId,
  storeId,
  condition,
  priceMinor,
  printedRegularMinor,
  seenOn,
  lastDay,
  evidence,
  note,
  ...rest
]: Packed): Sighting => {
  const [reporterId, receivedAt, doubt, confirmations, disputes, goneOn, imported] = rest
  const known = { id, productId, storeId, condition, priceMinor, printedRegularMinor, seenOn, lastDay, evidence, note, reporterId }
  return { ...known, receivedAt: new Date(receivedAt).toISOString(), doubt, withdrawn: false, confirmations, disputes, goneOn, imported }
}

/** Everything accepted of some pairs of product and store since a day, oldest first. Nothing else is behind a price, and the index of pairs holds nothing else. */
export async function recordOfPairs(
  db: Kysely<Database>,
  pairs: Array<{ productId: string; storeId: string }>,
  since: CivilDate,
): Promise<Sighting[]> {
  const known = pairs.filter((pair) => isId(pair.productId) && isId(pair.storeId))
  if (known.length === 0) return []
  const list = sql.join(known.map((pair) => sql`(${pair.productId}::uuid, ${pair.storeId}::uuid)`))
  const { rows } = await sql<{ record: Packed[] | null }>`
    select json_agg(json_build_array(id, product_id, store_id, condition, price_minor, printed_regular_minor, seen_on, last_day, evidence, note, reporter_id, received_at,
      doubt, confirmations, disputes, gone_on, imported) order by seen_on, received_at, id) as record
    from sighting where (product_id, store_id) in (${list}) and accepted and seen_on >= ${since}`.execute(db)
  return (rows[0]?.record ?? []).map(unpacked)
}
