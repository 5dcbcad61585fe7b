import type { ReactElement } from 'react'
import { sayDate } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { SightingRow } from '../../../core/pricing/record.ts'
import { isAccepted } from '../../../core/pricing/sighting.ts'
import type { SightingAct } from '../client/sightings.ts'
import { Button } from '../parts/button.tsx'
import { SaleSign } from '../parts/prices.tsx'
import type { Column } from '../parts/ruled-table.tsx'
import { CONDITION_WORDS, EVIDENCE_WORDS, goneWords, isSale, sayState } from './sighting-words.ts'
import { VoteButtons } from './vote-buttons.tsx'
import { WordNotTaken } from './word-not-taken.tsx'

interface Setting {
  currencyOf: (storeId: string) => string
  /** The install's own: others are told by their code. */
  home: string
  thisYear: number
  personId: string
  busyId: string | null
  errorAt: (id: string) => unknown
  onAct: (id: string, act: SightingAct) => void
  onWithdraw: (row: SightingRow) => void
}

/** The record's columns; on a phone a row is store, day and price over kind, state and what can be done. */
export function sightingColumns(setting: Setting): Array<Column<SightingRow>> {
  const { currencyOf, thisYear } = setting
  return [
    {
      key: 'price',
      head: 'Price',
      num: true,
      rowHead: true,
      phone: 'figure',
      cell: (row) => priceCell(row, currencyOf(row.storeId), setting.home),
    },
    { key: 'store', head: 'Store', phone: 'lead', cell: (row) => storeCell(row, thisYear) },
    { key: 'day', head: 'Day', cell: (row) => sayDate(row.seenOn, thisYear) },
    { key: 'kind', head: 'Kind', phone: 'below', cell: (row) => kindCell(row, setting) },
    {
      key: 'regular',
      head: 'Regular, on the tag',
      num: true,
      cell: ({ printedRegularMinor, storeId }) =>
        printedRegularMinor === null ? '' : sayMoney(printedRegularMinor, currencyOf(storeId), { home: setting.home }),
    },
    { key: 'last', head: 'Last day', cell: (row) => lastDayWords(row, thisYear) },
    { key: 'evidence', head: 'Evidence', cell: evidenceWords },
    { key: 'by', head: 'Reported by', cell: (row) => byWords(row) },
    { key: 'state', head: 'State', cell: (row) => stateCell(row, thisYear) },
    { key: 'act', head: 'Your word', end: true, phone: 'acts', cell: (row) => actCell(row, setting) },
  ]
}

const priceCell = (row: SightingRow, currency: string, home: string): ReactElement => (
  <span id={`s-${row.id}`} tabIndex={-1}>
    {sayMoney(row.priceMinor, currency, { home })}
  </span>
)

/** A list has no witness: who brought it in is named as such. */
const byWords = ({ reporterName, imported }: SightingRow): string => (imported ? `a list, brought in by ${reporterName}` : reporterName)

const evidenceWords = ({ evidence, note }: SightingRow): string =>
  note ? `${EVIDENCE_WORDS[evidence]}: ${note}` : EVIDENCE_WORDS[evidence]

const storeCell = (row: SightingRow, thisYear: number): ReactElement => (
  <>
    {row.storeName} <span className="phone-only">· {sayDate(row.seenOn, thisYear)}</span>
  </>
)

/** The kind; on a phone also who says so, on what evidence, how sure it is and why it waits. */
const kindCell = (row: SightingRow, setting: Setting): ReactElement => (
  <>
    {isSale(row.condition) ? <SaleSign words={CONDITION_WORDS[row.condition]} /> : CONDITION_WORDS[row.condition]}
    <span className="phone-only">{phoneWords(row, setting)}</span>
  </>
)

function phoneWords(row: SightingRow, { thisYear, currencyOf, home, personId }: Setting): string {
  const { lastDay, printedRegularMinor, evidence, note, reporterId, goneOn, goneBy } = row
  const words = [
    printedRegularMinor === null ? '' : `regular on the tag ${sayMoney(printedRegularMinor, currencyOf(row.storeId), { home })}`,
    reporterId === personId
      ? row.imported
        ? 'a list, brought in by you'
        : 'reported by you'
      : row.imported
        ? byWords(row)
        : `by ${row.reporterName}`,
    evidence === 'none' && !note ? '' : evidence === 'none' ? (note ?? '') : evidenceWords(row),
    goneOn ? goneWords(goneOn, thisYear, goneBy ?? []) : '',
    sayState(row),
    waits(row) ? (row.doubt?.words ?? '') : '',
  ]
  return `${lastDay ? ` to ${sayDate(lastDay, thisYear)}` : ''} · ${words.filter((word) => word !== '').join(' · ')}`
}

const lastDayWords = (row: SightingRow, thisYear: number): string =>
  row.lastDay ? sayDate(row.lastDay, thisYear) : isSale(row.condition) ? 'not stated' : ''

/** Doubted, and nobody has confirmed it yet. */
const waits = (row: SightingRow): boolean => row.doubt !== null && !isAccepted(row) && !row.withdrawn

const stateCell = (row: SightingRow, thisYear: number): ReactElement => (
  <>
    {row.goneOn && `${goneWords(row.goneOn, thisYear, row.goneBy ?? [])} · `}
    {sayState(row)}
    {waits(row) && <span className="note doubt-words">{row.doubt?.words}</span>}
  </>
)

function actCell(row: SightingRow, { currencyOf, home, thisYear, personId, busyId, errorAt, onAct, onWithdraw }: Setting): ReactElement {
  const name = `${sayMoney(row.priceMinor, currencyOf(row.storeId), { home })} at ${row.storeName}, ${sayDate(row.seenOn, thisYear)}`
  if (row.reporterId !== personId || row.withdrawn) {
    return (
      <span className="row-acts">
        <VoteButtons sighting={row} personId={personId} name={name} busy={busyId === row.id} onAct={(act) => onAct(row.id, act)} />
        <WordNotTaken error={errorAt(row.id)} />
      </span>
    )
  }
  return (
    <Button small aria-label={`Withdraw ${name}`} onClick={() => onWithdraw(row)}>
      Withdraw
    </Button>
  )
}
