import type { ReactElement } from 'react'
import { yearOf, type CivilDate } from '../../../core/dates.ts'
import { sayDays, sayPlan, sayRun } from '../../../core/pricing/sale-time-words.ts'
import type { SaleCalendarRow, SaleTime } from '../../../core/pricing/sale-time.ts'
import type { Store } from '../../../core/catalog/store.ts'
import { Button } from '../parts/button.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'

interface Props {
  rows: readonly SaleCalendarRow[]
  asOf: CivilDate
  stores: readonly Store[]
  /** Absent where the viewer may not change any. */
  onChange?: ((saleTime: SaleTime) => void) | undefined
  onRemove?: ((saleTime: SaleTime) => void) | undefined
}

/** Past runs that are told in a row; the newest say most. */
const TOLD_RUNS = 2

/** Each sale time with its next days and what the record says of the last ones. */
export function SaleTimeRows({ rows, asOf, stores, onChange, onRemove }: Props): ReactElement {
  const year = yearOf(asOf)
  const nameOf = (id: string): string => stores.find((store) => store.id === id)?.name ?? 'a store'
  const where = ({ storeIds }: SaleTime): string => (storeIds.length === 0 ? 'every store' : storeIds.map(nameOf).join(', '))
  const columns: Array<Column<SaleCalendarRow>> = [
    {
      key: 'name',
      head: 'Sale time',
      rowHead: true,
      phone: 'lead',
      cell: ({ saleTime }) => (
        <>
          {saleTime.name}
          <p className="note">{sayPlan(saleTime)}</p>
          {saleTime.note && <p className="note">{saleTime.note}</p>}
        </>
      ),
    },
    {
      key: 'next',
      head: 'Next',
      phone: 'below',
      cell: ({ saleTime, coming, past }) => (
        <>
          <Coming runs={coming} year={year} />
          <div className="sale-time-more">
            <p>At {where(saleTime)}</p>
            <Past row={past} year={year} />
          </div>
        </>
      ),
    },
    { key: 'stores', head: 'Where', cell: ({ saleTime }) => where(saleTime) },
    { key: 'record', head: 'What members reported', cell: ({ past }) => <Past row={past} year={year} /> },
    ...(onChange && onRemove
      ? [
          {
            key: 'acts',
            head: <span className="sr">Change</span>,
            end: true,
            phone: 'acts' as const,
            cell: ({ saleTime }: SaleCalendarRow) => (
              <>
                <Button small onClick={() => onChange(saleTime)}>
                  Change<span className="sr"> {saleTime.name}</span>
                </Button>{' '}
                <Button small look="plain" onClick={() => onRemove(saleTime)}>
                  Take out<span className="sr"> {saleTime.name}</span>
                </Button>
              </>
            ),
          },
        ]
      : []),
  ]
  return <RuledTable caption="Sale times" columns={columns} rows={rows} rowKey={({ saleTime }) => saleTime.id} />
}

function Coming({ runs, year }: { runs: SaleCalendarRow['coming']; year: number }): ReactElement {
  const [next] = runs
  if (!next) return <>not in the coming year</>
  return (
    <>
      {sayDays(next, year)}
      {runs.length > 1 && <span className="note"> and {runs.length - 1} more within a year</span>}
    </>
  )
}

function Past({ row, year }: { row: SaleCalendarRow['past']; year: number }): ReactElement {
  if (row.length === 0) return <>Nothing on record reaches back to one yet.</>
  return (
    <ul className="sale-runs">
      {row.slice(0, TOLD_RUNS).map((run) => (
        <li key={run.first}>{sayRun(run, year)}</li>
      ))}
    </ul>
  )
}
