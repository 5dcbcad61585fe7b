import type { CivilDate } from '../../core/dates.ts'
import type { LineOutlookView, OutlookView } from '../../core/pricing/outlook-view.ts'
import { sayAdvice, type AdviceReader } from '../../core/pricing/outlook/say-advice.ts'
import type { LoadedOutlook, OutlookAsk } from './load-outlook.ts'
import type { PlainOutlook } from './outlook-worker.ts'

/** Whole minor units; null for what is not known. */
const whole = (amount: number): number | null => (Number.isFinite(amount) ? Math.round(amount) : null)

/** What a screen is told: figures that are not known are null, and a total with a hole in it is none. */
export function outlookView(
  found: LoadedOutlook | undefined,
  { until, waitingCostPerDayMinor }: Pick<OutlookAsk, 'until' | 'waitingCostPerDayMinor'>,
  asOf: CivilDate,
  currency: string,
): OutlookView {
  if (!found) return { asOf, until, learnedOn: null, lines: [], total: null }
  const reader = { currency, asOf, until, waitingCosts: waitingCostPerDayMinor > 0 }
  const lines = found.lines.map((line) => lineView(line, found, reader))
  const { payTodayMinor, expectedPaidMinor, paid10Minor, paid90Minor } = found.total
  const isWhole = lines.length > 0 && lines.every((line) => line.payTodayMinor !== null)
  const total = { payTodayMinor: Math.round(payTodayMinor), expectedPaidMinor, paid10Minor, paid90Minor }
  return { asOf, until, learnedOn: found.learnedOn, lines, total: isWhole ? total : null }
}

function lineView(line: PlainOutlook['lines'][number], { saleTimeNames }: LoadedOutlook, reader: AdviceReader): LineOutlookView {
  const { productId, advice, noHurryUntil, chanceOfSale, nextSaleTime: next, basis } = line
  const known = Number.isFinite(line.payTodayMinor)
  return {
    productId,
    advice,
    ...sayAdvice(line, reader),
    noHurryUntil,
    payTodayMinor: whole(line.payTodayMinor),
    expectedPaidMinor: known ? whole(line.expectedPaidMinor) : null,
    paid10Minor: known ? whole(line.paid10Minor) : null,
    paid90Minor: known ? whole(line.paid90Minor) : null,
    chanceOfSale: Number.isFinite(chanceOfSale) ? Math.min(1, Math.max(0, chanceOfSale)) : 0,
    priceToBuyAtMinor: known ? whole(line.priceToBuyAtMinor) : null,
    nextSaleTime: next && {
      name: saleTimeNames.get(next.saleTimeId) ?? 'a sale time',
      storeId: next.storeId,
      first: next.first,
      last: next.last,
    },
    basis,
  }
}
