import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { sayDate, yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { BoardRow } from '../../../core/pricing/record.ts'
import { isAccepted } from '../../../core/pricing/sighting.ts'
import type { SightingAct } from '../client/sightings.ts'
import { Button } from '../parts/button.tsx'
import { SaleSign } from '../parts/prices.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { NotKept } from '../post/not-kept.tsx'
import { PostedTold } from '../post/posted-told.tsx'
import type { Unsent } from '../post/unsent.ts'
import { useCurrency, usePerson, useToday } from '../session/session.ts'
import { useStoreCurrency } from '../stores/store-currency.ts'
import { storesQuery } from '../stores/stores-query.ts'
import { lowerElsewhere, type LowerElsewhere } from './lower-elsewhere.ts'
import { CONDITION_WORDS, isSale, sayRow, sayStanding } from './sighting-words.ts'
import { useBoardActs } from './use-board-acts.ts'
import { usePricesElsewhere } from './use-prices-elsewhere.ts'
import { VoteButtons } from './vote-buttons.tsx'
import { WordNotTaken } from './word-not-taken.tsx'

/** One row a product and store: what, where, how much, how it stands, and your word on it. */
export function BoardTable({ rows }: { rows: readonly BoardRow[] }): ReactElement {
  const currencyOf = useStoreCurrency()
  const home = useCurrency()
  const person = usePerson()
  const thisYear = yearOf(useToday())
  const stores = useQuery(storesQuery).data ?? []
  const { shown, posted, notKept, ...acts } = useBoardActs(rows)
  const there = Map.groupBy(usePricesElsewhere(shown), ({ productId }) => productId)
  const lower = (row: BoardRow): LowerElsewhere | null => lowerElsewhere(row, there.get(row.sighting.productId) ?? [], stores)
  return (
    <>
      {posted && posted.kind !== 'waits' && <PostedTold posted={posted} />}
      {notKept && <NotKept />}
      <RuledTable
        caption="Newest price of each product at each store"
        columns={boardColumns({ currencyOf, home, thisYear, personId: person.id, lower, ...acts })}
        rows={shown}
        rowKey={({ sighting }) => sighting.id}
        isHeld={({ sighting }) => !isAccepted(sighting)}
      />
      <p className="note">
        Prices are those on the tag, tax as each store prints it. “From” is the least known elsewhere today, tax counted.
      </p>
    </>
  )
}

interface Setting {
  currencyOf: (storeId: string) => string
  /** The install's own: others are told by their code. */
  home: string
  thisYear: number
  personId: string
  busyId: string | null
  lower: (row: BoardRow) => LowerElsewhere | null
  vote: (id: string, act: SightingAct) => void
  errorAt: (id: string) => unknown
  keptAt: (row: BoardRow) => Unsent | undefined
  mayRepeat: (row: BoardRow) => boolean
  repeat: (row: BoardRow) => void
}

function boardColumns(setting: Setting): Array<Column<BoardRow>> {
  const { currencyOf, thisYear } = setting
  return [
    { key: 'product', head: 'Product', rowHead: true, phone: 'lead', cell: productCell },
    {
      key: 'price',
      head: 'Price',
      num: true,
      phone: 'figure',
      cell: (row) => priceCell(row, currencyOf(row.sighting.storeId), setting.home),
    },
    { key: 'standing', head: 'How it stands', phone: 'below', cell: (row) => standingCell(row, setting) },
    { key: 'store', head: 'Store', cell: ({ sighting }) => sighting.storeName },
    { key: 'day', head: 'Seen', cell: ({ sighting }) => <span className="whole">{sayDate(sighting.seenOn, thisYear)}</span> },
    { key: 'state', head: 'How sure', cell: sayRow },
    { key: 'act', head: 'Your word', end: true, phone: 'acts', cell: (row) => actCell(row, setting) },
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
const priceCell = ({ sighting }: BoardRow, currency: string, home: string): ReactElement => (
  <Link to="/prices/$productId" params={{ productId: sighting.productId }} hash={`s-${sighting.id}`} className="figure-link">
    {sayMoney(sighting.priceMinor, currency, { home })}
  </Link>
)

const sayElsewhere = ({ priceMinor, tax, storeName }: LowerElsewhere, currency: string, home: string): string =>
  `from ${sayMoney(priceMinor, currency, { home })}${tax && `, ${tax},`} at ${storeName}`

/** How it stands; on a phone, before it, from where, and after it, how sure. */
function standingCell(row: BoardRow, { currencyOf, home, thisYear, lower }: Setting): ReactElement {
  const currency = currencyOf(row.sighting.storeId)
  const { condition, lastDay, storeName, seenOn } = row.sighting
  const elsewhere = lower(row)
  const words = [sayStanding(row, currency, thisYear, home), elsewhere ? sayElsewhere(elsewhere, currency, home) : '']
  const said = words.filter((word) => word !== '').join(' · ')
  const sale = isSale(condition) && !row.over
  return (
    <>
      <span className="phone-only">
        {storeName}, seen {sayDate(seenOn, thisYear)} · {sayRow(row)}
        {(sale || said !== '') && ' · '}
      </span>
      {sale && (
        <>
          <SaleSign until={lastDay} thisYear={thisYear} words={CONDITION_WORDS[condition]} />
          {said !== '' && ' · '}
        </>
      )}
      {said}
    </>
  )
}

function actCell(row: BoardRow, { currencyOf, home, personId, busyId, errorAt, keptAt, vote, mayRepeat, repeat }: Setting): ReactElement {
  const { sighting } = row
  const name = `${sighting.productName} at ${sighting.storeName}, ${sayMoney(sighting.priceMinor, currencyOf(sighting.storeId), { home })}`
  const busy = busyId === sighting.id
  // While it is under way the button turns; only what stays on the phone is told as kept.
  const kept = busy ? undefined : keptAt(row)
  return (
    <span className="row-acts">
      <VoteButtons sighting={sighting} personId={personId} name={name} busy={busy} silent onAct={(act) => vote(sighting.id, act)} />
      {!kept && mayRepeat(row) && isAccepted(sighting) && (
        <Button small look="plain" busy={busy} aria-label={`Price unchanged today: ${name}`} onClick={() => repeat(row)}>
          Price unchanged
        </Button>
      )}
      {kept && <KeptWords kept={kept} said={sayMoney(kept.sighting.priceMinor, currencyOf(sighting.storeId), { home })} />}
      <WordNotTaken error={errorAt(sighting.id)} />
    </span>
  )
}

const KeptWords = ({ kept, said }: { kept: Unsent; said: string }): ReactElement => (
  <output className="note">
    {said} {kept.refused ? 'was not taken: see “Post”' : 'kept on this phone, waits to be sent'}
  </output>
)
