import { headingKey } from '../catalog/csv-columns.ts'
import { short } from '../catalog/csv-cell.ts'
import { bareGtin } from '../catalog/gtin.ts'
import type { ImportFault } from '../catalog/import-report.ts'
import { isCivilDate, type CivilDate } from '../dates.ts'
import { parseMoney } from '../money.ts'

/** Columns of a price list, in the order of its template. */
export const PRICE_LIST_COLUMNS = [
  { heading: 'stock number', required: false, help: 'The store’s own number. It finds the product where it is known, else it is noted.' },
  { heading: 'gtin', required: false, help: 'Number under the barcode: it finds the product.' },
  { heading: 'product', required: false, help: 'Name as in the catalog. Needed where neither number finds the product.' },
  { heading: 'price', required: true, help: 'As the store prints it, like 159.00.' },
  { heading: 'stock', required: false, help: 'How many there are. Empty: as it was.' },
  { heading: 'valid from', required: false, help: 'First day of the price, like 2026-10-20. Empty: today.' },
] as const

/** A row of a price list, read but not yet matched with the catalog. */
export interface PriceListRow {
  /** Line of the file, the heading being 1. */
  row: number
  stockNumber: string | null
  gtin: string | null
  product: string | null
  priceMinor: number
  stockCount: number | null
  validFrom: CivilDate
}

/** More faults than these are not listed: whoever has so many has another file in hand. */
export const MOST_LIST_FAULTS = 100
const MOST_STOCK = 1_000_000
const LONGEST_NUMBER = 40

type Cells = Record<string, string>

/**
 * Rows of a price list from the records of a CSV file, the heading first. Columns may stand in any order; one that is not known is a fault.
 *
 * Units: minor units of `currency`. Errors: a fault a cell, with its row and column; rows without fault are given even so.
 */
export function priceListRows(
  records: readonly string[][],
  { currency, today }: { currency: string; today: CivilDate },
): { rows: PriceListRow[]; faults: ImportFault[]; records: number } {
  const [heading = [], ...lines] = records
  const columns = heading.map(
    (cell) => PRICE_LIST_COLUMNS.find((column) => headingKey(column.heading) === headingKey(cell.trim()))?.heading,
  )
  const faults = headingFaults(heading, columns)
  if (faults.length > 0) return { rows: [], faults, records: 0 }
  const rows: PriceListRow[] = []
  let count = 0
  for (const [index, line] of lines.entries()) {
    if (line.every((cell) => cell.trim() === '')) continue
    count += 1
    const cells: Cells = Object.fromEntries(columns.map((column, at) => [column ?? '', (line[at] ?? '').trim()]))
    const read = readRow(cells, index + 2, currency, today)
    if ('faults' in read) faults.push(...read.faults)
    else rows.push(read)
  }
  return { rows, faults, records: count }
}

function headingFaults(heading: readonly string[], columns: ReadonlyArray<string | undefined>): ImportFault[] {
  const known = PRICE_LIST_COLUMNS.map((column) => column.heading).join(', ')
  const strange = heading.flatMap((cell, at): ImportFault[] =>
    columns[at] === undefined
      ? [{ row: 1, column: short(cell), message: `There is no column "${short(cell)}". The columns are: ${known}.` }]
      : [],
  )
  const twice = columns.flatMap((column, at): ImportFault[] =>
    column !== undefined && columns.indexOf(column) !== at ? [{ row: 1, column, message: `The column "${column}" stands twice.` }] : [],
  )
  const missing = columns.includes('price') ? [] : [{ row: 1, column: 'price', message: 'The column "price" is missing.' }]
  return [...strange, ...twice, ...missing]
}

function readRow(cells: Cells, row: number, currency: string, today: CivilDate): PriceListRow | { faults: ImportFault[] } {
  const faults: ImportFault[] = []
  const fault = (column: string, message: string): null => {
    faults.push({ row, column, message })
    return null
  }
  const of = (column: string): string | null => cells[column] || null
  const price = parseMoney(of('price') ?? '', currency)
  const priceMinor = !of('price') ? fault('price', 'The price is empty.') : price.ok ? price.value : fault('price', price.refusal.words)
  if (priceMinor === 0) fault('price', 'The price is 0. A price is above 0.')
  const stock = of('stock')
  const stockCount =
    stock === null || (/^\d{1,7}$/.test(stock) && Number(stock) <= MOST_STOCK)
      ? stock
      : fault('stock', `Stock is "${short(stock)}". Write a whole number up to ${MOST_STOCK}, or leave it empty.`)
  const day = of('valid from')
  const validFrom =
    day === null || (isCivilDate(day) && day >= '1990-01-01' && day <= '2200-12-31')
      ? (day ?? today)
      : fault('valid from', `"${short(day)}" is not a day between 1990 and 2200. Write it like 2026-10-20.`)
  const [stockNumber, gtin, product] = [of('stock number'), of('gtin'), of('product')]
  if (stockNumber !== null && stockNumber.length > LONGEST_NUMBER) fault('stock number', `At most ${LONGEST_NUMBER} characters.`)
  if (stockNumber === null && gtin === null && product === null)
    fault('product', 'Nothing says which product this is. Fill in its stock number, its GTIN or its name.')
  if (faults.length > 0 || priceMinor === null || validFrom === null) return { faults }
  return {
    row,
    stockNumber,
    gtin: gtin === null ? null : bareGtin(gtin),
    product,
    priceMinor,
    stockCount: stockCount === null ? null : Number(stockCount),
    validFrom,
  }
}
