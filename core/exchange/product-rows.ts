import { readFlag, readSpecCell, short } from '../catalog/csv-cell.ts'
import type { CsvColumn } from '../catalog/csv-columns.ts'
import { EXAMPLE_MARK } from '../catalog/csv-example.ts'
import { readParts, type PartReference } from '../catalog/csv-parts.ts'
import { bareGtin, isGtin } from '../catalog/gtin.ts'
import { kindsNear } from '../catalog/kind-words.ts'
import { kindInText, KIND_NAMES, KINDS, type Kind } from '../catalog/kinds.ts'
import { kindWords } from '../catalog/spec-fields.ts'
import type { Spec } from '../catalog/spec.ts'
import { isPlainText, isVisible } from '../plain-text.ts'
import { headingInWords, headingKey, type Cells, type ReportCell } from './column.ts'
import { KIND_COLUMNS } from './product-columns.ts'

/** One product as a file has it. A kit's parts are still names or ids. */
export interface ProductRow {
  /** Product that the row changes; null where it is found by number or name, or new. */
  id: string | null
  kind: Kind
  name: string
  maker: string | null
  gtin: string | null
  oversize: boolean
  note: string | null
  spec: Spec
  parts: PartReference[]
  /** Null leaves a known product as it is. */
  warrantyMonths: number | null
  /** Null leaves a known product as it is. */
  archived: boolean | null
}

const NAME_LENGTH = 120
const NOTE_LENGTH = 2000
const MOST_WARRANTY_MONTHS = 600
/** Columns of every kind that its template leaves out. */
const OWN: ReadonlySet<string> = new Set(['archived', 'warrantyMonths'])

/**
 * A product from its cells; null where something in them is wrong, which `report` is told. `kind` is the one chosen for the whole file.
 *
 * @example readProductRow(new Map([['name', 'Torvane 150 W'], ['powerW', '150']]), 'heater', report)?.spec // { powerW: 150 }
 */
export function readProductRow(cells: Cells, kind: Kind | null, report: ReportCell): ProductRow | null {
  const own = kindOf(cells, kind, report)
  if (own === null) return null
  let sound = true
  const fault: ReportCell = (column, message) => {
    sound = false
    report(column, message)
  }
  const product: ProductRow = {
    id: null,
    kind: own,
    name: '',
    maker: null,
    gtin: null,
    oversize: false,
    note: null,
    spec: {},
    parts: [],
    warrantyMonths: null,
    archived: null,
  }
  const columns = KIND_COLUMNS.get(own)
  for (const [heading, cell] of cells) {
    const message = heading === 'kind' ? null : readCell(product, heading, columns?.get(headingKey(heading)), cell)
    if (message !== null) fault(heading, message)
  }
  for (const column of columns?.values() ?? [])
    if (column.required && !cells.has(column.heading)) fault(column.heading, emptyWords(column, own))
  return sound ? product : null
}

/**
 * What a product is called by cells of which another is wrong; null where kind or name cannot be told.
 *
 * @example productCalled(new Map([['name', 'Torvane 150 W'], ['powerW', 'lots']]), 'heater') // { kind: 'heater', name: 'Torvane 150 W' }
 */
export function productCalled(cells: Cells, kind: Kind | null): Pick<ProductRow, 'kind' | 'name'> | null {
  const own = kindOf(cells, kind, () => undefined)
  const name = cells.get('name') ?? ''
  return own === null || !isVisible(name) || !isPlainText(name) || name.length > NAME_LENGTH ? null : { kind: own, name }
}

function kindOf(cells: Cells, kind: Kind | null, report: ReportCell): Kind | null {
  const cell = cells.get('kind')
  if (cell === undefined) {
    if (kind === null) report('kind', 'The kind is empty. Write one, or choose the kind of every row beside the file.')
    return kind
  }
  const own = KINDS.find((one) => [one, KIND_NAMES[one]].some((name) => headingKey(name) === headingKey(cell))) ?? null
  if (own === null) report('kind', `"${short(cell)}" is not a kind. ${nearKinds(cell)}`)
  return own
}

/** Kinds named where none is near: three that every file has. */
const KNOWN_KINDS: readonly Kind[] = ['tank', 'heater', 'filter']
const inQuotes = (kind: Kind): string => `"${kindInText(kind)}"`

function nearKinds(cell: string): string {
  const near = kindsNear(cell)
  if (near.length > 0) return `Was ${near.map(inQuotes).join(' or ')} meant?`
  return `Write one of the ${KINDS.length} that the page of formats lists, like ${KNOWN_KINDS.map(inQuotes).join(', ')}.`
}

const emptyWords = ({ heading, field }: CsvColumn, kind: Kind): string =>
  `${field?.label ?? headingInWords(heading)} is empty. ${heading === 'parts' ? 'A kit' : `Every ${kindInText(kind)}`} needs it.`

/** Puts one cell where it belongs; answers with a message where it cannot. */
function readCell(product: ProductRow, heading: string, column: CsvColumn | undefined, cell: string): string | null {
  if (!isPlainText(cell) || cell.includes('\ufffd'))
    return `${headingInWords(heading)} has a character that cannot be read. Save the file as UTF-8.`
  if (!isVisible(cell)) return `${headingInWords(heading)} has no visible character. Fill it in, or leave the cell empty.`
  if (column?.field) {
    const read = readSpecCell(column.field, cell, kindWords(product.kind))
    if (read.ok) Object.assign(product.spec, { [column.field.key]: read.value })
    return read.ok ? null : read.refusal.words
  }
  if (column === undefined && !OWN.has(heading)) return `"${heading}" is not a column of ${kindWords(product.kind)}. Leave the cell empty.`
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
    case 'oversize':
    case 'archived': {
      const read = readFlag(cell, heading === 'oversize' ? 'Oversize' : 'Archived')
      if (read.ok) product[heading] = read.value
      return read.ok ? null : read.refusal.words
    }
    case 'warrantyMonths':
      product.warrantyMonths = Number(cell)
      return /^\d{1,3}$/.test(cell) && product.warrantyMonths <= MOST_WARRANTY_MONTHS
        ? null
        : `Warranty is "${short(cell)}". Write whole months, at most ${MOST_WARRANTY_MONTHS}.`
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
      return cell.length > NAME_LENGTH ? `${headingInWords(heading)} has ${cell.length} characters. At most ${NAME_LENGTH} fit.` : null
  }
}

/** A spreadsheet turns long numbers into "6.29104E+12" and drops leading zeros: both are lost digits, and the message says so. */
function gtinWords(cell: string): string {
  const lost = /e\+/i.test(cell) ? ' A spreadsheet shortened it: format the column as text.' : ''
  return `GTIN "${short(cell)}" is not right: 8, 12, 13 or 14 digits, the last one checks the others, leading zeros kept.${lost}`
}

/** What names a product once in a file: a second row with one of them is a fault. */
export const productKeys = ({ id, kind, name, gtin }: ProductRow): Array<[column: string, label: string, key: string]> => [
  ...(id === null ? [] : [['id', 'id', id] as [string, string, string]]),
  ['name', 'name', `${kind} ${name.toLowerCase()}`],
  ...(gtin === null ? [] : [['gtin', 'GTIN', gtin.padStart(14, '0')] as [string, string, string]]),
]
