import type { ReactElement, ReactNode } from 'react'
import { sayDate, yearOf } from '../../../core/dates.ts'
import type { PriceRecord } from '../../../core/pricing/record.ts'
import { SaleSign, TierRow } from '../parts/prices.tsx'
import { useCurrency } from '../session/session.ts'
import { isPrinted, summaryOf, type PriceSummary } from './price-summary.ts'
import { CONDITION_WORDS, isSale } from './sighting-words.ts'

/** Full price, today, best seen: where, until when, how sure; each opens the sighting behind it. */
export function ProductSummary({ record }: { record: PriceRecord }): ReactElement {
  const currency = useCurrency()
  const { full, today, best } = summaryOf(record.views)
  return (
    <div className="tiers">
      <TierRow
        tier="full"
        minor={full?.view.priceMinor ?? null}
        currency={currency}
        why="no regular price known"
        small={full && fullSmall(full, record)}
      />
      <TierRow
        tier="today"
        minor={today?.view.priceMinor ?? null}
        currency={currency}
        why="no price younger than 180 days"
        small={today && todaySmall(today, record, isPrinted(full, today))}
      />
      <TierRow
        tier="best"
        minor={best?.priceMinor ?? null}
        currency={currency}
        why="nothing in 12 months"
        small={best && bestSmall(best, record)}
      />
    </div>
  )
}

const storeName = (record: PriceRecord, storeId: string): string =>
  record.sightings.find((row) => row.storeId === storeId)?.storeName ?? 'a store'

/** Words that lead to the sighting behind a figure, where it is listed. */
const behind = (record: PriceRecord, id: string | undefined, words: ReactNode): ReactNode =>
  id && record.sightings.some((row) => row.id === id) ? <a href={`#s-${id}`}>{words}</a> : words

function fullSmall({ storeId, view }: NonNullable<PriceSummary['full']>, record: PriceRecord): ReactElement {
  const seen = `${view.from === 'printed' ? 'printed as regular on a sale’s tag' : 'seen'} ${sayDate(view.seenOn, yearOf(record.asOf))}`
  return (
    <>
      {storeName(record, storeId)}, {behind(record, view.sightingIds[0], seen)}
      {view.age === 'ageing' && ', ageing'}
    </>
  )
}

function todaySmall({ storeId, view }: NonNullable<PriceSummary['today']>, record: PriceRecord, printed: boolean): ReactElement {
  const thisYear = yearOf(record.asOf)
  const sale = isSale(view.condition)
  return (
    <>
      {storeName(record, storeId)},{' '}
      {sale && <SaleSign until={view.holdsUntil} thisYear={thisYear} words={CONDITION_WORDS[view.condition]} />}
      {sale && (view.lastDayStated ? ', ' : ', assumed: no last day on the tag, ')}
      {behind(
        record,
        view.sightingIds[0],
        `${printed ? 'printed as regular on a sale’s tag' : 'seen'} ${sayDate(view.seenOn, thisYear)}`,
      )}, {view.reporters === 1 ? 'one report' : `${view.reporters} members`}
      {view.age === 'ageing' && ', ageing'}
    </>
  )
}

const bestSmall = ({ storeId, sightingId, seenOn }: NonNullable<PriceSummary['best']>, record: PriceRecord): ReactElement => (
  <>
    {storeName(record, storeId)}, {behind(record, sightingId, sayDate(seenOn, yearOf(record.asOf)))}
  </>
)
