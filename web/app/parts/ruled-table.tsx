import type { ReactElement, ReactNode } from 'react'

export interface Column<Row> {
  key: string
  head: ReactNode
  /** Numbers stand right. */
  num?: boolean
  /** Stands at the end of the row: what can be done there. */
  end?: boolean
  /** The cell names its row. */
  rowHead?: boolean
  /**
   * Where the cell goes on a phone: a row becomes two lines of two. "acts": what can be done, on a line of its own where it has buttons, so that
   * they do not squeeze the second line. "picture": before both lines. Absent: not shown there.
   */
  phone?: 'picture' | 'lead' | 'figure' | 'below' | 'state' | 'acts'
  cell: (row: Row) => ReactNode
}

interface Props<Row> {
  caption: string
  columns: ReadonlyArray<Column<Row>>
  rows: readonly Row[]
  rowKey: (row: Row) => string
  /** Hatched: held back, not counted. */
  isHeld?: (row: Row) => boolean
  children?: ReactNode
}

const alignOf = ({ num, end }: { num?: boolean; end?: boolean }): string | undefined => (num ? 'num' : end ? 'end' : undefined)

/** Hairline under a row, numbers right; on a phone a row becomes two lines: what and how much, from where and how sure. */
export function RuledTable<Row>({ caption, columns, rows, rowKey, isHeld, children }: Props<Row>): ReactElement {
  return (
    <table className="ruled folding">
      <caption className="sr">{caption}</caption>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column.key} scope="col" className={alignOf(column)}>
              {column.head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={rowKey(row)} className={isHeld?.(row) ? 'held' : undefined}>
            {columns.map((column) => {
              const common = { key: column.key, className: alignOf(column), 'data-phone': column.phone ?? 'none' }
              const { key, ...rest } = common
              return column.rowHead ? (
                <th key={key} scope="row" {...rest}>
                  {column.cell(row)}
                </th>
              ) : (
                <td key={key} {...rest}>
                  {column.cell(row)}
                </td>
              )
            })}
          </tr>
        ))}
      </tbody>
      {children}
    </table>
  )
}
