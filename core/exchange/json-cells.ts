import { short } from '../catalog/csv-cell.ts'
import { withoutTurns } from '../plain-text.ts'
import { ok, refuse, type Result } from '../result.ts'
import { headingKey, type ExchangeColumn, type ReportCell } from './column.ts'

type Refused = { code: 'not_a_row'; words: string }
const notARow = (words: string) => refuse<Refused>({ code: 'not_a_row', words })

/**
 * One item of a JSON file as the cells that a row of CSV would have; null and a field left out are empty. Fields that `columns` does not know
 * are told to `report`.
 *
 * @example readJsonRow('{"name":"Torvane 150 W","powerW":150}', columns, report) // cells: name 'Torvane 150 W', powerW '150'
 */
export function readJsonRow(
  item: string,
  columns: ReadonlyMap<string, ExchangeColumn>,
  report: ReportCell,
): Result<Map<string, string>, Refused> {
  const parsed = parse(item)
  if (parsed === undefined) return notARow('This row is not well-formed JSON. Check its quotation marks and commas.')
  if (typeof parsed !== 'object' || parsed === null || Array.isArray(parsed))
    return notARow('This row is no object. Write {"name": …} with the columns as names.')
  const cells = new Map<string, string>()
  for (const [key, value] of Object.entries(parsed)) {
    const column = columns.get(headingKey(key))
    const told = cellOf(value)
    const cell = told === undefined ? undefined : withoutTurns(told).trim()
    if (column === undefined) report(short(key), `"${short(key)}" is not a field of these rows. Check the spelling, or leave it out.`)
    else if (cells.has(column.heading)) report(column.heading, `The field ${column.heading} stands twice. Take one out.`)
    else if (cell === undefined)
      report(column.heading, `${column.heading} is a list or an object. Write plain text, a number, true or false.`)
    else if (cell !== '') cells.set(column.heading, cell)
  }
  return ok(cells)
}

function parse(item: string): unknown {
  try {
    return JSON.parse(item) as unknown
  } catch {
    return undefined
  }
}

function cellOf(value: unknown): string | undefined {
  if (value === null) return ''
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  return typeof value === 'string' || typeof value === 'number' ? String(value) : undefined
}
