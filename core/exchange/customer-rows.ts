import { cellReader } from './cell-reader.ts'
import type { Cells, CellValue, ExchangeColumn, ReportCell } from './column.ts'

/** As long as the form of a customer takes them (core/quote/schema.ts). */
const LONGEST = { name: 120, reach: 200, note: 2000 } as const

export const CUSTOMER_COLUMNS: readonly ExchangeColumn[] = [
  {
    heading: 'id',
    type: 'text',
    required: false,
    help: 'Id of a customer who is already here: the row changes her. Empty, or of another install: one with the same name and the same way to reach her, else a new one.',
  },
  { heading: 'name', type: 'text', required: true, help: `Name, at most ${LONGEST.name} characters.` },
  { heading: 'reach', type: 'text', required: false, help: `How to reach them, at most ${LONGEST.reach} characters.` },
  { heading: 'note', type: 'text', required: false, help: `Note, at most ${LONGEST.note} characters.` },
]

export interface CustomerRow {
  id: string | null
  name: string
  reach: string
  note: string
}

/** A customer from its cells; null where something in them is wrong, which `report` is told. */
export function readCustomerRow(cells: Cells, report: ReportCell): CustomerRow | null {
  const read = cellReader(cells, report)
  read.need(['name'], 'customer')
  const id = read.id('id')
  const [name, reach, note] = [read.text('name', LONGEST.name), read.text('reach', LONGEST.reach), read.text('note', LONGEST.note)]
  return read.isSound() ? { id, name: name ?? '', reach: reach ?? '', note: note ?? '' } : null
}

export const customerValues = ({ id, name, reach, note }: CustomerRow): Map<string, CellValue> =>
  new Map<string, CellValue>([
    ['id', id],
    ['name', name],
    ['reach', reach === '' ? null : reach],
    ['note', note === '' ? null : note],
  ])
