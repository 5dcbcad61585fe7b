import { sql, type Kysely, type Selectable, type Transaction } from 'kysely'
import type { Kind } from '../core/catalog/kinds.ts'
import type { CivilDate } from '../core/dates.ts'
import type { ListPrice, StockItem } from '../core/pricing/price-list.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, ListPriceTable } from './database.ts'
import { containing, isId, type Refusal } from './refusal.ts'

/** A product with what the own list says of it; version 0 where it says nothing yet. */
export interface StockRow extends StockItem {
  name: string
  kind: Kind
  gtin: string | null
  version: number
}
export interface StockFilter {
  /** Found anywhere in the product's name, its GTIN or stock number. */
  q?: string | undefined
  /** Only products that have a price, or only those that have none. */
  listed?: boolean | undefined
  kind?: Kind | undefined
  /** Only products of which a price is in force on this day. */
  pricedOn?: CivilDate | undefined
  limit: number
  offset: number
}

/** Products that are not archived, by name, with what the own list says of them. */
export async function listStock(db: Kysely<Database>, filter: StockFilter): Promise<{ items: StockRow[]; total: number }> {
  const matching = () => {
    let query = db.selectFrom('product').leftJoin('stock_item', 'stock_item.product_id', 'product.id').where('product.archived', '=', false)
    const priced = sql<boolean>`exists (select from list_price where list_price.product_id = product.id)`
    if (filter.listed !== undefined) query = query.where(filter.listed ? priced : sql<boolean>`not ${priced}`)
    const { kind, pricedOn } = filter
    if (kind !== undefined) query = query.where('product.kind', '=', kind)
    if (pricedOn !== undefined)
      query = query.where((eb) =>
        eb.exists(eb.selectFrom('list_price').whereRef('list_price.product_id', '=', 'product.id').where('valid_from', '<=', pricedOn)),
      )
    const q = filter.q?.trim()
    if (q)
      query = query.where((eb) =>
        eb.or((['product.name', 'product.gtin', 'stock_item.stock_number'] as const).map((column) => eb(column, 'ilike', containing(q)))),
      )
    return query
  }
  const { total } = await matching()
    .select((eb) => eb.fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow()
  const rows = await matching()
    .select(['product.id', 'product.name', 'product.kind', 'product.gtin'])
    .orderBy(sql`lower(product.name)`)
    .orderBy('product.id')
    .limit(filter.limit)
    .offset(filter.offset)
    .execute()
  const stock = new Map((await stockOf(db, rows.map(({ id }) => id))).map((item) => [item.productId, item])) // prettier-ignore
  const none = { stockNumber: null, stockCount: null, prices: [], version: 0 }
  return { items: rows.map(({ id, name, kind, gtin }) => ({ productId: id, name, kind, gtin, ...(stock.get(id) ?? none) })), total }
}

const listPriceOf = (row: Selectable<ListPriceTable>): ListPrice => ({
  validFrom: row.valid_from,
  priceMinor: row.price_minor,
  saleMinor: row.sale_minor,
  saleUntil: row.sale_until,
})

/** What the own list says of some products; those it does not name are left out. */
export async function stockOf(db: Kysely<Database>, productIds: string[]): Promise<Array<StockItem & { version: number }>> {
  const wanted = productIds.filter(isId)
  if (wanted.length === 0) return []
  const items = await db.selectFrom('stock_item').selectAll().where('product_id', 'in', wanted).orderBy('product_id').execute()
  const prices = await db.selectFrom('list_price').selectAll().where('product_id', 'in', wanted).orderBy('valid_from').execute()
  const byProduct = Map.groupBy(prices, (row) => row.product_id)
  return items.map((row) => ({
    productId: row.product_id,
    stockNumber: row.stock_number,
    stockCount: row.stock_count,
    prices: (byProduct.get(row.product_id) ?? []).map(listPriceOf),
    version: row.version,
  }))
}

/** One product of the list; undefined where there is no such product. */
export async function findStock(db: Kysely<Database>, productId: string): Promise<StockRow | undefined> {
  if (!isId(productId)) return undefined
  const product = await db.selectFrom('product').select(['id', 'name', 'kind', 'gtin']).where('id', '=', productId).executeTakeFirst()
  if (!product) return undefined
  const [item] = await stockOf(db, [productId])
  const { id, name, kind, gtin } = product
  return { productId: id, name, kind, gtin, ...(item ?? { stockNumber: null, stockCount: null, prices: [], version: 0 }) }
}

/** Writes what the list says of a product over the version it was based on, 0 where it said nothing. Must run in a transaction: it locks the product. */
export async function saveStock(
  trx: Transaction<Database>,
  expectedVersion: number,
  { productId, stockNumber, stockCount, prices }: StockItem,
): Promise<Result<StockRow, Refusal<'not_found' | 'stale' | 'number_taken'>>> {
  const none = { code: 'not_found' as const, message: 'There is no such product.' }
  if (!isId(productId)) return refuse(none)
  const product = await trx.selectFrom('product').select('id').where('id', '=', productId).forUpdate().executeTakeFirst()
  if (!product) return refuse(none)
  const before = await trx.selectFrom('stock_item').select('version').where('product_id', '=', productId).executeTakeFirst()
  if ((before?.version ?? 0) !== expectedVersion)
    return refuse({ code: 'stale', message: 'Someone else changed this entry of the price list meanwhile.' })
  const taken = stockNumber === null ? undefined : await holderOf(trx, stockNumber)
  if (taken && taken.id !== productId)
    return refuse({ code: 'number_taken', field: 'stockNumber', message: `The stock number ${stockNumber} belongs to "${taken.name}".` })
  const values = { stock_number: stockNumber, stock_count: stockCount, version: expectedVersion + 1 }
  await trx
    .insertInto('stock_item')
    .values({ product_id: productId, ...values })
    .onConflict((clash) => clash.column('product_id').doUpdateSet(values))
    .execute()
  await trx.deleteFrom('list_price').where('product_id', '=', productId).execute()
  if (prices.length > 0)
    await trx
      .insertInto('list_price')
      .values(
        prices.map(({ validFrom, priceMinor, saleMinor, saleUntil }) => ({
          product_id: productId,
          valid_from: validFrom,
          price_minor: priceMinor,
          sale_minor: saleMinor,
          sale_until: saleUntil,
        })),
      )
      .execute()
  const written = await findStock(trx, productId)
  return written ? ok(written) : refuse(none)
}

const holderOf = (db: Kysely<Database>, stockNumber: string) =>
  db
    .selectFrom('stock_item')
    .innerJoin('product', 'product.id', 'stock_item.product_id')
    .select(['product.id', 'product.name'])
    .where(sql`lower(stock_number)`, '=', stockNumber.toLowerCase())
    .executeTakeFirst()
