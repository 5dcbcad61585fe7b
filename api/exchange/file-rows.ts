import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import { CsvError, parse } from 'csv-parse'
import { sniffDelimiter } from '../../core/catalog/csv-delimiter.ts'
import type { ExchangeColumn } from '../../core/exchange/column.ts'
import { headingKey } from '../../core/exchange/column.ts'
import type { ImportFault } from '../../core/exchange/data-set.ts'
import { unguardText } from '../../core/exchange/formula-guard.ts'
import { readHeading } from '../../core/exchange/heading.ts'
import { readJsonRow } from '../../core/exchange/json-cells.ts'
import { cutItems, JsonItemsError } from '../../core/exchange/json-items.ts'
import { withoutTurns } from '../../core/plain-text.ts'

/** A row of a file, by the headings of its cells; what is wrong with it before anybody looks at its values. */
export interface FileRow {
  row: number
  cells: Map<string, string>
  faults: ImportFault[]
  /** Bytes of the file read so far. */
  bytes: number
}

/** The file cannot be read on; what was read before stands. */
export class UnreadableFile extends Error {
  readonly faults: ImportFault[]
  constructor(faults: ImportFault[]) {
    super('unreadable')
    this.faults = faults
  }
}
const unreadable = (row: number, message: string): UnreadableFile => new UnreadableFile([{ row, column: null, message }])

const WORDS: Partial<Record<CsvError['code'], string>> = {
  CSV_QUOTE_NOT_CLOSED: 'A cell opens with a quotation mark that is never closed. Close it, or take it out.',
  INVALID_OPENING_QUOTE: 'A quotation mark stands in the middle of a cell. Put the whole cell in quotes and double the mark inside.',
  CSV_INVALID_CLOSING_QUOTE: 'Something stands behind a closing quotation mark. Double a mark that belongs to the text.',
  CSV_NON_TRIMABLE_CHAR_AFTER_CLOSING_QUOTE: 'Something stands behind a closing quotation mark. Double a mark that belongs to the text.',
}

/** Longest heading that a separator is looked for in. */
const SNIFFED_BYTES = 20_000

async function beginningOf(path: string): Promise<string> {
  const file = await open(path)
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(SNIFFED_BYTES), 0, SNIFFED_BYTES, 0)
    return buffer.subarray(0, bytesRead).toString('utf8')
  } finally {
    await file.close()
  }
}

/**
 * Rows of a CSV file as they are read: RFC 4180, or with semicolons or tabs in place of commas; a byte order mark and any line ends are taken.
 *
 * Errors: UnreadableFile for its heading, or where its quotation marks go wrong.
 */
export async function* csvRows(path: string, columns: readonly ExchangeColumn[], what: string): AsyncGenerator<FileRow> {
  const stream = createReadStream(path)
  const parser = parse({
    bom: true,
    delimiter: sniffDelimiter(await beginningOf(path)),
    relax_column_count: true,
    max_record_size: 1_000_000,
  })
  // The parser tells its own failure; the stream's goes the same way.
  stream.once('error', (error) => parser.destroy(error)).pipe(parser)
  let [row, headings] = [0, [] as string[]]
  try {
    for await (const record of parser as AsyncIterable<string[]>) {
      row += 1
      if (row === 1) headings = headingsOf(record, columns, what)
      else if (record.some((cell) => cell.trim() !== '')) yield { ...csvRow(row, record, headings), bytes: stream.bytesRead }
    }
  } catch (error) {
    if (!(error instanceof CsvError)) throw error
    throw unreadable(row + 1, WORDS[error.code] ?? 'This line cannot be read as CSV. Check its quotation marks.')
  } finally {
    stream.destroy()
  }
  if (row === 0) headingsOf([], columns, what)
}

function headingsOf(record: readonly string[], columns: readonly ExchangeColumn[], what: string): string[] {
  const heading = readHeading(record, columns, what)
  if (!heading.ok) throw new UnreadableFile(heading.refusal.faults)
  return heading.value
}

function csvRow(row: number, record: readonly string[], headings: readonly string[]): Omit<FileRow, 'bytes'> {
  if (record.length !== headings.length) {
    const message = `This row has ${record.length} cells and the heading ${headings.length}. A cell that holds what stands between columns needs quotes around it.`
    return { row, cells: new Map(), faults: [{ row, column: null, message }] }
  }
  const cells = new Map<string, string>()
  for (const [index, cell] of record.entries()) {
    const text = withoutTurns(cell).trim()
    if (text !== '') cells.set(headings[index] ?? '', unguardText(text))
  }
  return { row, cells, faults: [] }
}

/** Rows of a JSON file, a list of flat objects, as they are read. Errors: UnreadableFile where it is no list, or cut off. */
export async function* jsonRows(path: string, columns: readonly ExchangeColumn[]): AsyncGenerator<FileRow> {
  const known = new Map(columns.map((column) => [headingKey(column.heading), column]))
  const stream = createReadStream(path, { encoding: 'utf8' })
  const cut = cutItems()
  let row = 0
  try {
    for await (const text of stream as AsyncIterable<string>) {
      for (const item of cut.feed(text)) {
        row += 1
        const faults: ImportFault[] = []
        const read = readJsonRow(item, known, (column, message) => faults.push({ row, column, message }))
        if (!read.ok) faults.push({ row, column: null, message: read.refusal.words })
        yield { row, cells: read.ok ? read.value : new Map(), faults, bytes: stream.bytesRead }
      }
    }
    cut.end()
  } catch (error) {
    if (error instanceof JsonItemsError) throw unreadable(error.item, error.message)
    throw error
  } finally {
    stream.destroy()
  }
}
