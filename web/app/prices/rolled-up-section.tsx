import type { ReactElement, ReactNode } from 'react'
import { sayDate, yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { PriceRecord } from '../../../core/pricing/record.ts'
import type { NewRolledUp, RolledPrice } from '../../../core/pricing/roll-up.ts'
import { SaleSign } from '../parts/prices.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { useCurrency } from '../session/session.ts'
import type { OpenBehind } from './behind.ts'
import { changeWords, rolledRows, type RolledRow } from './rolled-up-words.ts'
import { CONDITION_WORDS, isSale } from './sighting-words.ts'

interface Setting {
  say: (minor: number) => string
  storeName: (storeId: string) => string
  thisYear: number
  onOpen: OpenBehind
}

/** One product region by region, new and used goods apart; each figure opens the sightings behind it. */
export function RolledUpSection({ record, onOpen }: { record: PriceRecord; onOpen: OpenBehind }): ReactElement | null {
  const currency = useCurrency()
  const rows = rolledRows(record.rolledUp)
  if (rows.length === 0) return null
  const names = new Map(record.sightings.map(({ storeId, storeName }) => [storeId, storeName]))
  const columns = rolledColumns({
    say: (minor) => sayMoney(minor, currency),
    storeName: (storeId) => names.get(storeId) ?? 'a store',
    thisYear: yearOf(record.asOf),
    onOpen,
  })
  const title = record.rolledUp.some(({ part }) => part === 'region') ? 'By region' : 'Over all stores'
  return (
    <section aria-labelledby="rolled-up-head">
      <div className="sechead">
        <h2 id="rolled-up-head">{title}</h2>
        <p className="quiet">
          Every price here is with its store’s tax, so that they compare; the prices at the top are as on the tag. The usual price is the
          middle of the stores’ regular prices. A figure leads to the sightings behind it.
        </p>
      </div>
      <RuledTable caption={title} columns={columns} rows={rows} rowKey={({ key }) => key} />
    </section>
  )
}

/** On a phone the lowest price stands beside the place, all else below it. */
function rolledColumns(setting: Setting): Array<Column<RolledRow>> {
  return [
    { key: 'place', head: 'Where', rowHead: true, phone: 'lead', cell: ({ place }) => place },
    { key: 'stores', head: 'Stores', num: true, cell: ({ part, used }) => (used ? part.used?.stores : part.new?.stores) },
    { key: 'today', head: 'Lowest today', num: true, phone: 'figure', cell: (row) => lowestPrice(row, setting) },
    { key: 'at', head: 'At', cell: (row) => lowestAt(row, setting) },
    { key: 'usual', head: 'Usual price', num: true, cell: (row) => usual(row, setting) },
    { key: 'sale', head: 'On sale now', num: true, cell: (row) => onSale(row, setting) },
    { key: 'drift', head: 'Shelf price moved', num: true, cell: (row) => moved(row, setting) },
    { key: 'best', head: 'Best seen', num: true, phone: 'below', cell: (row) => bestAndPhone(row, setting) },
  ]
}

/** A link and not a button: it leads to the list below, and stands in running words on a phone. */
const figure = (children: ReactNode, what: string, row: RolledRow, ids: readonly string[], { onOpen }: Setting): ReactElement => (
  <a href="#sightings-head" className="figure-open" onClick={() => onOpen({ words: `${what}, ${row.within}`, ids })}>
    {children}
  </a>
)

function lowestPrice(row: RolledRow, setting: Setting): ReactNode {
  const lowest = row.used ? row.part.used?.lowest : row.part.new?.today
  if (!lowest) return <span className="quiet">{row.used ? 'none in 180 days' : 'not known'}</span>
  return figure(
    setting.say(lowest.priceMinor),
    row.used ? 'the lowest used price' : 'the lowest price today',
    row,
    lowest.sightingIds,
    setting,
  )
}

function lowestAt({ used, part }: RolledRow, { storeName, thisYear }: Setting): ReactNode {
  if (used) return part.used?.lowest ? `${storeName(part.used.lowest.storeId)}, seen ${sayDate(part.used.lowest.seenOn, thisYear)}` : ''
  const { today } = part.new ?? {}
  if (!today) return ''
  return (
    <>
      {storeName(today.storeId)}
      {isSale(today.condition) && (
        <>
          , <SaleSign until={today.holdsUntil} thisYear={thisYear} words={CONDITION_WORDS[today.condition]} />
        </>
      )}
      {today.age === 'ageing' && `, seen ${sayDate(today.seenOn, thisYear)}, ageing`}
    </>
  )
}

const rangeOf = ({ lowestMinor, highestMinor, stores }: NonNullable<NewRolledUp['regular']>, { say }: Setting): string =>
  stores > 1 && lowestMinor < highestMinor ? `${say(lowestMinor)} to ${say(highestMinor)}` : ''

function usual(row: RolledRow, setting: Setting): ReactNode {
  const regular = row.used ? undefined : row.part.new?.regular
  if (!regular) return ''
  const range = rangeOf(regular, setting)
  return (
    <>
      {figure(setting.say(regular.medianMinor), 'the usual price', row, regular.sightingIds, setting)}
      {range && <small className="figure-note">{range}</small>}
    </>
  )
}

function onSale(row: RolledRow, setting: Setting): ReactNode {
  if (row.used || !row.part.new) return ''
  const { onSale: sales, stores } = row.part.new
  return sales ? figure(`${sales.stores} of ${stores}`, 'what is on sale now', row, sales.sightingIds, setting) : stores > 0 ? 'none' : ''
}

function moved(row: RolledRow, setting: Setting): ReactNode {
  const drift = row.used ? undefined : row.part.new?.drift
  return drift ? figure(changeWords(drift, setting.thisYear), 'how shelf prices moved', row, drift.sightingIds, setting) : ''
}

function best(row: RolledRow, price: RolledPrice, setting: Setting): ReactElement {
  return (
    <>
      {figure(setting.say(price.priceMinor), 'the best price in 12 months', row, price.sightingIds, setting)}
      <small className="figure-note">
        {setting.storeName(price.storeId)}, {sayDate(price.seenOn, setting.thisYear)}
      </small>
    </>
  )
}

function bestAndPhone(row: RolledRow, setting: Setting): ReactNode {
  const price = row.used ? row.part.used?.best : row.part.new?.best
  return (
    <>
      <span className="desk-only">{price && best(row, price, setting)}</span>
      <span className="phone-only">{phoneWords(row, price, setting)}</span>
    </>
  )
}

function usualInWords(row: RolledRow, regular: NonNullable<NewRolledUp['regular']>, setting: Setting): ReactElement {
  const range = rangeOf(regular, setting)
  return (
    <>
      usual {figure(setting.say(regular.medianMinor), 'the usual price', row, regular.sightingIds, setting)}
      {range && ` (${range})`}
    </>
  )
}

/** All but the lowest, in one run of words. */
function phoneWords(row: RolledRow, price: RolledPrice | undefined, setting: Setting): ReactNode {
  const { say, thisYear } = setting
  const regular = row.used ? undefined : row.part.new?.regular
  // Of used goods the lowest of half a year is mostly that of the year.
  const told = row.used && price?.sightingIds[0] === row.part.used?.lowest?.sightingIds[0] ? undefined : price
  const parts: Array<[key: string, words: ReactNode]> = [
    ['at', lowestAt(row, setting)],
    ['usual', regular && usualInWords(row, regular, setting)],
    ['sale', row.part.new?.onSale && !row.used && <>{onSale(row, setting)} on sale</>],
    ['drift', moved(row, setting)],
    [
      'best',
      told && (
        <>
          best {figure(say(told.priceMinor), 'the best price in 12 months', row, told.sightingIds, setting)}{' '}
          {sayDate(told.seenOn, thisYear)}
        </>
      ),
    ],
  ]
  return parts
    .filter(([, words]) => Boolean(words))
    .map(([key, words], index) => (
      <span key={key}>
        {index > 0 && ' · '}
        {words}
      </span>
    ))
}
