import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { Link, useNavigate, useSearch } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { getBoard } from '../client/sightings.ts'
import { Button } from '../parts/button.tsx'
import { MoreRows } from '../parts/more-rows.tsx'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { BoardFilters } from './board-filters.tsx'
import type { BoardSearch } from './board-search.ts'
import { BoardTable } from './board-table.tsx'
import './prices.css'

/** Rows of one reading. A phone shows about seven at once; a desk about twenty. */
const PAGE = 40

/** Newest accepted sightings, one row a product and store. */
export function PricesScreen(): ReactElement {
  const search = useSearch({ from: '/prices' })
  const navigate = useNavigate({ from: '/prices' })
  const [shown, setShown] = useState(PAGE)
  const board = useQuery({
    queryKey: ['board', search, shown],
    queryFn: () => getBoard({ kind: search.kind, storeId: search.store, q: search.q, limit: shown }),
    placeholderData: keepPreviousData,
  })
  const change = (next: BoardSearch): void => {
    setShown(PAGE)
    void navigate({ search: next, replace: true })
  }
  const rows = board.data?.rows ?? []
  return (
    <Screen
      title="Prices"
      below="Newest first, as seen on the date; not an offer by the store."
      actions={
        <Link to="/post" search={{}} className="btn main">
          Post a sighting
        </Link>
      }
    >
      <BoardFilters search={search} onChange={change} />
      <ErrorNotice error={board.error} onRetry={() => void board.refetch()} />
      {board.isPending && <LoadingRows rows={10} what="the prices" />}
      {board.data && rows.length === 0 && <NoPrices filtered={Boolean(search.kind ?? search.store ?? search.q)} onAll={() => change({})} />}
      {rows.length > 0 && <BoardTable rows={rows} />}
      {rows.length > 0 && (
        <MoreRows
          shown={rows.length}
          total={board.data?.total ?? 0}
          page={PAGE}
          busy={board.isFetching}
          onMore={() => setShown(shown + PAGE)}
        />
      )}
    </Screen>
  )
}

function NoPrices({ filtered, onAll }: { filtered: boolean; onAll: () => void }): ReactElement {
  if (filtered) return <Empty action={<Button onClick={onAll}>Show every price</Button>}>No sighting matches these filters.</Empty>
  return (
    <Empty
      action={
        <Link to="/post" search={{}} className="btn">
          Post the first one
        </Link>
      }
    >
      No sightings yet.
    </Empty>
  )
}
