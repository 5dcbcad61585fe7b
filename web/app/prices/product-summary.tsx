import type { ReactElement, ReactNode } from 'react'
import { sayDate, yearOf } from '../../../core/dates.ts'
import type { PriceRecord } from '../../../core/pricing/record.ts'
import { SaleSign, TierRow } from '../parts/prices.tsx'
import { useCurrency } from '../session/session.ts'
import { summaryOf } from './price-summary.ts'
import { CONDITION_WORDS, isSale } from './sighting-words.ts'

/** Full price, today, best seen: where, until when, how sure; each opens the sighting behind it. */
export function ProductSummary({ record }: { record: PriceRecord }): ReactElement {
  const currency = useCurrency()
  const thisYear = yearOf(record.asOf)
  const { full, today, best } = summaryOf(record.views)
  const storeName = (storeId: string): string => record.sightings.find((row) => row.storeId === storeId)?.storeName ?? 'a store'
  const day = (date: string): string => sayDate(date, thisYear)
  const behind = (id: string | undefined, words: ReactNode): ReactNode =>
    id && record.sightings.some((row) => row.id === id) ? <a href={`#s-${id}`}>{words}</a> : words
  return (
    <div className="tiers">
      <TierRow
        tier="full"
        minor={full?.view.priceMinor ?? null}
        currency={currency}
        why="no regular price known"
        small={
          full && (
            <>
              {storeName(full.storeId)},{' '}
              {behind(full.view.sightingIds[0], `${full.view.from === 'printed' ? 'printed on a tag' : 'seen'} ${day(full.view.seenOn)}`)}
              {full.view.age === 'ageing' && ', ageing'}
            </>
          )
        }
      />
      <TierRow
        tier="today"
        minor={today?.view.priceMinor ?? null}
        currency={currency}
        why="no price younger than 180 days"
        small={
          today && (
            <>
              {storeName(today.storeId)},{' '}
              {isSale(today.view.condition) && (
                <SaleSign until={today.view.holdsUntil} thisYear={thisYear} words={CONDITION_WORDS[today.view.condition]} />
              )}{' '}
              {isSale(today.view.condition) && !today.view.lastDayStated && 'by the usual week, '}
              {behind(today.view.sightingIds[0], `seen ${day(today.view.seenOn)}`)},{' '}
              {today.view.reporters === 1 ? 'one report' : `${today.view.reporters} members`}
              {today.view.age === 'ageing' && ', ageing'}
            </>
          )
        }
      />
      <TierRow
        tier="best"
        minor={best?.priceMinor ?? null}
        currency={currency}
        why="nothing in 12 months"
        small={
          best && (
            <>
              {storeName(best.storeId)}, {behind(best.sightingId, day(best.seenOn))}
            </>
          )
        }
      />
    </div>
  )
}
