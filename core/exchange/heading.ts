import { headingKey, type ExchangeColumn } from './column.ts'
import type { ImportFault } from './data-set.ts'
import { ok, refuse, type Result } from '../result.ts'
import { short } from '../catalog/csv-cell.ts'

/** No file of ours has half of them; more are a file that is something else, and every one would be compared with every other. */
const MOST_COLUMNS = 400

/**
 * The heading behind each cell of a file's first row, as it is written in the table of columns. `what` names the rows: "heaters".
 *
 * Errors: every heading that is unknown, empty or there twice; a needed column that is missing.
 */
export function readHeading(
  cells: readonly string[],
  columns: readonly ExchangeColumn[],
  what: string,
): Result<string[], { code: 'heading'; faults: ImportFault[] }> {
  const whole = (message: string) => refuse({ code: 'heading' as const, faults: [{ row: 1, column: null, message }] })
  if (cells.every((cell) => cell.trim() === ''))
    return whole('The file has no heading. Its first line names the columns; take the template.')
  if (cells.length > MOST_COLUMNS)
    return whole(`The heading has ${cells.length} columns. At most ${MOST_COLUMNS} are read; take the template.`)
  const known = new Map(columns.map((column) => [headingKey(column.heading), column.heading]))
  const faults: ImportFault[] = []
  const headings = cells.map((cell, index) => {
    const heading = known.get(headingKey(cell))
    if (heading === undefined) faults.push({ row: 1, column: cell.trim() || null, message: unknownColumn(cell, index, columns, what) })
    else if (cells.findIndex((other) => headingKey(other) === headingKey(cell)) < index)
      faults.push({ row: 1, column: heading, message: `The column ${heading} stands twice. Take one out.` })
    return heading ?? ''
  })
  for (const { heading, required } of columns)
    if (required && !headings.includes(heading))
      faults.push({ row: 1, column: heading, message: `The column ${heading} is missing. It is needed for ${what}.` })
  return faults.length > 0 ? refuse({ code: 'heading', faults }) : ok(headings)
}

/** Names listed in a message; a heading of all kinds is longer than anybody reads. */
const MOST_NAMED = 40

function unknownColumn(cell: string, index: number, columns: readonly ExchangeColumn[], what: string): string {
  if (cell.trim() === '') return `Column ${index + 1} has no heading. Name it, or take it out.`
  const names = columns.slice(0, MOST_NAMED).map(({ heading }) => heading)
  const rest = columns.length > MOST_NAMED ? ', …' : ''
  return `"${short(cell.trim())}" is not a column of ${what}. Take it out, or use one of: ${names.join(', ')}${rest}.`
}
