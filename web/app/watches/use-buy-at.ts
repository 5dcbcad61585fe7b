import { useQuery } from '@tanstack/react-query'
import { addDays, type CivilDate } from '../../../core/dates.ts'
import { MOST_AHEAD_DAYS } from '../../../core/pricing/outlook-view.ts'
import type { WatchTerms } from '../../../core/pricing/watches/watch.ts'
import { getOutlook } from '../client/outlook.ts'
import { useInstall, useToday } from '../session/session.ts'
import { regionsQuery } from '../stores/stores-query.ts'
import type { BuyAtKnown } from './buy-at-words.ts'

/** Days ahead that a price to buy at is asked for where no day is chosen: as the product's page does at first. */
const USUAL_DAYS = 60

type Chosen = Pick<WatchTerms, 'byDay' | 'regionId' | 'storeIds'>

/** The outlook of one at some stores, or at any, by a day: with tax, as the watch is held against it. */
const outlookQuery = (productId: string, storeIds: readonly string[], until: CivilDate) => ({
  queryKey: ['outlook', 'watch', productId, until, ...storeIds],
  queryFn: () => getOutlook({ lines: [{ productId, quantity: 1, storeId: null }], storeIds: [...storeIds], until, withTax: true }),
  staleTime: 5 * 60_000,
})

/** The price to buy at of a product for the day and the place that are chosen; without a day, by the usual one or, where it must be chosen, none. */
export function useBuyAt(productId: string | null, { byDay, regionId, storeIds }: Chosen, needsDay: boolean): BuyAtKnown {
  const today = useToday()
  const isOwnList = useInstall().mode === 'store'
  const regions = useQuery({ ...regionsQuery, enabled: regionId !== null })
  const inRegion = regionId === null ? null : regions.data?.find(({ id }) => id === regionId)?.storeIds
  const places = inRegion ? (storeIds.length === 0 ? inRegion : storeIds.filter((id) => inRegion.includes(id))) : storeIds
  const isDay = byDay !== null && byDay >= today && byDay <= addDays(today, MOST_AHEAD_DAYS)
  const until = isDay ? byDay : addDays(today, USUAL_DAYS)
  const isNowhere = inRegion !== null && places.length === 0
  const isAsked = productId !== null && !isOwnList && inRegion !== undefined && !isNowhere && (isDay || !needsDay)
  const answer = useQuery({ ...outlookQuery(productId ?? '', places, until), enabled: isAsked })
  if (isOwnList) return { state: 'own_list' }
  if (productId === null) return { state: 'each_its_own' }
  if (!isDay && needsDay) return { state: 'no_day' }
  if (answer.error ?? regions.error) return { state: 'failed' }
  if (inRegion === undefined) return { state: 'busy' }
  if (isNowhere) return { state: 'nowhere' }
  if (!answer.data) return { state: 'busy' }
  const [line] = answer.data.lines
  return line ? { state: 'told', line, until, anywhere: places.length === 0 } : { state: 'not_learned' }
}
