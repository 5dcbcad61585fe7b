import type { Kysely } from 'kysely'
import type { Kind } from '../../core/catalog/kinds.ts'
import type { CellValue, ExchangeColumn } from '../../core/exchange/column.ts'
import { columnsOf } from '../../core/exchange/columns-of.ts'
import { customerValues } from '../../core/exchange/customer-rows.ts'
import type { ExportSet } from '../../core/exchange/data-set.ts'
import { priceListValues } from '../../core/exchange/price-list-rows.ts'
import { productValues } from '../../core/exchange/product-values.ts'
import { sightingValues } from '../../core/exchange/sighting-rows.ts'
import { storeValues } from '../../core/exchange/store-values.ts'
import { writeCell, type TextForm } from '../../core/exchange/write-cell.ts'
import type { Database } from '../../db/database.ts'
import { customerPages, priceListPages, productPages, sightingPages } from '../../db/export-rows.ts'
import { listStores } from '../../db/stores.ts'
import type { Viewer } from '../../db/viewer.ts'
import { csvLines } from './csv-lines.ts'

export interface ExportOrder {
  set: ExportSet
  kind: Kind | null
  format: 'csv' | 'json'
  text: TextForm
}
type Values = Map<string, CellValue>

async function* valuePages(db: Kysely<Database>, viewer: Viewer, { set, kind }: ExportOrder, currency: string): AsyncGenerator<Values[]> {
  if (set === 'catalog') {
    for await (const { products, parts } of productPages(db, kind)) yield products.map((product) => productValues(product, parts))
  } else if (set === 'price_list') {
    for await (const page of priceListPages(db, currency)) yield page.map(priceListValues)
  } else if (set === 'sightings') {
    for await (const page of sightingPages(db, currency)) yield page.map(sightingValues)
  } else if (set === 'stores') {
    // A few hundred, which every screen with a price reads at once too.
    yield (await listStores(db, { archived: 'all' })).map((store) => storeValues(store, currency))
  } else for await (const page of customerPages(db, viewer)) yield page.map(customerValues)
}

/** Only what has a value: a field left out is an empty cell. */
function jsonRow(columns: readonly ExchangeColumn[], values: Values): string {
  const entries = columns.map(({ heading }) => [heading, values.get(heading)] as const)
  return JSON.stringify(Object.fromEntries(entries.filter(([, value]) => value !== null && value !== undefined)))
}

/** Spreadsheets take a file for UTF-8 only with a byte order mark. */
export const csvHead = (columns: readonly ExchangeColumn[], text: TextForm): string =>
  `${text === 'safe' ? '\uFEFF' : ''}${csvLines([columns.map(({ heading }) => heading)])}`

export const csvRows = (columns: readonly ExchangeColumn[], page: readonly Values[], text: TextForm): string =>
  csvLines(page.map((values) => columns.map((column) => writeCell(column, values.get(column.heading), text))))

/** The file in parts, a page of rows each, so that it is never in memory whole. */
export async function* exportParts(db: Kysely<Database>, viewer: Viewer, order: ExportOrder, currency: string): AsyncGenerator<string> {
  const columns = columnsOf(order.set, order.kind)
  const isCsv = order.format === 'csv'
  yield isCsv ? csvHead(columns, order.text) : '['
  let first = true
  for await (const page of valuePages(db, viewer, order, currency)) {
    if (isCsv) yield csvRows(columns, page, order.text)
    else yield (first ? '\n' : ',\n') + page.map((values) => jsonRow(columns, values)).join(',\n')
    first = false
  }
  if (!isCsv) yield '\n]\n'
}
