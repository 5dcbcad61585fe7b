import { readFlag, readSpecCell, short } from './csv-cell.ts'
import { csvColumns, headingKey, type CsvColumn } from './csv-columns.ts'
import { EXAMPLE_MARK } from './csv-example.ts'
import { readParts, type PartReference } from './csv-parts.ts'
import { isPlainText } from '../plain-text.ts'
import { bareGtin, isGtin } from './gtin.ts'
import type { ImportFault } from './import-report.ts'
import { kindInText, type Kind } from './kinds.ts'
import type { Spec } from './spec.ts'
import { kindWords } from './spec-fields.ts'

/** One product as the file has it. A kit's parts are still names or ids; "archived" is not a column and an update keeps it. */
export interface ProductRow {
  /** Line of the file, the heading being 1. */
  row: number
  /** Product that the row changes; null where it is found by name, or new. */
  id: string | null
  kind: Kind
  name: string
  maker: string | null
  gtin: string | null
  oversize: boolean
  note: string | null
  spec: Spec
  parts: PartReference[]
}

export interface ProductFile {
  /** Rows that can be stored as far as the file alone can tell; with any fault nothing is written. */
  rows: ProductRow[]
  faults: ImportFault[]
  /** True when more faults were found than are listed. */
  more: boolean
  /** Records under the heading, empty ones apart. */
  records: number
}

/** More than a person mends in one sitting; a wrong column in 50 000 rows would else make a report of megabytes. */
export const MOST_FAULTS = 500
/** Rows of one file. More is split, so that one import stays one transaction of seconds. */
export const MOST_ROWS = 100_000

/** Rows read between two steps: ten milliseconds of work on a slow machine. */
const STEP_ROWS = 200
/** No kind has a quarter of them; more are a file that is something else, and every one would be compared with every other. */
const MOST_COLUMNS = 200

const NAME_LENGTH = 120
const NOTE_LENGTH = 2000

type Report = (row: number, column: string | null, message: string) => void

/**
 * Products of one kind from the records of a CSV file, the heading first. Parsing text into records (BOM, line ends, quotes) is done before.
 *
 * The heading is read without regard to case, spaces, "-" and "_"; its order is free. Every fault names its row and column; the list ends at
 * 500 with `more`. An empty cell is not known. Rows that name the same product twice are faults.
 *
 * `lines` are the lines of the file on which the records begin, where the parser knows them: a cell may hold line breaks. Without them records
 * are counted from 1.
 *
 * @example readProductRows([['name', 'powerW'], ['Torvane 150 W', '150']], 'heater').rows[0].spec // { powerW: 150 }
 */
export function readProductRows(records: readonly (readonly string[])[], kind: Kind, lines?: readonly number[]): ProductFile {
  const steps = productRowSteps(records, kind, lines)
  for (;;) {
    const { done, value } = steps.next()
    if (done === true) return value
  }
}

/** The same in steps of 200 rows, for whoever has others to serve between them. The last step answers with the file. */
export function* productRowSteps(
  records: readonly (readonly string[])[],
  kind: Kind,
  lines?: readonly number[],
): Generator<undefined, ProductFile> {
  const faults: ImportFault[] = []
  let found = 0
  const report: Report = (row, column, message) => {
    found += 1
    if (faults.length < MOST_FAULTS) faults.push({ row, column, message })
  }
  const [heading = [], ...body] = records
  const columns = readHeading(heading, kind, report)
  const filled = body
    .map((cells, index) => ({ cells, row: lines?.[index + 1] ?? index + 2 }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''))
  const rows = columns ? yield* readBody(filled, columns, kind, report) : []
  return { rows, faults, more: found > faults.length, records: filled.length }
}

/** The column behind each heading; null where the heading alone forbids reading on. */
function readHeading(heading: readonly string[], kind: Kind, report: Report): CsvColumn[] | null {
  const known = new Map(csvColumns(kind).map((column) => [headingKey(column.heading), column]))
  if (heading.every((cell) => cell.trim() === '')) {
    report(1, null, 'The file has no heading. Its first line names the columns; take the template.')
    return null
  }
  if (heading.length > MOST_COLUMNS) {
    report(1, null, `The heading has ${heading.length} columns. At most ${MOST_COLUMNS} are read; take the template.`)
    return null
  }
  const columns = heading.map((cell, index) => {
    const column = known.get(headingKey(cell))
    if (!column) report(1, cell.trim() || null, unknownColumn(cell, index, kind))
    else if (heading.findIndex((other) => headingKey(other) === headingKey(cell)) < index)
      report(1, column.heading, `The column ${column.heading} stands twice. Take one out.`)
    return column
  })
  for (const column of known.values()) {
    if (column.required && !columns.includes(column))
      report(1, column.heading, `The column ${column.heading} is missing. Every ${kindInText(kind)} needs it.`)
  }
  const usable = columns.filter((column) => column !== undefined)
  return usable.length === heading.length &&
    new Set(usable).size === usable.length &&
    [...known.values()].every((column) => !column.required || usable.includes(column))
    ? usable
    : null
}

function unknownColumn(cell: string, index: number, kind: Kind): string {
  if (cell.trim() === '') return `Column ${index + 1} has no heading. Name it, or take it out.`
  return `"${short(cell.trim())}" is not a column of ${kindWords(kind)}. Take it out, or use one of: ${csvColumns(kind)
    .map((column) => column.heading)
    .join(', ')}.`
}

function* readBody(
  filled: ReadonlyArray<{ cells: readonly string[]; row: number }>,
  columns: readonly CsvColumn[],
  kind: Kind,
  report: Report,
): Generator<undefined, ProductRow[]> {
  if (filled.length === 0) report(2, null, 'There are no products under the heading.')
  if (filled.length > MOST_ROWS) {
    report(MOST_ROWS + 2, null, `The file has ${filled.length} products. At most ${MOST_ROWS} at once: split it.`)
    return []
  }
  const seen = new Map<string, number>()
  const rows: ProductRow[] = []
  for (const [index, { cells, row }] of filled.entries()) {
    if (index % STEP_ROWS === STEP_ROWS - 1) yield undefined
    const product = readRow(cells, columns, kind, row, report)
    if (product === null) continue
    reportRepeats(product, seen, report)
    rows.push(product)
  }
  return rows
}

/** A product is named once in a file: by id, by GTIN and by name. */
function reportRepeats({ row, id, name, gtin }: ProductRow, seen: Map<string, number>, report: Report): void {
  const keys: Array<[string, string, string | null]> = [
    ['id', 'id', id],
    ['name', 'name', name.toLowerCase()],
    ['gtin', 'GTIN', gtin && gtin.padStart(14, '0')],
  ]
  for (const [column, label, value] of keys) {
    if (value === null) continue
    const first = seen.get(`${column} ${value}`)
    if (first === undefined) seen.set(`${column} ${value}`, row)
    else report(row, column, `The same ${label} stands in row ${first}. Keep one of the two rows.`)
  }
}

function readRow(cells: readonly string[], columns: readonly CsvColumn[], kind: Kind, row: number, report: Report): ProductRow | null {
  let sound = true
  const fault = (column: string | null, message: string): void => {
    sound = false
    report(row, column, message)
  }
  if (cells.length !== columns.length) {
    fault(
      null,
      `This row has ${cells.length} cells and the heading ${columns.length}. A cell that holds what stands between columns needs quotes around it.`,
    )
    return null
  }
  const product: ProductRow = { row, id: null, kind, name: '', maker: null, gtin: null, oversize: false, note: null, spec: {}, parts: [] }
  columns.forEach((column, index) => {
    const message = readCell(product, column, (cells[index] ?? '').trim())
    if (message !== null) fault(column.heading, message)
  })
  return sound ? product : null
}

/** Puts one cell where it belongs; answers with a message where it cannot. */
function readCell(product: ProductRow, { heading, field, required }: CsvColumn, cell: string): string | null {
  if (cell === '')
    return required
      ? `${field?.label ?? heading} is empty. ${heading === 'parts' ? 'A kit' : `Every ${kindInText(product.kind)}`} needs it.`
      : null
  if (!isPlainText(cell) || cell.includes('\ufffd')) return `${heading} has a character that cannot be read. Save the file as UTF-8.`
  if (field) {
    const read = readSpecCell(field, cell, kindWords(product.kind))
    if (read.ok) Object.assign(product.spec, { [field.key]: read.value })
    return read.ok ? null : read.refusal.words
  }
  return readCommon(product, heading, cell)
}

function readCommon(product: ProductRow, heading: string, cell: string): string | null {
  switch (heading) {
    case 'id':
      product.id = cell.toLowerCase()
      return /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(product.id)
        ? null
        : `"${short(cell)}" is not an id of ours. Leave it empty for a new product.`
    case 'gtin':
      product.gtin = bareGtin(cell)
      return isGtin(product.gtin) ? null : gtinWords(cell)
    case 'oversize': {
      const read = readFlag(cell, 'Oversize')
      if (read.ok) product.oversize = read.value
      return read.ok ? null : read.refusal.words
    }
    case 'parts': {
      const read = readParts(cell)
      if (read.ok) product.parts = read.value
      return read.ok ? null : read.refusal.words
    }
    case 'note':
      product.note = cell
      return cell.length > NOTE_LENGTH ? `Note has ${cell.length} characters. At most ${NOTE_LENGTH} fit.` : null
    default:
      if (heading === 'maker') product.maker = cell
      else product.name = cell
      if (heading === 'name' && cell.startsWith(EXAMPLE_MARK)) return 'This is the example of the template. Take the row out.'
      return cell.length > NAME_LENGTH ? `${heading} has ${cell.length} characters. At most ${NAME_LENGTH} fit.` : null
  }
}

/** A spreadsheet turns long numbers into "6.29104E+12" and drops leading zeros: both are lost digits, and the message says so. */
function gtinWords(cell: string): string {
  const lost = /e\+/i.test(cell) ? ' A spreadsheet shortened it: format the column as text.' : ''
  return `GTIN "${short(cell)}" is not right: 8, 12, 13 or 14 digits, the last one checks the others, leading zeros kept.${lost}`
}
