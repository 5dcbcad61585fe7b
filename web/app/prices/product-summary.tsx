import type { ReactElement, ReactNode } from 'react'
import { sayDate, yearOf } from '../../../core/dates.ts'
import type { PriceRecord } from '../../../core/pricing/record.ts'
import { SaleSign, TierRow } from '../parts/prices.tsx'
import { useCurrency } from '../session/session.ts'
import type { OpenBehind } from './behind.ts'
import { isPrinted, summaryOf, type PriceSummary } from './price-summary.ts'
import { CONDITION_WORDS, goneWords, isSale, sayBehind } from './sighting-words.ts'

/** Full price, today, best seen: where, until when, how sure; each opens the sighting behind it. */
export function ProductSummary({ record, onOpen }: { record: PriceRecord; onOpen: OpenBehind }): ReactElement {
  const currency = useCurrency()
  const { full, today, best } = summaryOf(record.views)
  const gone = today ? null : sayGone(record)
  return (
    <div className="tiers">
      <TierRow
        tier="full"
        minor={full?.view.priceMinor ?? null}
        currency={currency}
        why={gone ? 'none where it can be had' : 'no regular price known'}
        small={full && fullSmall(full, record, onOpen)}
      />
      <TierRow
        tier="today"
        minor={today?.view.priceMinor ?? null}
        currency={currency}
        why={gone ?? 'no price younger than 180 days'}
        small={today && todaySmall(today, record, isPrinted(full, today), onOpen)}
      />
      <TierRow
        tier="best"
        minor={best?.priceMinor ?? null}
        currency={currency}
        why="nothing in 12 months"
        small={best && bestSmall(best, record, onOpen)}
      />
    </div>
  )
}

const storeName = (record: PriceRecord, storeId: string): string =>
  record.sightings.find((row) => row.storeId === storeId)?.storeName ?? 'a store'

/** Where it was found gone; null where no store is known to have had it lately. */
function sayGone({ views, sightings, asOf }: PriceRecord): string | null {
  const gone = views.filter(({ goneOn }) => goneOn !== undefined).toSorted((a, b) => (a.goneOn ?? '').localeCompare(b.goneOn ?? ''))
  const last = gone.at(-1)
  if (last?.goneOn === undefined) return null
  const where =
    gone.length === 1 ? (sightings.find((row) => row.storeId === last.storeId)?.storeName ?? 'a store') : `${gone.length} stores`
  return `${goneWords(last.goneOn, yearOf(asOf))} at ${where}`
}

interface Opens {
  /** Of which figure. */
  of: string
  ids: readonly string[]
  onOpen: OpenBehind
}

/** Words that lead to the sightings behind a figure, where they are listed: there they stand alone. */
function behind(record: PriceRecord, { of, ids, onOpen }: Opens, words: ReactNode): ReactNode {
  const [id] = ids
  if (id === undefined || !record.sightings.some((row) => row.id === id)) return words
  return (
    <a href={`#s-${id}`} onClick={() => onOpen({ words: of, ids })}>
      {words}
    </a>
  )
}

function fullSmall({ storeId, view }: NonNullable<PriceSummary['full']>, record: PriceRecord, onOpen: OpenBehind): ReactElement {
  const seen = `${view.from === 'printed' ? 'printed as regular on a sale’s tag' : 'seen'} ${sayDate(view.seenOn, yearOf(record.asOf))}`
  return (
    <>
      {storeName(record, storeId)}, {behind(record, { of: 'the full price', ids: view.sightingIds, onOpen }, seen)}
      {view.age === 'ageing' && ', ageing'}
    </>
  )
}

function todaySmall(
  { storeId, view }: NonNullable<PriceSummary['today']>,
  record: PriceRecord,
  printed: boolean,
  onOpen: OpenBehind,
): ReactElement {
  const thisYear = yearOf(record.asOf)
  const sale = isSale(view.condition)
  return (
    <>
      {storeName(record, storeId)},{' '}
      {sale && <SaleSign until={view.holdsUntil} thisYear={thisYear} words={CONDITION_WORDS[view.condition]} />}
      {sale && (view.lastDayStated ? ', ' : ', assumed: no last day on the tag, ')}
      {behind(
        record,
        { of: 'today’s price', ids: view.sightingIds, onOpen },
        `${printed ? 'printed as regular on a sale’s tag' : 'seen'} ${sayDate(view.seenOn, thisYear)}`,
      )}
      , {sayBehind(view.reporters, isList(record, view.sightingIds))}
      {view.age === 'ageing' && ', ageing'}
    </>
  )
}

const isList = ({ sightings }: PriceRecord, ids: readonly string[]): boolean => {
  const behind = sightings.filter(({ id }) => ids.includes(id))
  return behind.length > 0 && behind.every(({ imported }) => imported)
}

const bestSmall = (
  { storeId, sightingId, seenOn }: NonNullable<PriceSummary['best']>,
  record: PriceRecord,
  onOpen: OpenBehind,
): ReactElement => (
  <>
    {storeName(record, storeId)},{' '}
    {behind(record, { of: 'the best price seen', ids: [sightingId], onOpen }, sayDate(seenOn, yearOf(record.asOf)))}
  </>
)
