import type { Transaction } from 'kysely'
import { columnsOf, rowWords } from '../../core/exchange/columns-of.ts'
import type { Cells, ReportCell } from '../../core/exchange/column.ts'
import { readCustomerRow } from '../../core/exchange/customer-rows.ts'
import { MOST_FAULTS, MOST_ROWS, type ImportFault } from '../../core/exchange/data-set.ts'
import type { ImportOrder } from '../../core/exchange/import-outcome.ts'
import { readPriceListRow } from '../../core/exchange/price-list-rows.ts'
import { productCalled, productKeys, readProductRow, type ProductRow } from '../../core/exchange/product-rows.ts'
import { readSightingRow, type FindStoreCurrency } from '../../core/exchange/sighting-rows.ts'
import type { Database } from '../../db/database.ts'
import { addFaults } from '../../db/import-faults.ts'
import { stageRows, type ReadRow } from '../../db/import-staging.ts'
import { csvRows, jsonRows, UnreadableFile, type FileRow } from './file-rows.ts'

/** Rows read between two looks at the clock: some ten milliseconds of work, and one statement to stage them. */
const BATCH_ROWS = 250

/** What has been read of a file, kept with the rows themselves: a server that was killed goes on behind it. */
export interface ReadPosition {
  line: number
  rows: number
  faults: number
  /** Rows with a fault. */
  unsound: number
  /** Of some row not even the name could be read. */
  hasUnread: boolean
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
 * Reads the file from its beginning, since only so are rows known that name one thing twice, and keeps what lies behind `from`: rows and
 * faults. Returns where it came to. Faults beyond the most that are kept are counted only. A heading or a list with no rows is no fault: an
 * export of nothing looks so.
 */
export async function readFile(reading: Reading): Promise<ReadPosition> {
  const { from, jobId } = reading
  const position = { ...from, rows: 0, faults: 0, unsound: 0, hasUnread: false }
  const seen = new Map<string, number>()
  let [staged, faults, bytes] = [[] as ReadRow[], [] as ImportFault[], 0]
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
      const taken = takeRow(reading, one, seen, note)
      position.rows += 1
      if (taken?.sound !== true) position.unsound += 1
      if (taken === null) position.hasUnread = true
      if (position.rows > MOST_ROWS)
        throw new UnreadableFile([{ row: one.row, column: null, message: `The file has more than ${MOST_ROWS} rows. Split it.` }])
      if (taken !== null && one.row > from.line) staged.push(taken)
      ;[position.line, bytes] = [Math.max(from.line, one.row), one.bytes]
      if (staged.length + faults.length >= BATCH_ROWS) await flush()
    }
  } catch (error) {
    if (!(error instanceof UnreadableFile)) throw error
    error.faults.forEach(note)
    // What lies behind is unread; the faults that say so are kept once, whatever happens before the next step.
    position.hasUnread = true
    position.line = Math.max(position.line, ...error.faults.map(({ row }) => row))
  }
  await flush()
  return position
}

/** A row, sound or no more than what it is called; null where not even that can be told. */
function takeRow(
  reading: Reading,
  { row, cells, faults }: FileRow,
  seen: Map<string, number>,
  note: (fault: ImportFault) => void,
): ReadRow | null {
  faults.forEach(note)
  if (faults.length > 0 && cells.size === 0) return null
  const data = readCells(reading, cells, (column, message) => note({ row, column, message }))
  const called = reading.order.set === 'catalog' ? productCalled(cells, reading.order.kind) : null
  const unsound = called && { line: row, data: called, sound: false }
  if (data === null || faults.length > 0) return unsound
  let repeated = false
  for (const [column, label, key] of keysOf(reading, data)) {
    const first = seen.get(`${column} ${key}`)
    if (first === undefined) seen.set(`${column} ${key}`, row)
    else {
      repeated = true
      note({ row, column, message: `The same ${label} stands in row ${first}. Keep one of the two rows.` })
    }
  }
  return repeated ? unsound : { line: row, data, sound: true }
}
