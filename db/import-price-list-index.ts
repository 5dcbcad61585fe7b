import { sql, type Kysely } from 'kysely'
import { KINDS } from '../core/catalog/kinds.ts'
import type { PriceListRow } from '../core/exchange/price-list-rows.ts'
import type { ListPrice } from '../core/pricing/price-list.ts'
import type { Database } from './database.ts'
import type { StagedRow } from './import-staging.ts'
import { stockOf } from './price-list.ts'

/** What some rows of a price list may be about, and what is said of it by the list and by the rows before them. */
export interface ListIndex {
  /** Products that a row names, by its line: one by id or GTIN, else up to two by name. */
  named: Map<number, NamedProduct[]>
  /** Who has a stock number, in small letters; rows of the file count as soon as they are passed. */
  holders: Map<string, ListedProduct>
  items: Map<string, { stockNumber: string | null; stockCount: number | null }>
  /** By product and first day. */
  prices: Map<string, ListPrice>
  /** Rows that were passed, by product. */
  passed: Map<string, Passed>
}
export interface ListedProduct {
  id: string
  name: string
  archived: boolean
}
interface NamedProduct extends ListedProduct {
  how: 'id' | 'gtin' | 'name'
}
interface Passed {
  /** Line of the first row with a price from a day. */
  days: Map<string, number>
  stockNumber: { value: string; line: number } | null
  stockCount: { value: number; line: number } | null
}
type Staged = Pick<StagedRow<PriceListRow>, 'line' | 'data'>

/** What is needed to decide the rows behind `after`: some statements, each by indexes, however many rows came before. */
export async function readListIndex(
  db: Kysely<Database>,
  jobId: string,
  rows: readonly Staged[],
  after: number,
  upTo: number,
): Promise<ListIndex> {
  const named = await namedProducts(db, jobId, after, upTo)
  const numbers = [...new Set(rows.flatMap(({ data }) => (data.stockNumber === null ? [] : [data.stockNumber.toLowerCase()])))]
  const holders = await holdersOf(db, jobId, numbers, after)
  const ids = [...new Set([...named.values(), [...holders.values()]].flatMap((products) => products.map(({ id }) => id)))]
  const stock = await stockOf(db, ids)
  const index: ListIndex = {
    named,
    holders,
    items: new Map(stock.map((item) => [item.productId, item])),
    prices: new Map(stock.flatMap(({ productId, prices }) => prices.map((price) => [`${productId} ${price.validFrom}`, price]))),
    passed: new Map(),
  }
  for (const { line, data } of await rowsBefore(db, jobId, ids, after)) pass(index, data.productId, { line, data })
  return index
}

async function namedProducts(db: Kysely<Database>, jobId: string, after: number, upTo: number): Promise<Map<number, NamedProduct[]>> {
  const { rows } = await sql<NamedProduct & { line: number }>`
    select s.line, m.* from import_row as s cross join lateral (
      (select 'id' as how, p.id, p.name, p.archived from product p where p.id = (s.data ->> 'productId')::uuid limit 1)
      union all (select 'gtin', p.id, p.name, p.archived from product p where not exists (select from product own where own.id = (s.data ->> 'productId')::uuid)
        and p.gtin is not null and lpad(p.gtin, 14, '0') = lpad(s.data ->> 'gtin', 14, '0') limit 1)
      union all (select 'name', p.id, p.name, p.archived from product p where not exists (select from product own where own.id = (s.data ->> 'productId')::uuid)
        and p.kind in (${sql.join([...KINDS])}) and lower(p.name) = lower(s.data ->> 'product')
        and (s.data ->> 'kind' is null or p.kind = s.data ->> 'kind') limit 2)
    ) as m where s.job_id = ${jobId} and s.line > ${after} and s.line <= ${upTo}`.execute(db)
  const named = new Map<number, NamedProduct[]>()
  for (const { line, ...product } of rows) named.set(line, [...(named.get(line) ?? []), product])
  return named
}

async function holdersOf(db: Kysely<Database>, jobId: string, numbers: string[], after: number): Promise<Map<string, ListedProduct>> {
  if (numbers.length === 0) return new Map()
  const { rows } = await sql<ListedProduct & { number: string }>`
    select lower(data ->> 'stockNumber') as number, p.id, p.name, p.archived from import_row join product p on p.id = target_id
      where job_id = ${jobId} and line <= ${after} and data ->> 'stockNumber' is not null and lower(data ->> 'stockNumber') in (${sql.join(numbers)})
    union all select lower(stock_number), p.id, p.name, p.archived from stock_item join product p on p.id = product_id
      where stock_number is not null and lower(stock_number) in (${sql.join(numbers)})`.execute(db)
  return new Map(rows.map(({ number, ...product }) => [number, product]))
}

async function rowsBefore(
  db: Kysely<Database>,
  jobId: string,
  productIds: string[],
  after: number,
): Promise<StagedRow<PriceListRow & { productId: string }>[]> {
  if (productIds.length === 0) return []
  const { rows } = await sql<StagedRow<PriceListRow & { productId: string }>>`select line, data from import_row
    where job_id = ${jobId} and line <= ${after} and data ->> 'productId' in (${sql.join(productIds)}) order by line`.execute(db)
  return rows
}

/** Notes a row; what it says otherwise than a row before it, if anything. */
export function rememberRow(index: ListIndex, product: ListedProduct, row: Staged): { column: string; words: string } | null {
  const { data } = row
  const passed = index.passed.get(product.id)
  const twin = data.validFrom === null ? undefined : passed?.days.get(data.validFrom)
  if (twin !== undefined)
    return { column: 'validFrom', words: `Row ${twin} has a price of this product from the same day. Keep one of the two rows.` }
  const [number, count] = [passed?.stockNumber, passed?.stockCount]
  if (number && data.stockNumber !== null && number.value !== data.stockNumber)
    return { column: 'stockNumber', words: `Row ${number.line} says ${number.value} of the same product. Keep one of the two numbers.` }
  if (count && data.stockCount !== null && count.value !== data.stockCount)
    return { column: 'stock', words: `Row ${count.line} says ${count.value} of the same product. Keep one of the two counts.` }
  pass(index, product.id, row)
  if (data.stockNumber !== null) index.holders.set(data.stockNumber.toLowerCase(), product)
  return null
}

function pass(index: ListIndex, productId: string, { line, data }: Staged): void {
  const passed = index.passed.get(productId) ?? { days: new Map<string, number>(), stockNumber: null, stockCount: null }
  index.passed.set(productId, passed)
  if (data.validFrom !== null && !passed.days.has(data.validFrom)) passed.days.set(data.validFrom, line)
  if (data.stockNumber !== null) passed.stockNumber ??= { value: data.stockNumber, line }
  if (data.stockCount !== null) passed.stockCount ??= { value: data.stockCount, line }
}
