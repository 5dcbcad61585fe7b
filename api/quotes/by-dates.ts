import { addDays, type CivilDate } from '../../core/dates.ts'
import { byDateOf, outlookLines } from '../../core/pricing/by-date.ts'
import { adviceOf, type ExpectedBuild } from '../../core/pricing/line-advice.ts'
import { MOST_AHEAD_DAYS } from '../../core/pricing/outlook-view.ts'
import { cheaperElsewhere } from '../../core/quote/cheaper-elsewhere.ts'
import { discountOf } from '../../core/quote/quote-market.ts'
import type { QuoteInputs } from '../../core/quote/revision.ts'
import { workBuild } from '../../core/quote/worked-build.ts'
import { signedIn, type Ctx } from '../context.ts'
import { loadOutlook, type OutlookAsk } from '../outlook/load-outlook.ts'
import { outlookView } from '../outlook/outlook-view.ts'

/** Of a day that is past, or too far ahead, nothing is told. */
const isTold = (until: CivilDate, asOf: CivilDate): boolean => until >= asOf && until <= addDays(asOf, MOST_AHEAD_DAYS)

/** What each build is expected to come to by the day of the need and what to do about each line, by the build's id; of those of which anything can be said. */
export async function byDates(c: Ctx, inputs: QuoteInputs): Promise<Map<string, ExpectedBuild>> {
  const { draft, install, asOf } = inputs
  const until = draft.need.byDate
  const found = new Map<string, ExpectedBuild>()
  if (until === null || !isTold(until, asOf)) return found
  const elsewhereOf = cheaperElsewhere(inputs)
  for (const [index, { id }] of draft.builds.entries()) {
    const { cost } = workBuild(inputs, index)
    const lines = outlookLines(cost)
    if (lines.length === 0) continue
    const ask: OutlookAsk = { lines, storeIds: [], until, weekWaitMinor: draft.need.weekWaitMinor ?? 0, withTax: true }
    const outlook = outlookView(await loadOutlook(c.get('db'), ask, asOf, install, signedIn(c).id), ask, asOf, install.currency)
    found.set(id, { byDate: byDateOf(cost, outlook, discountOf(inputs)), advice: adviceOf(cost, outlook, elsewhereOf) })
  }
  return found
}
