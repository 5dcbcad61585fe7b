import { csvColumns } from '../../core/catalog/csv-columns.ts'
import { exampleCells } from '../../core/catalog/csv-example.ts'
import type { Kind } from '../../core/catalog/kinds.ts'

const quoted = (cell: string): string => (/[",;\t]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)

/** Heading line of an import file of a kind and an example under it, with a byte order mark: spreadsheets take it for UTF-8 only then. */
export function csvTemplate(kind: Kind): string {
  const headings = csvColumns(kind).map((column) => column.heading)
  const example = exampleCells(kind)
  return `\uFEFF${headings.join(',')}\r\n${headings.map((heading) => quoted(example[heading] ?? '')).join(',')}\r\n`
}
