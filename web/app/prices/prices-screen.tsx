import { keepPreviousData, useQuery, useQueryClient } from '@tanstack/react-query'
import { Link, useNavigate, useSearch } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { kindInText } from '../../../core/catalog/kinds.ts'
import { BOARD_COUNTED } from '../../../core/pricing/board.ts'
import { problemOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { MoreRows } from '../parts/more-rows.tsx'
import { OwnStoreMissing } from '../price-list/own-store-told.tsx'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import { useOnline } from '../parts/use-online.ts'
import { useInstall, usePerson } from '../session/session.ts'
import { regionsQuery } from '../stores/stores-query.ts'
import { BoardFilters } from './board-filters.tsx'
import { matchingRows, rowsInMemory } from './board-in-memory.ts'
import { BOARD_PAGE, boardQuery } from './board-query.ts'
import type { BoardSearch } from './board-search.ts'
import { BoardTable } from './board-table.tsx'
import { ListedBoard } from './listed-board.tsx'
import { WaitingTold } from './waiting-told.tsx'
import './prices.css'

const READ_BEFORE = 'These prices were read before. They are read again by themselves with the next signal.'

/** Newest accepted sightings, one row a product and store. */
export function PricesScreen(): ReactElement {
  const search = useSearch({ from: '/prices' })
  const navigate = useNavigate({ from: '/prices' })
  const [shown, setShown] = useState(BOARD_PAGE)
  const queries = useQueryClient()
  const online = useOnline()
  const person = usePerson()
  const regions = useQuery(regionsQuery)
  const board = useQuery({ ...boardQuery(search, shown), placeholderData: keepPreviousData })
  const change = (next: BoardSearch): void => {
    setShown(BOARD_PAGE)
    void navigate({ search: next, replace: true })
  }
  const cut = board.error !== null && problemOf(board.error).status === 0
  const kept =
    cut && !board.data ? matchingRows(rowsInMemory(queries), search, regions.data?.find(({ id }) => id === search.region)?.storeIds) : null
  const rows = kept ?? board.data?.rows ?? []
  const listed = board.data?.listed ?? []
  const isStore = useInstall().mode === 'store'
  return (
    <Screen
      title="Prices"
      below={isStore ? 'What our own list asks today.' : 'Newest first, as seen on the date; not an offer by the store.'}
      actions={
        <>
          <Link to="/prices/sale-calendar" className="btn">
            Sale calendar
          </Link>
          <Link to="/post" search={{}} className="btn main">
            Post a sighting
          </Link>
        </>
      }
    >
      <WaitingTold personId={person.id} />
      <OwnStoreMissing />
      <BoardFilters search={search} onChange={change} />
      <ErrorNotice error={board.error} onRetry={() => void board.refetch()}>
        {cut && rows.length > 0 && <p>{READ_BEFORE}</p>}
      </ErrorNotice>
      {!online && !board.error && (
        <Told kind="offline" title="No signal" live>
          <p>{READ_BEFORE}</p>
        </Told>
      )}
      {board.isPending && <LoadingRows rows={10} what="the prices" />}
      {board.data && rows.length === 0 && listed.length === 0 && (
        <NoPrices isStore={isStore} filtered={Boolean(search.kind ?? search.store ?? search.region ?? search.q)} onAll={() => change({})} />
      )}
      {search.kind && (
        <p className="note">
          <Link to="/watches" search={{ kind: search.kind }}>
            Watch for any {kindInText(search.kind)}
          </Link>
        </p>
      )}
      {listed.length > 0 && <ListedBoard listed={listed} />}
      {rows.length > 0 && <BoardTable rows={rows} />}
      {rows.length + listed.length > 0 && !kept && (
        <MoreRows
          shown={rows.length + listed.length}
          total={board.data?.total ?? 0}
          counted={BOARD_COUNTED}
          page={BOARD_PAGE}
          busy={board.isFetching}
          onMore={() => setShown(shown + BOARD_PAGE)}
        />
      )}
    </Screen>
  )
}

function NoPrices({ filtered, isStore, onAll }: { filtered: boolean; isStore: boolean; onAll: () => void }): ReactElement {
  if (filtered) return <Empty action={<Button onClick={onAll}>Show every price</Button>}>Nothing matches these filters.</Empty>
  if (isStore) return <Empty>Our price list has no price that is in force today.</Empty>
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
