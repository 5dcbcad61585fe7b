import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { Link, useNavigate, useSearch } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import { sayAudit, sayChanges } from '../../../core/audit/say-audit.ts'
import { getTrail, trailFileAddress, type TrailEntry, type TrailFilter } from '../client/trail.ts'
import { MoreRows } from '../parts/more-rows.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { sayInstant } from '../parts/say-instant.ts'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useInstall, useToday } from '../session/session.ts'
import { useStoreCurrency } from '../stores/store-currency.ts'
import { TrailFilters } from './trail-filters.tsx'
import './trail.css'

const PAGE = 50

/** Who changed what, newest first. There is nothing here to change. */
export function TrailScreen(): ReactElement {
  const search = useSearch({ from: '/people/trail' })
  const navigate = useNavigate({ from: '/people/trail' })
  const [shown, setShown] = useState(PAGE)
  const { timeZone } = useInstall()
  const thisYear = yearOf(useToday())
  const trail = useQuery({
    queryKey: ['trail', search, shown],
    queryFn: () => getTrail(search, shown),
    placeholderData: keepPreviousData,
    staleTime: 0,
  })
  const change = (next: TrailFilter): void => {
    setShown(PAGE)
    void navigate({ search: next, replace: true })
  }
  const items = trail.data?.items ?? []
  const filtered = Object.keys(search).length > 0
  return (
    <Screen
      title="Who changed what"
      below="Nothing here can be changed or deleted, by anybody. Of customers and people it keeps no details."
      actions={
        <>
          <a className="btn" href={trailFileAddress(search)} download>
            {filtered ? 'Download these as CSV' : 'Download as CSV'}
          </a>
          <Link to="/people" className="btn">
            People
          </Link>
        </>
      }
    >
      <TrailFilters search={search} onChange={change} />
      <ErrorNotice error={trail.error} onRetry={() => void trail.refetch()} />
      {trail.isPending && <LoadingRows rows={10} what="the trail" />}
      {trail.data && items.length === 0 && <Empty>{filtered ? 'Nothing was changed like that.' : 'Nothing was changed yet.'}</Empty>}
      {items.length > 0 && (
        <>
          <RuledTable caption="Changes, newest first" columns={columnsOf(timeZone, thisYear)} rows={items} rowKey={({ id }) => id} />
          <MoreRows
            shown={items.length}
            total={trail.data?.total ?? 0}
            page={PAGE}
            busy={trail.isFetching}
            onMore={() => setShown(shown + PAGE)}
          />
        </>
      )}
    </Screen>
  )
}

const columnsOf = (timeZone: string, thisYear: number): Array<Column<TrailEntry>> => [
  {
    key: 'what',
    head: 'What was done',
    rowHead: true,
    phone: 'lead',
    cell: (entry) => <span className="trail-what">{sayAudit(entry)}</span>,
  },
  { key: 'at', head: 'When', phone: 'below', cell: ({ at }) => <time>{sayInstant(at, timeZone, thisYear)}</time> },
  { key: 'changes', head: 'Changed', phone: 'state', cell: (entry) => <Changes entry={entry} /> },
]

/** More fields than this are a new thing, told by the sentence already; the rest opens on asking. */
const FEW = 4

function Changes({ entry: { changes, subject } }: { entry: TrailEntry }): ReactElement | null {
  const currencyOf = useStoreCurrency()
  if (changes.length === 0) return null
  const list = (
    <ul className="trail-changes note">
      {sayChanges(changes, currencyOf(subject.kind === 'store' && subject.id !== null ? subject.id : '')).map((said) => (
        <li key={said}>{said}</li>
      ))}
    </ul>
  )
  if (changes.length <= FEW) return list
  return (
    <details className="note">
      <summary>{changes.length} fields</summary>
      {list}
    </details>
  )
}
