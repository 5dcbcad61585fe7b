import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { civilDateAt, sayWeekday, yearOf } from '../../../core/dates.ts'
import type { DataSet } from '../../../core/exchange/data-set.ts'
import type { ImportView } from '../../../core/exchange/import-view.ts'
import { listImports } from '../client/imports.ts'
import { Button } from '../parts/button.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useInstall, useToday } from '../session/session.ts'
import { endWords, fileWords, progressWords } from './import-words.ts'

/** While one is under way its line moves on by itself. */
const LOOK_MS = 2_000

interface Props {
  /** Of what; absent: of everything. */
  only?: DataSet
  shown: string | null
  onShow: (id: string) => void
}

/** What was imported in the last thirty days, by whom, and what came of it. */
export function PastImports({ only, shown, onShow }: Props): ReactElement {
  const past = useQuery({
    queryKey: ['imports'],
    queryFn: listImports,
    refetchInterval: ({ state }) => (state.data?.some(({ endedAt }) => endedAt === null) ? LOOK_MS : false),
  })
  const rows = past.data?.filter(({ set }) => only === undefined || set === only)
  const { timeZone } = useInstall()
  const thisYear = yearOf(useToday())
  const columns: Array<Column<ImportView>> = [
    { key: 'file', head: 'File', rowHead: true, phone: 'lead', cell: fileWords },
    {
      key: 'day',
      head: 'Day',
      phone: 'figure',
      cell: ({ createdAt }) => sayWeekday(civilDateAt(Date.parse(createdAt), timeZone), thisYear),
    },
    { key: 'by', head: 'By', cell: ({ startedBy }) => startedBy ?? '' },
    { key: 'end', head: 'What came of it', phone: 'below', cell: (view) => (view.endedAt === null ? progressWords(view) : endWords(view)) },
    {
      key: 'act',
      head: 'Look',
      end: true,
      phone: 'acts',
      cell: (view) =>
        view.id === shown ? (
          'shown above'
        ) : (
          <Button small aria-label={`Open the import of ${fileWords(view)}`} onClick={() => onShow(view.id)}>
            Open
          </Button>
        ),
    },
  ]
  return (
    <section className="form" aria-labelledby="past-head">
      <div className="sechead">
        <h2 id="past-head">Imports</h2>
        <p className="quiet">of the last 30 days</p>
      </div>
      <ErrorNotice error={past.error} onRetry={() => void past.refetch()} retryWords="Read again" />
      {past.isPending && <LoadingRows rows={3} what="the imports" />}
      {rows?.length === 0 && <Empty>Nothing has been imported yet.</Empty>}
      {rows && rows.length > 0 && <RuledTable caption="Imports" columns={columns} rows={rows} rowKey={({ id }) => id} />}
    </section>
  )
}
