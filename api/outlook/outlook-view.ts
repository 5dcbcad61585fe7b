import type { CivilDate } from '../../core/dates.ts'
import { lineView } from '../../core/pricing/line-view.ts'
import type { OutlookView } from '../../core/pricing/outlook-view.ts'
import type { LoadedOutlook, OutlookAsk } from './load-outlook.ts'

/** What a screen is told: figures that are not known are null, and a total with a hole in it is none. */
export function outlookView(
  found: LoadedOutlook | undefined,
  { lines: asked, until, weekWaitMinor, withTax }: Pick<OutlookAsk, 'lines' | 'until' | 'weekWaitMinor' | 'withTax'>,
  asOf: CivilDate,
  currency: string,
): OutlookView {
  if (!found) return { asOf, until, learnedOn: null, lines: [], total: null }
  const { saleTimeNames, used } = found
  const reader = { currency, asOf, until, weekWaitMinor, withTax }
  const lines = found.lines.map((line, index) =>
    lineView(line, { reader, saleTimeNames, used: used[index], anyStore: asked[index]?.storeId === null }),
  )
  const { payTodayMinor, expectedPaidMinor, paid10Minor, paid90Minor } = found.total
  const isWhole = lines.length > 0 && lines.every((line) => line.payTodayMinor !== null)
  const total = { payTodayMinor: Math.round(payTodayMinor), expectedPaidMinor, paid10Minor, paid90Minor }
  return { asOf, until, learnedOn: found.learnedOn, lines, total: isWhole ? total : null }
}
