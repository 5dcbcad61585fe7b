import { keepPreviousData, useQuery, type UseQueryResult } from '@tanstack/react-query'
import { useMemo, useState } from 'react'
import { addDays, type CivilDate } from '../../../core/dates.ts'
import type { OutlookView } from '../../../core/pricing/outlook-view.ts'
import type { PriceAhead } from '../../plots/price-record-data.ts'
import { getOutlook } from '../client/outlook.ts'

/** Days ahead that a reader chooses from. */
export const AHEAD = { month: 30, season: 60, later: 120 } as const
export type Ahead = keyof typeof AHEAD

export interface AskedOutlook {
  /** With tax: what is paid, wherever it is bought. */
  answer: UseQueryResult<OutlookView>
  /** The same as tags show it: for the plot, whose steps are tags. */
  onTags: OutlookView | undefined
  ahead: Ahead
  setAhead: (ahead: Ahead) => void
  /** What the reader holds a week's wait to be worth, minor units; null: nothing. */
  weekWaitMinor: number | null
  setWeekWait: (minor: number | null) => void
}

/** What to expect of one product at any store, by the day that the reader chooses. */
export function useOutlook(productId: string, asOf: CivilDate): AskedOutlook {
  const [ahead, setAhead] = useState<Ahead>('season')
  const [weekWaitMinor, setWeekWait] = useState<number | null>(null)
  const until = addDays(asOf, AHEAD[ahead])
  const asked = { lines: [{ productId, quantity: 1, storeId: null }], storeIds: [], until, weekWaitMinor: weekWaitMinor ?? 0 }
  const answer = useQuery({
    queryKey: ['outlook', productId, until, weekWaitMinor, 'with tax'],
    queryFn: () => getOutlook({ ...asked, withTax: true }),
    placeholderData: keepPreviousData,
    staleTime: 5 * 60_000,
  })
  const { data: onTags } = useQuery({
    queryKey: ['outlook', productId, until, weekWaitMinor, 'on tags'],
    queryFn: () => getOutlook(asked),
    placeholderData: keepPreviousData,
    staleTime: 5 * 60_000,
  })
  return useMemo(() => ({ answer, onTags, ahead, setAhead, weekWaitMinor, setWeekWait }), [answer, onTags, ahead, weekWaitMinor])
}

/** What the plot draws ahead of today; undefined where nothing is expected. */
export function aheadOf(outlook: OutlookView | undefined): PriceAhead | undefined {
  const line = outlook?.lines[0]
  if (!outlook || !line || line.expectedPaidMinor === null || line.paid10Minor === null || line.paid90Minor === null) return undefined
  if (line.paid10Minor === line.paid90Minor) return undefined
  return { until: outlook.until, lowMinor: line.paid10Minor, expectedMinor: line.expectedPaidMinor, highMinor: line.paid90Minor }
}
