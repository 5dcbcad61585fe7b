import type { Transaction } from 'kysely'
import { columnsOf, rowWords } from '../../core/exchange/columns-of.ts'
import type { Cells, ReportCell } from '../../core/exchange/column.ts'
import { readCustomerRow } from '../../core/exchange/customer-rows.ts'
import { MOST_FAULTS, MOST_ROWS, type ImportFault } from '../../core/exchange/data-set.ts'
import type { ImportOrder } from '../../core/exchange/import-outcome.ts'
import { readPriceListRow } from '../../core/exchange/price-list-rows.ts'
import { productKeys, readProductRow, type ProductRow } from '../../core/exchange/product-rows.ts'
import { readSightingRow, type FindStoreCurrency } from '../../core/exchange/sighting-rows.ts'
import type { Database } from '../../db/database.ts'
import { addFaults, stageRows, type StagedRow } from '../../db/import-staging.ts'
import { csvRows, jsonRows, UnreadableFile, type FileRow } from './file-rows.ts'

/** Rows read between two looks at the clock: some ten milliseconds of work, and one statement to stage them. */
const BATCH_ROWS = 250

/** What has been read of a file, kept with the rows themselves: a server that was killed goes on behind it. */
export interface ReadPosition {
  line: number
  rows: number
  faults: number
}

interface Reading {
  order: ImportOrder
  path: string
  currency: string
  /** Of the own store's prices. */
  listCurrency: string
  storeCurrency: FindStoreCurrency
  from: ReadPosition
  jobId: string
  /** Keeps a batch, and tells how far the file is read. Throws where the reading is to end. */
  keep: (position: ReadPosition, bytes: number, work: (trx: Transaction<Database>) => Promise<void>) => Promise<void>
}

const rowsOf = ({ order, path }: Reading): AsyncGenerator<FileRow> => {
  const columns = columnsOf(order.set, order.set === 'catalog' && order.format === 'csv' ? order.kind : null)
  return order.format === 'csv' ? csvRows(path, columns, rowWords(order.set, order.kind)) : jsonRows(path, columns)
}

function readCells({ order, currency, listCurrency, storeCurrency }: Reading, cells: Cells, report: ReportCell): object | null {
  switch (order.set) {
    case 'catalog':
      return readProductRow(cells, order.kind, report)
    case 'price_list':
      return readPriceListRow(cells, listCurrency, report)
    case 'sightings':
      return readSightingRow(cells, currency, storeCurrency, report)
    case 'customers':
      return readCustomerRow(cells, report)
  }
}

/** A thing is named once in a file: by its id, and a product also by number and by kind and name. A price list has a row for each price of a product; its check tells them apart. */
function keysOf({ order }: Reading, data: object): Array<[column: string, label: string, key: string]> {
  if (order.set === 'catalog') return productKeys(data as ProductRow)
  const { id = null } = data as { id?: string | null }
  return id === null ? [] : [['id', 'id', id]]
}

/**
 * Reads the file from its beginning, since only so are rows known that name one thing twice, and keeps what lies behind `from`: sound rows
 * and faults. Returns where it came to. Faults beyond a thousand are counted only. A heading or a list with no rows is no fault: an export of
 * nothing looks so.
 */
export async function readFile(reading: Reading): Promise<ReadPosition> {
  const { from, jobId } = reading
  const position = { ...from, rows: 0, faults: 0 }
  const seen = new Map<string, number>()
  let [staged, faults, bytes] = [[] as StagedRow<object>[], [] as ImportFault[], 0]
  const note = (fault: ImportFault): void => {
    position.faults += 1
    if (position.faults <= MOST_FAULTS && fault.row > from.line) faults.push(fault)
  }
  const flush = async (): Promise<void> => {
    const [rows, found] = [staged, faults]
    ;[staged, faults] = [[], []]
    await reading.keep({ ...position }, bytes, async (trx) => {
      await stageRows(trx, jobId, rows)
      await addFaults(trx, jobId, found)
    })
  }
  try {
    for await (const one of rowsOf(reading)) {
      const data = takeRow(reading, one, seen, note)
      position.rows += 1
      if (position.rows > MOST_ROWS)
        throw new UnreadableFile([{ row: one.row, column: null, message: `The file has more than ${MOST_ROWS} rows. Split it.` }])
      if (data !== null && one.row > from.line) staged.push({ line: one.row, data })
      ;[position.line, bytes] = [Math.max(from.line, one.row), one.bytes]
      if (staged.length + faults.length >= BATCH_ROWS) await flush()
    }
  } catch (error) {
    if (!(error instanceof UnreadableFile)) throw error
    error.faults.forEach(note)
  }
  await flush()
  return position
}

/** The content of a row; null where something in it, or a row before it, forbids that. */
function takeRow(
  reading: Reading,
  { row, cells, faults }: FileRow,
  seen: Map<string, number>,
  note: (fault: ImportFault) => void,
): object | null {
  const sound = faults.length === 0
  faults.forEach(note)
  if (!sound && cells.size === 0) return null
  const data = readCells(reading, cells, (column, message) => note({ row, column, message }))
  if (data === null || !sound) return null
  let repeated = false
  for (const [column, label, key] of keysOf(reading, data)) {
    const first = seen.get(`${column} ${key}`)
    if (first === undefined) seen.set(`${column} ${key}`, row)
    else {
      repeated = true
      note({ row, column, message: `The same ${label} stands in row ${first}. Keep one of the two rows.` })
    }
  }
  return repeated ? null : data
}
