import { sql, type Kysely, type Transaction } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { ImportFault } from '../core/exchange/data-set.ts'
import type { PriceListRow } from '../core/exchange/price-list-rows.ts'
import { listSaleFault } from '../core/pricing/list-sale.ts'
import type { Database } from './database.ts'
import { readListIndex, rememberRow, type ListedProduct, type ListIndex } from './import-price-list-index.ts'
import { stagedRows, type StagedDecision, type StagedRow } from './import-staging.ts'
import { StaleImport, type CheckedRows, type ImportContext, type ImportTarget } from './import-target.ts'

/**
 * The own price list from a file. A row finds its product by id, else by the number under its barcode, else by its name, else by its stock number, and
 * sets one price from a day on; what a row leaves empty of number and stock stays. No price that the file does not name goes away.
 */
export const priceListTarget: ImportTarget = { check, write: writeRows }

type Staged = StagedRow<PriceListRow>

async function check(db: Kysely<Database>, context: ImportContext, after: number, upTo: number): Promise<CheckedRows> {
  const rows = await stagedRows<PriceListRow>(db, context.jobId, after, upTo)
  const index = await readListIndex(db, context.jobId, rows, after, upTo)
  const currency = await listCurrency(db, context.currency)
  const faults: ImportFault[] = []
  const decisions: StagedDecision[] = []
  for (const row of rows) {
    const decided = decide(row, index, { currency, today: context.today })
    if ('message' in decided) faults.push(decided)
    else decisions.push(decided)
  }
  return { rows: rows.length, faults, decisions }
}

async function listCurrency(db: Kysely<Database>, home: string): Promise<string> {
  const own = await db.selectFrom('store').select('currency').where('own', '=', true).executeTakeFirst()
  return own?.currency ?? home
}

function decide({ line, data }: Staged, index: ListIndex, at: { currency: string; today: CivilDate }): StagedDecision | ImportFault {
  const fault = (column: string, message: string): ImportFault => ({ row: line, column, message })
  if (data.currency !== at.currency)
    return fault('currency', `The amounts were read in ${data.currency}, and our own prices are in ${at.currency}. Send the file again.`)
  const holder = data.stockNumber === null ? undefined : index.holders.get(data.stockNumber.toLowerCase())
  const named = index.named.get(line) ?? []
  const isSure = named[0]?.how === 'id' || named[0]?.how === 'gtin' || named.length === 1
  const found = isSure ? named[0] : holder
  if (found === undefined) return notFound(line, data, named)
  if (found.archived) return fault('product', `"${found.name}" is archived. Take the row out, or bring the product back first.`)
  if (holder !== undefined && holder.id !== found.id)
    return fault('stockNumber', `The stock number ${data.stockNumber} belongs to "${holder.name}".`)
  const priced: PriceListRow = { ...data, validFrom: data.validFrom ?? (data.priceMinor === null ? null : at.today) }
  const wrong = saleFault(priced)
  if (wrong !== null) return fault(wrong.field === 'saleMinor' ? 'salePrice' : 'saleUntil', wrong.words)
  const clash = rememberRow(index, found, { line, data: priced })
  if (clash !== null) return fault(clash.column, clash.words)
  const { validFrom } = priced
  return {
    line,
    action: actionOf(found.id, priced, index),
    targetId: found.id,
    targetVersion: null,
    found: { productId: found.id },
    settled: { validFrom },
  }
}

function notFound(line: number, data: PriceListRow, named: readonly ListedProduct[]): ImportFault {
  if (named.length > 1)
    return {
      row: line,
      column: 'product',
      message: `"${data.product}" names products of different kinds. Write the kind or the id of the product.`,
    }
  const column = data.product !== null ? 'product' : data.gtin !== null ? 'gtin' : data.productId !== null ? 'productId' : 'stockNumber'
  const said = data.product ?? data.gtin ?? data.productId ?? data.stockNumber
  return { row: line, column, message: `"${said}" is not in the catalog. Check it, or add the product first.` }
}

const saleFault = ({ validFrom, priceMinor, saleMinor, saleUntil }: PriceListRow) =>
  priceMinor === null || validFrom === null ? null : listSaleFault({ validFrom, priceMinor, saleMinor, saleUntil })

function actionOf(productId: string, row: PriceListRow, { items, prices }: ListIndex): StagedDecision['action'] {
  const item = items.get(productId)
  const price = row.validFrom === null ? undefined : prices.get(`${productId} ${row.validFrom}`)
  const isNew = row.priceMinor === null ? item === undefined : price === undefined
  if (isNew) return 'create'
  const isSamePrice =
    row.priceMinor === null ||
    (price?.priceMinor === row.priceMinor && price.saleMinor === row.saleMinor && price.saleUntil === row.saleUntil)
  const isSameItem =
    (row.stockNumber === null || row.stockNumber === item?.stockNumber) && (row.stockCount === null || row.stockCount === item?.stockCount)
  return isSamePrice && isSameItem ? 'same' : 'update'
}

async function writeRows(trx: Transaction<Database>, { jobId, currency }: ImportContext, after: number, upTo: number): Promise<void> {
  const between = sql`s.job_id = ${jobId} and s.line > ${after} and s.line <= ${upTo} and s.action <> 'same'`
  const rows = sql`import_row as s, jsonb_to_record(s.data) as f ("stockNumber" text, "stockCount" integer, currency text, "validFrom" date,
    "priceMinor" bigint, "saleMinor" bigint, "saleUntil" date)`
  const { rows: gone } = await sql`select from ${rows} where ${between} and (f.currency <> ${await listCurrency(trx, currency)}
    or not exists (select from product where product.id = s.target_id and not product.archived)) limit 1`.execute(trx)
  if (gone.length > 0) throw new StaleImport('a product was archived meanwhile, or the currency of the list changed')
  // A product with several rows is one item; they agree, or the check refused them.
  await sql`insert into stock_item (product_id, stock_number, stock_count)
    select s.target_id, max(f."stockNumber"), max(f."stockCount") from ${rows} where ${between} group by s.target_id
    on conflict (product_id) do update set stock_number = coalesce(excluded.stock_number, stock_item.stock_number),
      stock_count = coalesce(excluded.stock_count, stock_item.stock_count), version = stock_item.version + 1`.execute(trx)
  await sql`insert into list_price (product_id, valid_from, price_minor, sale_minor, sale_until)
    select s.target_id, f."validFrom", f."priceMinor", f."saleMinor", f."saleUntil" from ${rows} where ${between} and f."priceMinor" is not null
    on conflict (product_id, valid_from) do update set price_minor = excluded.price_minor, sale_minor = excluded.sale_minor, sale_until = excluded.sale_until`.execute(
    trx,
  )
}
