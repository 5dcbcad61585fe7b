import { useState, type ReactElement } from 'react'
import { sayDate, yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { SightingRow } from '../../../core/pricing/record.ts'
import { isAccepted } from '../../../core/pricing/sighting.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { SaleSign } from '../parts/prices.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useCurrency, usePerson, useToday } from '../session/session.ts'
import { CONDITION_WORDS, EVIDENCE_WORDS, isSale, sayState } from './sighting-words.ts'
import { useSightingAct } from './use-sighting-act.ts'
import { VoteButtons } from './vote-buttons.tsx'

/** Every sighting behind the figures, newest first; what waits is hatched and says why. */
export function SightingsTable({ sightings }: { sightings: readonly SightingRow[] }): ReactElement {
  const currency = useCurrency()
  const person = usePerson()
  const thisYear = yearOf(useToday())
  const act = useSightingAct()
  const [asked, setAsked] = useState<SightingRow | null>(null)
  const say = (minor: number): string => sayMoney(minor, currency)
  const columns: Array<Column<SightingRow>> = [
    {
      key: 'price',
      head: 'Price',
      num: true,
      rowHead: true,
      phone: 'figure',
      cell: (row) => (
        <span id={`s-${row.id}`} tabIndex={-1}>
          {say(row.priceMinor)}
        </span>
      ),
    },
    {
      key: 'store',
      head: 'Store',
      phone: 'lead',
      cell: (row) => (
        <>
          {row.storeName}{' '}
          <span className="phone-only">
            · <time dateTime={row.seenOn}>{sayDate(row.seenOn, thisYear)}</time>
          </span>
        </>
      ),
    },
    { key: 'day', head: 'Day', cell: (row) => <time dateTime={row.seenOn}>{sayDate(row.seenOn, thisYear)}</time> },
    {
      key: 'kind',
      head: 'Kind',
      phone: 'below',
      cell: (row) => (
        <>
          {isSale(row.condition) ? <SaleSign words={CONDITION_WORDS[row.condition]} /> : CONDITION_WORDS[row.condition]}
          <span className="phone-only">
            {row.lastDay && ` to ${sayDate(row.lastDay, thisYear)}`} · {sayState(row)}
          </span>
        </>
      ),
    },
    {
      key: 'regular',
      head: 'Regular, on the tag',
      num: true,
      cell: (row) => (row.printedRegularMinor === null ? '' : say(row.printedRegularMinor)),
    },
    {
      key: 'last',
      head: 'Last day',
      cell: (row) =>
        row.lastDay ? <time dateTime={row.lastDay}>{sayDate(row.lastDay, thisYear)}</time> : isSale(row.condition) ? 'not stated' : '',
    },
    {
      key: 'evidence',
      head: 'Evidence',
      cell: (row) => (row.note ? `${EVIDENCE_WORDS[row.evidence]}: ${row.note}` : EVIDENCE_WORDS[row.evidence]),
    },
    { key: 'by', head: 'Reported by', cell: (row) => row.reporterName },
    {
      key: 'state',
      head: 'State',
      cell: (row) => (
        <>
          {sayState(row)}
          {row.doubt && !isAccepted(row) && !row.withdrawn && <span className="note doubt-words">{row.doubt.words}</span>}
        </>
      ),
    },
    {
      key: 'act',
      head: <span className="sr">Your word</span>,
      phone: 'state',
      cell: (row) =>
        row.reporterId === person.id && !row.withdrawn ? (
          <Button small aria-label={`Withdraw ${say(row.priceMinor)} at ${row.storeName}`} onClick={() => setAsked(row)}>
            Withdraw
          </Button>
        ) : (
          <VoteButtons
            sighting={row}
            name={`${say(row.priceMinor)} at ${row.storeName}, ${sayDate(row.seenOn, thisYear)}`}
            busy={act.isPending && act.variables.id === row.id}
            onAct={(name) => act.mutate({ id: row.id, act: name })}
          />
        ),
    },
  ]
  return (
    <>
      {!asked && <ErrorNotice error={act.error} />}
      <RuledTable
        caption="Sightings, newest first"
        columns={columns}
        rows={sightings}
        rowKey={({ id }) => id}
        isHeld={(row) => !isAccepted(row)}
      />
      <Dialog
        open={asked !== null}
        title={asked ? `Withdraw ${say(asked.priceMinor)} at ${asked.storeName}?` : ''}
        onClose={() => setAsked(null)}
        actions={
          <>
            <Button onClick={() => setAsked(null)}>Leave it</Button>
            <Button
              look="main"
              busy={act.isPending}
              onClick={() => asked && act.mutate({ id: asked.id, act: 'withdraw' }, { onSuccess: () => setAsked(null) })}
            >
              Withdraw it
            </Button>
          </>
        }
      >
        <p>
          It stays in the record, marked as withdrawn, and counts for nothing. This cannot be undone; a right price is posted as a new
          sighting.
        </p>
        <ErrorNotice error={act.error} />
      </Dialog>
    </>
  )
}
