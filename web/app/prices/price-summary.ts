import type { PriceView } from '../../../core/pricing/price-view.ts'

export interface PriceSummary {
  /** The store where it is cheapest today; its regular price is the full price, so that best seen ≤ today ≤ full. */
  today: { storeId: string; view: NonNullable<PriceView['today']> } | null
  full: { storeId: string; view: NonNullable<PriceView['regular']> } | null
  best: { storeId: string; priceMinor: number; seenOn: string; sightingId: string } | null
}

/**
 * One product's three figures over all stores, new goods, as each store prints them.
 *
 * @example summaryOf([]) // { today: null, full: null, best: null }
 */
export function summaryOf(views: readonly PriceView[]): PriceSummary {
  const cheapest = views.filter((view) => view.today).toSorted((a, b) => (a.today?.priceMinor ?? 0) - (b.today?.priceMinor ?? 0))[0]
  const lowest = views.filter((view) => view.best).toSorted((a, b) => (a.best?.priceMinor ?? 0) - (b.best?.priceMinor ?? 0))[0]
  return {
    today: cheapest?.today ? { storeId: cheapest.storeId, view: cheapest.today } : null,
    full: cheapest?.regular ? { storeId: cheapest.storeId, view: cheapest.regular } : null,
    best: lowest?.best ? { storeId: lowest.storeId, ...lowest.best } : null,
  }
}

/**
 * Whether today's figure is only the regular price that a tag named beside a reduced one: seen printed, not seen charged.
 *
 * @example isPrinted(null, null) // false
 */
export const isPrinted = (full: PriceSummary['full'], today: PriceSummary['today']): boolean =>
  full?.view.from === 'printed' && today?.view.condition === 'shelf' && full.storeId === today.storeId
