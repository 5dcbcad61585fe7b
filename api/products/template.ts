import { csvColumns } from '../../core/catalog/csv-columns.ts'
import type { Kind } from '../../core/catalog/kinds.ts'

/** Heading line of an import file of a kind, with a byte order mark: spreadsheets take it for UTF-8 only then. */
export function csvTemplate(kind: Kind): string {
  const headings = csvColumns(kind).map((column) => column.heading)
  return `\uFEFF${headings.join(',')}\r\n`
}
