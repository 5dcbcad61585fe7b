import { setImmediate as breathe } from 'node:timers/promises'
import type { CsvError } from 'csv-parse'
import { parse } from 'csv-parse'
import { sniffDelimiter } from '../../core/catalog/csv-delimiter.ts'
import type { ImportFault } from '../../core/catalog/import-report.ts'
import { ok, refuse, type Result } from '../../core/result.ts'

/** Characters read between two turns of the event loop: about five milliseconds of work. */
const SLICE = 64_000

const WORDS: Partial<Record<CsvError['code'], string>> = {
  CSV_QUOTE_NOT_CLOSED: 'A cell opens with a quotation mark that is never closed. Close it, or take it out.',
  INVALID_OPENING_QUOTE: 'A quotation mark stands in the middle of a cell. Put the whole cell in quotes and double the mark inside.',
  CSV_INVALID_CLOSING_QUOTE: 'Something stands behind a closing quotation mark. Double a mark that belongs to the text.',
  CSV_NON_TRIMABLE_CHAR_AFTER_CLOSING_QUOTE: 'Something stands behind a closing quotation mark. Double a mark that belongs to the text.',
}

const isCsvError = (error: unknown): error is CsvError =>
  error instanceof Error && 'code' in error && String((error as { code: unknown }).code).includes('_')

/** CSV text as records, the heading first: RFC 4180, or with semicolons or tabs in place of commas, a byte order mark and any line ends taken. Other requests are answered meanwhile. */
export async function readRecords(csv: string): Promise<Result<string[][], { code: 'unreadable'; fault: ImportFault }>> {
  const parser = parse({
    bom: true,
    delimiter: sniffDelimiter(csv),
    relax_column_count: true,
    skip_empty_lines: false,
    max_record_size: 1_000_000,
  })
  const records: string[][] = []
  parser.on('readable', () => {
    for (let record: string[] | null; (record = parser.read() as string[] | null) !== null;) records.push(record)
  })
  const done = new Promise<void>((resolve, reject) => parser.once('end', resolve).once('error', reject))
  // The loop below may still be writing when it fails; the failure is told once, by awaiting it.
  done.catch(() => undefined)
  try {
    for (let start = 0; start < csv.length && !parser.destroyed; start += SLICE) {
      parser.write(csv.slice(start, start + SLICE))
      await breathe()
    }
    parser.end()
    await done
    return ok(records)
  } catch (error) {
    if (!isCsvError(error)) throw error
    const message = WORDS[error.code] ?? 'This line cannot be read as CSV. Check its quotation marks.'
    const { lines } = error as { lines?: unknown }
    return refuse({ code: 'unreadable', fault: { row: typeof lines === 'number' ? lines : records.length + 1, column: null, message } })
  }
}
