import type { ReactElement } from 'react'
import { csvColumns, type CsvColumn } from '../../../core/catalog/csv-columns.ts'
import { kindInText, type Kind } from '../../../core/catalog/kinds.ts'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'

const COLUMNS: Array<Column<CsvColumn>> = [
  { key: 'heading', head: 'Column', rowHead: true, phone: 'lead', cell: ({ heading }) => heading },
  { key: 'needed', head: 'Needed', phone: 'figure', cell: ({ required }) => (required ? 'needed' : 'may be empty') },
  { key: 'help', head: 'What a cell holds', phone: 'below', cell: ({ help }) => help },
]

/** Every column of a kind with the words and limits its cells may have: what the template alone cannot say. */
export function ColumnGuide({ kind }: { kind: Kind }): ReactElement {
  return (
    <details className="column-guide">
      <summary>Columns of {kindInText(kind)}, and what their cells may hold</summary>
      <RuledTable caption={`Columns of ${kindInText(kind)}`} columns={COLUMNS} rows={csvColumns(kind)} rowKey={({ heading }) => heading} />
      <p className="help">
        Numbers stand without their unit, which the name of the column ends with. Only the needed columns must be there, in any order.
      </p>
    </details>
  )
}
