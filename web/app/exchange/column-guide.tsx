import type { ReactElement } from 'react'
import type { Kind } from '../../../core/catalog/kinds.ts'
import type { ExchangeColumn } from '../../../core/exchange/column.ts'
import { columnsOf } from '../../../core/exchange/columns-of.ts'
import type { DataSet } from '../../../core/exchange/data-set.ts'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'

const COLUMNS: Array<Column<ExchangeColumn>> = [
  { key: 'heading', head: 'Column', rowHead: true, phone: 'lead', cell: ({ heading }) => heading },
  { key: 'needed', head: 'Needed', phone: 'figure', cell: ({ required }) => (required ? 'needed' : 'may be empty') },
  { key: 'help', head: 'What a cell holds', phone: 'below', cell: ({ help }) => help },
]

/** Every column of a file with the words and limits its cells may have: what the template alone cannot say. */
export function ColumnGuide({ set, kind, words }: { set: DataSet; kind: Kind | null; words: string }): ReactElement {
  return (
    <details className="column-guide">
      <summary>Columns of {words}, and what their cells may hold</summary>
      <RuledTable caption={`Columns of ${words}`} columns={COLUMNS} rows={columnsOf(set, kind)} rowKey={({ heading }) => heading} />
      <p className="help">
        Numbers stand without their unit, which the name of the column ends with. Only the needed columns must be there, in any order.
      </p>
    </details>
  )
}
