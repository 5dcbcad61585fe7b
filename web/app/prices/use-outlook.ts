import { keepPreviousData, useQuery, type UseQueryResult } from '@tanstack/react-query'
import { useMemo, useState } from 'react'
import { useSearch } from '@tanstack/react-router'
import { addDays, type CivilDate } from '../../../core/dates.ts'
import { MOST_AHEAD_DAYS, type OutlookView } from '../../../core/pricing/outlook-view.ts'
import type { PriceAhead } from '../../plots/price-record-data.ts'
import { getOutlook } from '../client/outlook.ts'
import type { OutlookSearch } from './outlook-search.ts'

/** Days ahead that a reader chooses from. */
export const AHEAD = { month: 30, season: 60, later: 120 } as const
/** `asked` is the day that a quote asked for. */
export type Ahead = keyof typeof AHEAD | 'asked'

export interface AskedOutlook {
  /** With tax: what is paid, wherever it is bought. */
  answer: UseQueryResult<OutlookView>
  /** The same as tags show it: for the plot, whose steps are tags. */
  onTags: OutlookView | undefined
  ahead: Ahead
  /** The store and the day that a quote asked for, where one did. */
  asked: OutlookSearch
  setAhead: (ahead: Ahead) => void
  /** What the reader holds a week's wait to be worth, minor units; null: nothing. */
  weekWaitMinor: number | null
  setWeekWait: (minor: number | null) => void
}

/** The day to look ahead to. @example untilOf('month', '2026-11-01', {}) // '2026-12-01' */
export const untilOf = (ahead: Ahead, asOf: CivilDate, { until }: OutlookSearch): CivilDate =>
  ahead === 'asked' ? (until ?? asOf) : addDays(asOf, AHEAD[ahead])

/** Where it opens: at the day of the quote that led here, while that is ahead. */
export const firstAhead = (asOf: CivilDate, { until }: OutlookSearch): Ahead =>
  until !== undefined && until >= asOf && until <= addDays(asOf, MOST_AHEAD_DAYS) ? 'asked' : 'season'

/** What to expect of one product, at any store or at the one of the quote that led here, by the day that the reader chooses. */
export function useOutlook(productId: string, asOf: CivilDate): AskedOutlook {
  const from = useSearch({ from: '/prices/$productId' })
  const [ahead, setAhead] = useState<Ahead>(() => firstAhead(asOf, from))
  const [weekWaitMinor, setWeekWait] = useState<number | null>(from.wait ?? null)
  const until = untilOf(ahead, asOf, from)
  const storeId = from.store ?? null
  const asked = { lines: [{ productId, quantity: 1, storeId }], storeIds: [], until, weekWaitMinor: weekWaitMinor ?? 0 }
  const answer = useQuery({
    queryKey: ['outlook', productId, storeId, until, weekWaitMinor, 'with tax'],
    queryFn: () => getOutlook({ ...asked, withTax: true }),
    placeholderData: keepPreviousData,
    staleTime: 5 * 60_000,
  })
  const { data: onTags } = useQuery({
    queryKey: ['outlook', productId, storeId, until, weekWaitMinor, 'on tags'],
    queryFn: () => getOutlook(asked),
    placeholderData: keepPreviousData,
    staleTime: 5 * 60_000,
  })
  return useMemo(
    () => ({ answer, onTags, ahead, asked: from, setAhead, weekWaitMinor, setWeekWait }),
    [answer, onTags, ahead, from, weekWaitMinor],
  )
}

/** What the plot draws ahead of today; undefined where nothing is expected. */
export function aheadOf(outlook: OutlookView | undefined): PriceAhead | undefined {
  const line = outlook?.lines[0]
  if (!outlook || !line || line.expectedPaidMinor === null || line.paid10Minor === null || line.paid90Minor === null) return undefined
  if (line.paid10Minor === line.paid90Minor) return undefined
  return { until: outlook.until, lowMinor: line.paid10Minor, expectedMinor: line.expectedPaidMinor, highMinor: line.paid90Minor }
}
