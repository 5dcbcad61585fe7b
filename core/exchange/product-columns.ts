import { csvColumns, type CsvColumn } from '../catalog/csv-columns.ts'
import { KINDS, type Kind } from '../catalog/kinds.ts'
import { headingKey, type ExchangeColumn } from './column.ts'

const KIND: ExchangeColumn = {
  heading: 'kind',
  type: 'text',
  required: false,
  help: `Kind of the product: ${KINDS.join(', ')}. Empty, or without the column: the kind that was chosen beside the file.`,
}
const ARCHIVED: ExchangeColumn = {
  heading: 'archived',
  type: 'flag',
  required: false,
  help: 'yes or no. An archived product stays in old quotes and takes no new sightings. Empty leaves a known product as it is.',
}
/** The product's own warranty, beside whatever its kind has. */
export const WARRANTY: ExchangeColumn = {
  heading: 'warrantyMonths',
  type: 'number',
  required: false,
  help: 'Warranty in whole months, where the product has its own: 0 to 600. Empty leaves a known product as it is.',
}

const exchanged = ({ heading, required, help, field }: CsvColumn): ExchangeColumn => ({
  heading,
  required,
  help,
  type: field === undefined ? (heading === 'oversize' ? 'flag' : 'text') : typeOf(field.type),
})
const typeOf = (type: string): ExchangeColumn['type'] =>
  type === 'flag' ? 'flag' : type === 'number' || type === 'whole' ? 'number' : 'text'

/** Columns of a file of one kind: those of its template, then kind and whether it is archived. */
export const productColumns = (kind: Kind): ExchangeColumn[] => [...csvColumns(kind).map(exchanged), KIND, WARRANTY, ARCHIVED]

/** Columns of a file of every kind: kind first, then each column that some kind has. Only a name is needed everywhere. */
export function catalogColumns(): ExchangeColumn[] {
  const columns = new Map<string, ExchangeColumn>([[KIND.heading, KIND]])
  for (const kind of KINDS)
    for (const column of productColumns(kind))
      if (!columns.has(column.heading)) columns.set(column.heading, { ...column, required: column.heading === 'name' })
  return [...columns.values()]
}

/** The columns of each kind by what their headings are compared by. */
export const KIND_COLUMNS: ReadonlyMap<Kind, ReadonlyMap<string, CsvColumn>> = new Map(
  KINDS.map((kind) => [kind, new Map(csvColumns(kind).map((column) => [headingKey(column.heading), column]))]),
)
