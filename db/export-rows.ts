import { sql, type Kysely } from 'kysely'
import type { Kind } from '../core/catalog/kinds.ts'
import { KINDS } from '../core/catalog/kinds.ts'
import type { Product } from '../core/catalog/product.ts'
import type { CustomerRow } from '../core/exchange/customer-rows.ts'
import type { ExportedListRow } from '../core/exchange/price-list-rows.ts'
import type { PartName } from '../core/exchange/product-values.ts'
import type { ExportedSighting } from '../core/exchange/sighting-rows.ts'
import type { Database } from './database.ts'
import { withParts } from './products.ts'
import { ownStore } from './stores.ts'
import { manages, type Viewer } from './viewer.ts'

/** Rows read at once: a statement of some milliseconds, and a few hundred kilobytes of file. */
const PAGE_ROWS = 500

/** Every product, archived ones too, by kind and name, a page at a time; with the names of what kits contain. */
export async function* productPages(
  db: Kysely<Database>,
  kind: Kind | null,
): AsyncGenerator<{ products: Product[]; parts: Map<string, PartName> }> {
  let after = { kind: '', name: '' }
  for (;;) {
    let query = db
      .selectFrom('product')
      .selectAll()
      .select(sql<string>`lower(name)`.as('name_key'))
      .where(sql<boolean>`(kind, lower(name)) > (${after.kind}, ${after.name})`)
      .orderBy('kind')
      .orderBy(sql`lower(name)`)
      .limit(PAGE_ROWS)
    if (kind !== null) query = query.where('kind', '=', kind)
    const rows = await query.execute()
    const last = rows.at(-1)
    if (last === undefined) return
    after = { kind: last.kind, name: last.name_key }
    const products = await withParts(db, rows)
    yield { products, parts: await partNames(db, products) }
  }
}

async function partNames(db: Kysely<Database>, products: readonly Product[]): Promise<Map<string, PartName>> {
  const ids = [...new Set(products.flatMap(({ parts }) => parts.map(({ productId }) => productId)))]
  if (ids.length === 0) return new Map()
  const rows = await db
    .selectFrom('product as part')
    .select(['part.id', 'part.name'])
    .select((eb) =>
      eb
        .selectFrom('product as twin')
        .select((count) => count.fn.countAll<number>().as('twins'))
        .where('twin.kind', 'in', [...KINDS])
        .where(sql`lower(twin.name)`, '=', sql`lower(part.name)`)
        .as('twins'),
    )
    .where('part.id', 'in', ids)
    .execute()
  return new Map(rows.map(({ id, name, twins }) => [id, { id, name: Number(twins) > 1 ? null : name }]))
}

const PRICE_COLUMNS = ['price.valid_from as validFrom', 'price.price_minor as priceMinor'] as const
const SALE_COLUMNS = ['price.sale_minor as saleMinor', 'price.sale_until as saleUntil'] as const

/** The own price list, a row for each price and one for an entry without any, a page of products at a time; archived products are not in it. */
export async function* priceListPages(db: Kysely<Database>, home: string): AsyncGenerator<ExportedListRow[]> {
  const currency = (await ownStore(db))?.currency ?? home
  const listed = () =>
    db.selectFrom('stock_item').innerJoin('product', 'product.id', 'stock_item.product_id').where('product.archived', '=', false)
  for (let after = '00000000-0000-0000-0000-000000000000'; ;) {
    const page = await listed().select('product.id').where('product.id', '>', after).orderBy('product.id').limit(PAGE_ROWS).execute()
    const last = page.at(-1)
    if (last === undefined) return
    const rows = await listed()
      .leftJoin('list_price as price', 'price.product_id', 'product.id')
      .select(['product.id as productId', 'product.gtin', 'product.kind', 'product.name as product'])
      .select(['stock_item.stock_number as stockNumber', 'stock_item.stock_count as stockCount'])
      .select([...PRICE_COLUMNS, ...SALE_COLUMNS])
      .where('product.id', '>', after)
      .where('product.id', '<=', last.id)
      .orderBy('product.id')
      .orderBy('price.valid_from')
      .execute()
    after = last.id
    yield rows.map((row) => ({ ...row, currency }))
  }
}

/** Every sighting that was not withdrawn, without its reporter, a page at a time; its currency is its store's, else `home`. */
export async function* sightingPages(db: Kysely<Database>, home: string): AsyncGenerator<ExportedSighting[]> {
  let after = '00000000-0000-0000-0000-000000000000'
  for (;;) {
    const rows = await db
      .selectFrom('sighting')
      .innerJoin('product', 'product.id', 'sighting.product_id')
      .innerJoin('store', 'store.id', 'sighting.store_id')
      .select(['sighting.id', 'sighting.product_id as productId', 'product.gtin', 'product.kind', 'product.name as product'])
      .select(['sighting.store_id as storeId', 'store.name as store', 'sighting.condition', 'sighting.price_minor as priceMinor'])
      .select(['sighting.printed_regular_minor as printedRegularMinor', 'sighting.seen_on as seenOn', 'sighting.last_day as lastDay'])
      .select(['sighting.evidence', 'sighting.note', 'sighting.accepted as counts'])
      .select(sql<string>`coalesce(store.currency, ${home})`.as('currency'))
      .where('sighting.withdrawn_at', 'is', null)
      .where('sighting.id', '>', after)
      .orderBy('sighting.id')
      .limit(PAGE_ROWS)
      .execute()
    const last = rows.at(-1)
    if (last === undefined) return
    after = last.id
    yield rows
  }
}

/** Every customer who was not erased, a page at a time; none for anyone but a manager. */
export async function* customerPages(db: Kysely<Database>, viewer: Viewer): AsyncGenerator<CustomerRow[]> {
  let after = { name: '', id: '00000000-0000-0000-0000-000000000000' }
  for (;;) {
    const rows = await db
      .selectFrom('customer')
      .select(['id', 'name', 'reach', 'note'])
      .select(sql<string>`lower(name)`.as('name_key'))
      .where('erased_on', 'is', null)
      .where(manages(viewer))
      .where(sql<boolean>`(lower(name), id) > (${after.name}, ${after.id}::uuid)`)
      .orderBy(sql`lower(name)`)
      .orderBy('id')
      .limit(PAGE_ROWS)
      .execute()
    const last = rows.at(-1)
    if (last === undefined) return
    after = { name: last.name_key, id: last.id }
    yield rows.map(({ id, name, reach, note }) => ({ id, name, reach, note }))
  }
}
