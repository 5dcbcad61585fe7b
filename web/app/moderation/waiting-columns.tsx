import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { sayDate } from '../../../core/dates.ts'
import type { SightingRow } from '../../../core/pricing/record.ts'
import { Button } from '../parts/button.tsx'
import type { Column } from '../parts/ruled-table.tsx'
import { CONDITION_WORDS, noVoteWords, sayState } from '../prices/sighting-words.ts'

interface Setting {
  /** An amount as its store prints it. */
  say: (minor: number, storeId: string) => string
  thisYear: number
  personId: string
  busyId: string | null
  onJudge: (id: string, decision: 'accept' | 'dispute') => void
  onWithdraw: (row: SightingRow) => void
}

/** What waits: the price and where, who says so, why it waits, what can be done. The product opens its whole record. */
export function waitingColumns(setting: Setting): Array<Column<SightingRow>> {
  const { say, thisYear } = setting
  return [
    { key: 'product', head: 'Product', rowHead: true, phone: 'lead', cell: productCell },
    { key: 'price', head: 'Price', num: true, phone: 'figure', cell: (row) => say(row.priceMinor, row.storeId) },
    { key: 'where', head: 'Seen', cell: (row) => whereWords(row, thisYear) },
    {
      key: 'by',
      head: 'Reported by',
      cell: ({ reporterName, imported }) => (imported ? `a list, brought in by ${reporterName}` : reporterName),
    },
    { key: 'why', head: 'Why it waits', phone: 'below', cell: (row) => <Why row={row} thisYear={thisYear} /> },
    { key: 'act', head: 'Your word', end: true, phone: 'acts', cell: (row) => <Acts row={row} {...setting} /> },
  ]
}

/** Opens the record at this sighting. */
const productCell = ({ id, productId, productName }: SightingRow): ReactElement => (
  <Link to="/prices/$productId" params={{ productId }} hash={`s-${id}`}>
    {productName}
  </Link>
)

const whereWords = ({ storeName, seenOn, condition }: SightingRow, thisYear: number): string =>
  `${storeName}, ${sayDate(seenOn, thisYear)}, ${CONDITION_WORDS[condition]}`

const Why = ({ row, thisYear }: { row: SightingRow; thisYear: number }): ReactElement => (
  <>
    <span className="phone-only">
      {whereWords(row, thisYear)}, by {row.reporterName}.{' '}
    </span>
    {sayState(row)}
    {row.doubt && <span className="note doubt-words">{row.doubt.words}</span>}
  </>
)

function Acts({ row, say, personId, busyId, onJudge, onWithdraw }: Setting & { row: SightingRow }): ReactElement {
  const name = `${row.productName}, ${say(row.priceMinor, row.storeId)} at ${row.storeName}`
  const busy = busyId === row.id
  const none = noVoteWords(row, personId)
  const act = (decision: 'accept' | 'dispute', words: string): ReactElement => (
    <Button small busy={busy} aria-label={`${words}: ${name}`} onClick={() => onJudge(row.id, decision)}>
      {words}
    </Button>
  )
  return (
    <span className="votes">
      {none !== null && <span className="note">{none}</span>}
      {none === null && row.myVote !== null && (
        <span className="note">{row.myVote === 'confirm' ? 'you accepted it' : 'you disputed it'}</span>
      )}
      {row.oneMore && <span className="note">{row.oneMore}</span>}
      {none === null && row.myVote !== 'confirm' && act('accept', 'Accept')}
      {none === null && row.myVote !== 'dispute' && act('dispute', 'Dispute')}
      <Button small busy={busy} aria-label={`Withdraw: ${name}`} onClick={() => onWithdraw(row)}>
        Withdraw
      </Button>
    </span>
  )
}
