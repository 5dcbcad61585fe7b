import type { Kysely } from 'kysely'
import { guardText } from '../../core/exchange/formula-guard.ts'
import type { Database } from '../../db/database.ts'
import { faultPages } from '../../db/import-faults.ts'
import { csvLines } from './csv-lines.ts'

/** The faults of an import as CSV, by row, a page at a time. `uncounted`: how many were found beyond those that are kept. */
export async function* faultFileParts(db: Kysely<Database>, jobId: string, uncounted: number): AsyncGenerator<string> {
  yield `\uFEFF${csvLines([['row', 'column', 'message']])}`
  for await (const faults of faultPages(db, jobId))
    yield csvLines(faults.map(({ row, column, message }) => [String(row), guardText(column ?? ''), guardText(message)]))
  if (uncounted > 0) yield csvLines([['', '', `${uncounted} more were found. Mend these, then try the file again.`]])
}
