import type { ReactElement } from 'react'
import { sayDate, yearOf } from '../../../core/dates.ts'
import type { SetupView } from '../../../core/quote/quote-view.ts'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { useToday } from '../session/session.ts'
import { CopyButton } from './copy-button.tsx'
import { RenewSetupLink } from './renew-setup-link.tsx'

/** Setups as rows: whose tank, how far the checklist is, the link that hangs on it. */
export function SetupTable({ rows, caption }: { rows: SetupView[]; caption: string }): ReactElement {
  const year = yearOf(useToday())
  return <RuledTable caption={caption} columns={columnsOf(year)} rows={rows} rowKey={(row) => row.id} />
}

function columnsOf(year: number): ReadonlyArray<Column<SetupView>> {
  return [
    { key: 'who', head: 'Customer', rowHead: true, phone: 'lead', cell: (row) => <Owner row={row} /> },
    { key: 'quote', head: 'Quote', phone: 'below', cell: (row) => `${row.quoteNumber}, build ${row.letter}` },
    {
      key: 'started',
      head: 'Started',
      phone: 'state',
      cell: (row) => (row.startedOn ? sayDate(row.startedOn, year) : <span className="quiet">not started</span>),
    },
    { key: 'done', head: 'Steps done', num: true, phone: 'figure', cell: sayDone },
    { key: 'link', head: 'Setup link', cell: (row) => <SetupLink row={row} /> },
  ]
}

/** "16 of 25, 3 on a word": ticked where the log did not bear it out. */
function sayDone({ ticks, stepCount }: SetupView): string {
  const words = ticks.filter(({ onWord }) => onWord).length
  return `${ticks.length} of ${stepCount}${words === 0 ? '' : `, ${words} on a word`}`
}

/** On a phone, where the link's own column is not shown, the name opens it. */
function Owner({ row }: { row: SetupView }): ReactElement {
  if (!row.link) return <>{row.customerName}</>
  return (
    <a className="row-link" href={row.link} target="_blank" rel="noreferrer">
      {row.customerName}
    </a>
  )
}

function SetupLink({ row }: { row: SetupView }): ReactElement {
  if (!row.link) return <span className="quiet">no link: needs https</span>
  return (
    <span className="acts setup-link">
      <a className="btn small" href={row.link} target="_blank" rel="noreferrer">
        Open<span className="sr"> the setup of {row.customerName}</span>
      </a>
      <CopyButton text={row.link} what={`the setup link of ${row.customerName}`} />
      <RenewSetupLink setup={row} />
    </span>
  )
}
