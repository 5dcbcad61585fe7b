import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { sayDate, yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { BoardRow } from '../../../core/pricing/record.ts'
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
  const columns: Array<Column<BoardRow>> = [
    {
      key: 'product',
      head: 'Product',
      rowHead: true,
      phone: 'lead',
      cell: ({ sighting, kind }) => (
        <>
          <Link to="/prices/$productId" params={{ productId: sighting.productId }}>
            {sighting.productName}
          </Link>{' '}
          <span className="note">{KIND_NAMES[kind]}</span>
        </>
      ),
    },
    {
      key: 'price',
      head: 'Price',
      num: true,
      phone: 'figure',
      cell: ({ sighting }) => (
        <Link to="/prices/$productId" params={{ productId: sighting.productId }} hash={`s-${sighting.id}`} className="figure-link">
          {sayMoney(sighting.priceMinor, currency)}
        </Link>
      ),
    },
    {
      key: 'standing',
      head: 'How it stands',
      phone: 'below',
      cell: (row) => (
        <>
          {isSale(row.sighting.condition) && !row.over ? (
            <SaleSign until={row.sighting.lastDay} thisYear={thisYear} words={CONDITION_WORDS[row.sighting.condition]} />
          ) : (
            CONDITION_WORDS[row.sighting.condition]
          )}
          {row.sighting.condition !== 'shelf' || row.underRegular !== 0 ? <> · {sayStanding(row, currency, thisYear)}</> : null}
          <span className="phone-only"> · {row.sighting.storeName}</span>
        </>
      ),
    },
    { key: 'store', head: 'Store', cell: ({ sighting }) => sighting.storeName },
    { key: 'day', head: 'Seen', cell: ({ sighting }) => <time dateTime={sighting.seenOn}>{sayDate(sighting.seenOn, thisYear)}</time> },
    { key: 'state', head: 'How sure', cell: ({ sighting }) => sayState(sighting) },
    {
      key: 'act',
      head: <span className="sr">Your word</span>,
      phone: 'state',
      cell: ({ sighting }) => (
        <VoteButtons
          sighting={sighting}
          name={`${sighting.productName} at ${sighting.storeName}, ${sayMoney(sighting.priceMinor, currency)}`}
          busy={act.isPending && act.variables.id === sighting.id}
          onAct={(name) => act.mutate({ id: sighting.id, act: name })}
        />
      ),
    },
  ]
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
