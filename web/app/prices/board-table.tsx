import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { sayDate, yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { BoardRow } from '../../../core/pricing/record.ts'
import type { SightingAct } from '../client/sightings.ts'
import { SaleSign } from '../parts/prices.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useCurrency, useToday } from '../session/session.ts'
import { CONDITION_WORDS, isSale, sayStanding, sayState } from './sighting-words.ts'
import { useSightingAct } from './use-sighting-act.ts'
import { VoteButtons } from './vote-buttons.tsx'

/** One row a product and store: what, where, how much, how it stands, and your word on it. */
export function BoardTable({ rows }: { rows: readonly BoardRow[] }): ReactElement {
  const currency = useCurrency()
  const thisYear = yearOf(useToday())
  const act = useSightingAct()
  const busyId = act.isPending ? act.variables.id : null
  const columns = boardColumns({ currency, thisYear, busyId, onAct: (id, name) => act.mutate({ id, act: name }) })
  return (
    <>
      <ErrorNotice error={act.error} />
      <RuledTable
        caption="Newest price of each product at each store"
        columns={columns}
        rows={rows}
        rowKey={({ sighting }) => sighting.id}
      />
    </>
  )
}

interface Setting {
  currency: string
  thisYear: number
  busyId: string | null
  onAct: (id: string, act: SightingAct) => void
}

function boardColumns(setting: Setting): Array<Column<BoardRow>> {
  const { currency, thisYear } = setting
  return [
    { key: 'product', head: 'Product', rowHead: true, phone: 'lead', cell: productCell },
    { key: 'price', head: 'Price', num: true, phone: 'figure', cell: (row) => priceCell(row, currency) },
    { key: 'standing', head: 'How it stands', phone: 'below', cell: (row) => standingCell(row, currency, thisYear) },
    { key: 'store', head: 'Store', cell: ({ sighting }) => sighting.storeName },
    { key: 'day', head: 'Seen', cell: ({ sighting }) => sayDate(sighting.seenOn, thisYear) },
    { key: 'state', head: 'How sure', cell: ({ sighting }) => sayState(sighting) },
    { key: 'act', head: 'Your word', end: true, phone: 'state', cell: (row) => actCell(row, setting) },
  ]
}

const productCell = ({ sighting, kind }: BoardRow): ReactElement => (
  <>
    <Link to="/prices/$productId" params={{ productId: sighting.productId }}>
      {sighting.productName}
    </Link>{' '}
    <span className="note">{KIND_NAMES[kind]}</span>
  </>
)

/** A price opens to the sighting behind it. */
const priceCell = ({ sighting }: BoardRow, currency: string): ReactElement => (
  <Link to="/prices/$productId" params={{ productId: sighting.productId }} hash={`s-${sighting.id}`} className="figure-link">
    {sayMoney(sighting.priceMinor, currency)}
  </Link>
)

const standingCell = (row: BoardRow, currency: string, thisYear: number): ReactElement => {
  const { condition, lastDay, storeName } = row.sighting
  return (
    <>
      {isSale(condition) && !row.over && (
        <>
          <SaleSign until={lastDay} thisYear={thisYear} words={CONDITION_WORDS[condition]} /> ·{' '}
        </>
      )}
      {sayStanding(row, currency, thisYear)}
      <span className="phone-only"> · {storeName}</span>
    </>
  )
}

const actCell = ({ sighting }: BoardRow, { currency, busyId, onAct }: Setting): ReactElement => (
  <VoteButtons
    sighting={sighting}
    name={`${sighting.productName} at ${sighting.storeName}, ${sayMoney(sighting.priceMinor, currency)}`}
    busy={busyId === sighting.id}
    onAct={(name) => onAct(sighting.id, name)}
  />
)
