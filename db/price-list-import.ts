import { setImmediate as breathe } from 'node:timers/promises'
import { sql, type Kysely, type Transaction } from 'kysely'
import type { Database } from './database.ts'

/** What a row of a price list may be matched by. */
export interface Listable {
  id: string
  name: string
  gtin: string | null
  stockNumber: string | null
  stockCount: number | null
}

/** Every product that is not archived with its numbers. */
export async function listables(db: Kysely<Database>): Promise<Listable[]> {
  const rows = await db
    .selectFrom('product')
    .leftJoin('stock_item', 'stock_item.product_id', 'product.id')
    .select(['product.id', 'product.name', 'product.gtin', 'stock_item.stock_number', 'stock_item.stock_count'])
    .where('product.archived', '=', false)
    .execute()
  return rows.map((row) => ({ id: row.id, name: row.name, gtin: row.gtin, stockNumber: row.stock_number, stockCount: row.stock_count }))
}

/** A price to write, of one product and day. */
export interface Listing {
  productId: string
  stockNumber: string | null
  stockCount: number | null
  validFrom: string
  priceMinor: number
}

/** Rows a statement: the embedded engine is busy for some milliseconds with each. */
const BATCH = 500

/**
 * Writes prices over those of the same product and day, and numbers and counts where a row has one. Must run in a transaction, which the caller
 * rolls back for a dry run. Returns how many were new, changed, and as they were.
 */
export async function writeListings(
  trx: Transaction<Database>,
  listings: readonly Listing[],
): Promise<{ creates: number; updates: number; unchanged: number }> {
  const counts = { creates: 0, updates: 0, unchanged: 0 }
  for (let start = 0; start < listings.length; start += BATCH) {
    await breathe()
    const batch = listings.slice(start, start + BATCH)
    const ids = [...new Set(batch.map(({ productId }) => productId))]
    const before = await trx.selectFrom('list_price').selectAll().where('product_id', 'in', ids).execute()
    const known = new Map(before.map((row) => [`${row.product_id} ${row.valid_from}`, row.price_minor]))
    const items = new Map((await trx.selectFrom('stock_item').selectAll().where('product_id', 'in', ids).execute()).map((row) => [row.product_id, row])) // prettier-ignore
    const changed = batch.filter((each) => {
      const [price, item] = [known.get(`${each.productId} ${each.validFrom}`), items.get(each.productId)]
      const same =
        price === each.priceMinor &&
        (each.stockNumber === null || each.stockNumber === item?.stock_number) &&
        (each.stockCount === null || each.stockCount === item?.stock_count)
      counts[price === undefined ? 'creates' : same ? 'unchanged' : 'updates'] += 1
      return !same
    })
    if (changed.length > 0) await writeBatch(trx, changed)
  }
  return counts
}

async function writeBatch(trx: Transaction<Database>, listings: readonly Listing[]): Promise<void> {
  // A product that stands in the file with several days is one item: what stands last counts.
  const items = [...Map.groupBy(listings, ({ productId }) => productId)].map(([productId, of]) => ({
    product_id: productId,
    stock_number: of.findLast(({ stockNumber }) => stockNumber !== null)?.stockNumber ?? null,
    stock_count: of.findLast(({ stockCount }) => stockCount !== null)?.stockCount ?? null,
  }))
  await trx
    .insertInto('stock_item')
    .values(items)
    .onConflict((clash) =>
      clash.column('product_id').doUpdateSet({
        stock_number: sql`coalesce(excluded.stock_number, stock_item.stock_number)`,
        stock_count: sql`coalesce(excluded.stock_count, stock_item.stock_count)`,
        version: sql`stock_item.version + 1`,
      }),
    )
    .execute()
  await trx
    .insertInto('list_price')
    .values(listings.map((each) => ({ product_id: each.productId, valid_from: each.validFrom, price_minor: each.priceMinor })))
    .onConflict((clash) => clash.columns(['product_id', 'valid_from']).doUpdateSet({ price_minor: sql`excluded.price_minor` }))
    .execute()
}
