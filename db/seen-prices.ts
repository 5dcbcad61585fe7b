import { sql, type Kysely } from 'kysely'
import { addDays, type CivilDate } from '../core/dates.ts'
import { decodeSummary, factsOfSummary, SUMMARY_DAYS, tellsOf, viewOfSummary } from '../core/pricing/pair-summary.ts'
import type { PriceView } from '../core/pricing/price-view.ts'
import { priceViews } from '../core/pricing/price-views.ts'
import type { StoreFacts } from '../core/pricing/roll-up.ts'
import { recordOfPairs } from './board.ts'
import type { Database } from './database.ts'
import type { Pair } from './price-summaries.ts'
import { isId } from './refusal.ts'

type Summarised = Pair & { facts: string }

/** What the record says of some products on a day, store by store, by product and store: out of the summaries, however many sightings there are. */
export async function seenPricesOfProducts(db: Kysely<Database>, productIds: readonly string[], asOf: CivilDate): Promise<PriceView[]> {
  const wanted = productIds.filter(isId)
  if (wanted.length === 0) return []
  const rows = await db
    .selectFrom('price_summary')
    .select(['product_id as productId', 'store_id as storeId', 'facts'])
    .where('product_id', 'in', wanted)
    .orderBy('product_id')
    .orderBy('store_id')
    .execute()
  return viewsOf(db, rows, asOf)
}

/** The same of some pairs of product and store. */
export async function seenPricesOfPairs(db: Kysely<Database>, pairs: readonly Pair[], asOf: CivilDate): Promise<PriceView[]> {
  const known = pairs.filter(({ productId, storeId }) => isId(productId) && isId(storeId))
  if (known.length === 0) return []
  const list = sql.join(known.map(({ productId, storeId }) => sql`(${productId}::uuid, ${storeId}::uuid)`))
  const rows = await db
    .selectFrom('price_summary')
    .select(['product_id as productId', 'store_id as storeId', 'facts'])
    .where(sql<boolean>`(product_id, store_id) in (${list})`)
    .execute()
  return viewsOf(db, rows, asOf)
}

async function viewsOf(db: Kysely<Database>, rows: readonly Summarised[], asOf: CivilDate): Promise<PriceView[]> {
  const told: PriceView[] = []
  // A clock that is days behind the newest sighting: what it would not have known yet is told from the sightings themselves.
  const ahead: Pair[] = []
  for (const { facts, ...pair } of rows) {
    const summary = decodeSummary(facts, asOf)
    if (!tellsOf(summary, asOf)) ahead.push(pair)
    const view = viewOfSummary(summary, pair, asOf)
    if (view) told.push(view)
  }
  if (ahead.length === 0) return told
  const others = priceViews(await recordOfPairs(db, ahead, addDays(asOf, -SUMMARY_DAYS)), asOf)
  return [...told, ...others].sort((a, b) => (`${a.productId} ${a.storeId}` < `${b.productId} ${b.storeId}` ? -1 : 1))
}

/** The same of one product with what rolls up over its stores, and how many sightings it has, withdrawn ones too. */
export async function seenRecordOfProduct(
  db: Kysely<Database>,
  productId: string,
  asOf: CivilDate,
): Promise<{ views: PriceView[]; facts: StoreFacts[]; sightings: number }> {
  if (!isId(productId)) return { views: [], facts: [], sightings: 0 }
  const rows = await db
    .selectFrom('price_summary')
    .select(['product_id as productId', 'store_id as storeId', 'facts', 'sightings'])
    .where('product_id', '=', productId)
    .orderBy('store_id')
    .execute()
  const pairs = rows.map(({ productId: product, storeId, facts }) => ({ productId: product, storeId, facts }))
  const views = await viewsOf(db, pairs, asOf)
  return { views, facts: factsOf(pairs, views, asOf), sightings: rows.reduce((sum, row) => sum + row.sightings, 0) }
}

/** A store that is told of from its sightings has its view and nothing beside it. */
function factsOf(pairs: readonly Summarised[], views: readonly PriceView[], asOf: CivilDate): StoreFacts[] {
  const viewAt = new Map(views.map((view) => [view.storeId, view]))
  return pairs.flatMap(({ facts, ...pair }) => {
    const told = factsOfSummary(decodeSummary(facts, asOf), pair, asOf)
    const view = viewAt.get(pair.storeId)
    return told ?? (view ? { storeId: pair.storeId, view } : [])
  })
}
