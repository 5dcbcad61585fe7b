import { csvColumns } from '../../core/catalog/csv-columns.ts'
import { exampleCells } from '../../core/catalog/csv-example.ts'
import type { Kind } from '../../core/catalog/kinds.ts'
import { columnsOf } from '../../core/exchange/columns-of.ts'
import { WARRANTY } from '../../core/exchange/product-columns.ts'
import type { DataSet } from '../../core/exchange/data-set.ts'
import { csvLines } from './csv-lines.ts'

/** Heading line of a file of a set, with an example under it where a kind is named; with a byte order mark, so that spreadsheets take it for UTF-8. */
export function csvTemplate(set: DataSet, kind: Kind | null): string {
  const named = set === 'catalog' && kind !== null
  const columns = named ? [...csvColumns(kind), WARRANTY] : columnsOf(set, null).filter((column) => column.told !== true)
  const headings = columns.map(({ heading }) => heading)
  const example = named ? exampleCells(kind) : null
  const rows = example === null ? [headings] : [headings, headings.map((heading) => example[heading] ?? '')]
  return `\uFEFF${csvLines(rows)}`
}
