import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { civilDateAt, sayDate, yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import { BUILD_LETTERS, type QuoteState } from '../../../core/quote/draft.ts'
import type { QuoteListRow } from '../../../core/quote/quote-view.ts'
import { listQuotes } from '../client/quotes.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useInstall, useToday } from '../session/session.ts'
import { DiscardFromList } from './discard-from-list.tsx'
import { STATE_WORDS } from './saving-words.ts'
import './quotes.css'

const STATES = (Object.keys(STATE_WORDS) as QuoteState[]).map((value) => ({ value, label: STATE_WORDS[value] }))
const NewQuote = (): ReactElement => (
  <Link to="/quotes/new" className="btn main">
    New quote
  </Link>
)

/** Every quote of the install, newest first, by state and by words. */
export function QuotesScreen(): ReactElement {
  const [state, setState] = useState<QuoteState | ''>('')
  const [q, setQ] = useState('')
  const words = q.trim()
  const quotes = useQuery({
    queryKey: ['quotes', state, words],
    queryFn: () => listQuotes({ state: state === '' ? undefined : state, q: words }),
    placeholderData: keepPreviousData,
    staleTime: 0,
  })
  const rows = quotes.data?.rows ?? []
  const filtered = state !== '' || words !== ''
  return (
    <Screen title="Quotes" actions={<NewQuote />}>
      <search className="form-row list-filter">
        <TextField label="Customer, title or number" type="search" value={q} onChange={setQ} />
        <SelectField label="State" value={state} none="any" options={STATES} onChange={setState} />
      </search>
      {quotes.isError && <ErrorNotice error={quotes.error} onRetry={() => void quotes.refetch()} />}
      {quotes.isPending && <LoadingRows what="the quotes" />}
      {quotes.data &&
        rows.length === 0 &&
        (filtered ? <Empty>No quote matches.</Empty> : <Empty action={<NewQuote />}>No quotes yet. Make the first one.</Empty>)}
      {rows.length > 0 && <QuoteTable rows={rows} caption="Quotes" />}
    </Screen>
  )
}

/** Quotes as rows: whose, what, how it stands, what the builds cost at the newest version. */
export function QuoteTable({
  rows,
  caption,
  withCustomer = true,
}: {
  rows: QuoteListRow[]
  caption: string
  withCustomer?: boolean
}): ReactElement {
  const { currency, timeZone } = useInstall()
  const year = yearOf(useToday())
  return <RuledTable caption={caption} rows={rows} rowKey={(row) => row.id} columns={columnsOf(currency, year, timeZone, withCustomer)} />
}

function columnsOf(currency: string, year: number, zone: string, withCustomer: boolean): Array<Column<QuoteListRow>> {
  const name: Column<QuoteListRow> = {
    key: 'title', head: withCustomer ? 'Customer' : 'Quote', rowHead: true, phone: 'lead',
    cell: (row) => (
      <Link to="/quotes/$quoteId" params={{ quoteId: row.id }} className="row-link">
        {withCustomer ? row.customerName : row.title || 'No title yet'}
      </Link>
    ),
  } // prettier-ignore
  return [
    name,
    ...(withCustomer
      ? [{ key: 'what', head: 'Title', phone: 'below' as const, cell: (row: QuoteListRow) => row.title || 'No title yet' }]
      : []),
    { key: 'number', head: 'Number', cell: (row) => row.number ?? 'not issued' },
    { key: 'state', head: 'State', phone: 'state', cell: (row) => <StateWords row={row} year={year} /> },
    { key: 'saved', head: 'Saved', cell: (row) => sayDate(civilDateAt(Date.parse(row.savedAt), zone), year) },
    { key: 'advisor', head: 'Advisor', cell: (row) => row.advisor },
    { key: 'today', head: 'Totals when issued', num: true, phone: 'figure', cell: (row) => <Totals row={row} currency={currency} /> },
    {
      key: 'acts',
      head: <span className="sr">What can be done</span>,
      end: true,
      phone: 'acts',
      cell: (row) => <DiscardFromList row={row} />,
    },
  ]
}

function StateWords({ row, year }: { row: QuoteListRow; year: number }): ReactElement {
  const until = row.state === 'issued' && row.standsUntil ? `, until ${sayDate(row.standsUntil, year)}` : ''
  return (
    <span className={row.state === 'accepted' ? 'state-accepted' : undefined}>
      {STATE_WORDS[row.state]}
      {row.acceptedLetter && ` ${row.acceptedLetter}`}
      {until}
    </span>
  )
}

function Totals({ row, currency }: { row: QuoteListRow; currency: string }): ReactElement {
  if (row.todayMinor.length === 0) return <span className="quiet">none yet</span>
  return (
    <ul className="totals">
      {row.todayMinor.map((minor, index) => (
        <li key={BUILD_LETTERS[index]}>
          <span className="quiet">{BUILD_LETTERS[index]}</span> {minor === null ? 'no total' : sayMoney(minor, currency)}
        </li>
      ))}
    </ul>
  )
}
