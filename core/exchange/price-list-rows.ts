import { short } from '../catalog/csv-cell.ts'
import { bareGtin } from '../catalog/gtin.ts'
import { FIRST_DAY, LAST_DAY, type CivilDate } from '../dates.ts'
import { listSaleFault } from '../pricing/list-sale.ts'
import type { ListPrice } from '../pricing/price-list.ts'
import { cellReader, plainAmount, type CellReader } from './cell-reader.ts'
import type { Cells, CellValue, ExchangeColumn, ReportCell } from './column.ts'

const LONGEST_NUMBER = 40
/** As the form of an entry takes it (core/pricing/schema.ts). */
const MOST_STOCK = 1_000_000

const text = (heading: string, help: string): ExchangeColumn => ({ heading, type: 'text', required: false, help })
const amount = (heading: string, help: string): ExchangeColumn => ({ heading, type: 'amount', required: false, help })

export const PRICE_LIST_COLUMNS: readonly ExchangeColumn[] = [
  text('productId', 'Id of the product. Empty, or of another install: it is found by one of its numbers, else by its name.'),
  text('gtin', 'Number under the barcode: it finds the product.'),
  text(
    'stockNumber',
    `The store’s own number, at most ${LONGEST_NUMBER} characters. It finds the product where it is known, else it is noted. Empty: as it was.`,
  ),
  text('kind', 'Kind of the product, where products of two kinds have one name.'),
  text('product', 'Name as in the catalog. Needed where nothing else finds the product.'),
  { heading: 'stock', type: 'number', required: false, help: `How many there are, at most ${MOST_STOCK}. Empty: as it was.` },
  text(
    'validFrom',
    'First day of the price, like 2026-10-20. It holds until the next price of the product begins. Empty: the day the file is tried.',
  ),
  amount('price', 'As the store prints it, like 159.00. Empty in a row that only says a number or how many there are.'),
  amount('salePrice', 'What is asked instead while a sale lasts that begins on the same day; below the price. Empty: no sale.'),
  text('saleUntil', 'Last day of the sale. Empty: it lasts until the next price of the product begins.'),
  text('currency', 'The currency of the own store’s prices, like USD. Another one is refused. Empty is the store’s.'),
]

/** A row of a price list; its product is still what the file calls it, and a price without a day is one of the day it is checked. */
export interface PriceListRow {
  productId: string | null
  gtin: string | null
  stockNumber: string | null
  kind: string | null
  product: string | null
  stockCount: number | null
  /** ISO 4217: what the amounts are in. */
  currency: string
  validFrom: CivilDate | null
  /** Null: the row says a number or a count alone. */
  priceMinor: number | null
  saleMinor: number | null
  saleUntil: CivilDate | null
}

/**
 * A row of a price list from its cells, its amounts in minor units of `currency`; null where something in them is wrong, which `report` is told.
 *
 * @example readPriceListRow(new Map([['product', 'Torvane 150 W'], ['price', '39.90']]), 'USD', report)?.priceMinor // 3990
 */
export function readPriceListRow(cells: Cells, currency: string, report: ReportCell): PriceListRow | null {
  const read = cellReader(cells, report)
  const row: PriceListRow = {
    productId: read.id('productId'),
    gtin: nullable(read.text('gtin'), bareGtin),
    stockNumber: read.text('stockNumber', LONGEST_NUMBER),
    kind: read.text('kind')?.toLowerCase() ?? null,
    product: read.text('product'),
    stockCount: stockOf(read),
    currency,
    validFrom: dayOf(read),
    priceMinor: read.amount('price', currency),
    saleMinor: read.amount('salePrice', currency),
    saleUntil: read.day('saleUntil'),
  }
  const said = read.text('currency')?.toUpperCase() ?? currency
  if (said !== currency) read.fault('currency', `"${short(said)}" is not the currency of our own prices, which are in ${currency}.`)
  if ([row.productId, row.gtin, row.stockNumber, row.product].every((each) => each === null) && read.isSound())
    read.fault('product', 'Nothing says which product this is. Fill in its stock number, its number under the barcode or its name.')
  if (read.isSound()) checkPrice(read, row)
  return read.isSound() ? row : null
}

const nullable = (value: string | null, change: (value: string) => string): string | null => (value === null ? null : change(value))

function stockOf(read: CellReader): number | null {
  const cell = read.text('stock')
  if (cell === null) return null
  if (/^\d{1,7}$/.test(cell) && Number(cell) <= MOST_STOCK) return Number(cell)
  read.fault('stock', `Stock is "${short(cell)}". Write a whole number up to ${MOST_STOCK}, or leave it empty.`)
  return null
}

function dayOf(read: CellReader): CivilDate | null {
  const day = read.day('validFrom')
  return day === null || (day >= FIRST_DAY && day <= LAST_DAY)
    ? day
    : read.fault('validFrom', `${day} is not between ${FIRST_DAY} and ${LAST_DAY}. Check the year.`)
}

function checkPrice(read: CellReader, row: PriceListRow): void {
  const { priceMinor, saleMinor, saleUntil, validFrom } = row
  if (priceMinor === null) {
    const isPriced = validFrom !== null || saleMinor !== null || saleUntil !== null
    const saysNothing = row.stockCount === null && row.stockNumber === null
    if (isPriced || saysNothing) read.fault('price', 'The price is empty. Write it, or leave the row out.')
    return
  }
  saleFault(read, { priceMinor, saleMinor, saleUntil, validFrom: validFrom ?? saleUntil ?? FIRST_DAY })
}

function saleFault(read: CellReader, price: ListPrice): void {
  const fault = listSaleFault(price)
  if (fault !== null) read.fault(fault.field === 'saleMinor' ? 'salePrice' : 'saleUntil', fault.words)
}

/** An entry of the list with one of its prices, as an export tells it. */
export interface ExportedListRow extends PriceListRow {
  productId: string
}

export const priceListValues = ({ stockCount, priceMinor, saleMinor, ...row }: ExportedListRow): Map<string, CellValue> =>
  new Map<string, CellValue>([
    ...Object.entries(row),
    ['stock', stockCount],
    ['price', priceMinor === null ? null : plainAmount(priceMinor, row.currency)],
    ['salePrice', saleMinor === null ? null : plainAmount(saleMinor, row.currency)],
  ])
