import { WHOLE_RATE } from '../../core/money.ts'
import { byDateOf, outlookLines } from '../../core/pricing/by-date.ts'
import { adviceOf, type ExpectedBuild } from '../../core/pricing/line-advice.ts'
import { lineView } from '../../core/pricing/line-view.ts'
import { learn, outlookOf, type MarketRecord, type SaleWindow } from '../../core/pricing/outlook/outlook.ts'
import { LEAST_SAVING_MINOR } from '../../core/install.ts'
import { withTaxExact } from '../../core/pricing/receipt.ts'
import { addDays, type CivilDate } from '../../core/dates.ts'
import { cheaperElsewhere } from '../../core/quote/cheaper-elsewhere.ts'
import { discountOf } from '../../core/quote/quote-market.ts'
import type { QuoteInputs } from '../../core/quote/revision.ts'
import { workBuild } from '../../core/quote/worked-build.ts'
import { CATALOG } from './catalog.ts'
import { COMMON_NAMES, COMMON_SALE_TIMES, windowsBetween } from './sale-times.ts'
import type { DemoRecord } from './sightings.ts'
import { STORES } from './stores.ts'

const YEAR_DAYS = 366
const DRAWS = 400
const SEED = 20_261_126

/** By the ids of the windows. */
const SALE_TIME_NAMES = new Map([...COMMON_NAMES, 'Its own sale'].map((name, index) => [`${index}`, name]))

/** What the record taught by a day, as the service learns it each night. */
export interface Taught {
  record: MarketRecord
  learned: ReturnType<typeof learn>
}

export function taughtBy({ sightings }: DemoRecord, asOf: CivilDate): Taught {
  const record = {
    sightings: sightings.filter(({ seenOn }) => seenOn <= asOf),
    products: CATALOG.map(({ product: { id, kind } }) => ({ id, kind })),
    windows: windowsAround(asOf),
    asOf,
  }
  return { record, learned: learn(record) }
}

const windowsAround = (asOf: CivilDate): SaleWindow[] =>
  STORES.flatMap(({ store, anniversary }) =>
    [...COMMON_SALE_TIMES, anniversary].flatMap((time, index) =>
      windowsBetween(time, addDays(asOf, -2 * YEAR_DAYS), addDays(asOf, YEAR_DAYS)).map(({ first, last }) => ({
        saleTimeId: `${index}`,
        storeId: store.id,
        first,
        last,
      })),
    ),
  )

/** What each build is expected to come to by the day of its need, and what to do about its lines; none where the need says no day or one that is past. */
export function expectedBuilds(inputs: QuoteInputs, { record, learned }: Taught): Map<string, ExpectedBuild> {
  const { byDate: until, weekWaitMinor } = inputs.draft.need
  if (until === null || until < record.asOf) return new Map()
  const stores = new Map(inputs.stores.map((store) => [store.id, store]))
  const priceOf = (storeId: string, unitMinor: number): number => {
    const store = stores.get(storeId)
    return store ? withTaxExact(unitMinor, store) / WHOLE_RATE : unitMinor
  }
  const reader = { currency: inputs.install.currency, asOf: record.asOf, until, weekWaitMinor: weekWaitMinor ?? 0, withTax: true }
  const elsewhereOf = cheaperElsewhere(inputs)
  const found = inputs.draft.builds.map(({ id }, index): [string, ExpectedBuild] => {
    const { cost } = workBuild(inputs, index)
    const asked = outlookLines(cost).map(({ productId, quantity, storeId }) => ({ productId, quantity, storeIds: [storeId], priceOf }))
    const { lines, total } = outlookOf(learned, record, {
      lines: asked,
      until,
      waitingCostPerDayMinor: reader.weekWaitMinor / 7,
      leastSavingMinor: LEAST_SAVING_MINOR,
      draws: DRAWS,
      seed: SEED,
    })
    const isWhole = lines.every(({ payTodayMinor }) => Number.isFinite(payTodayMinor))
    const outlook = {
      asOf: record.asOf,
      until,
      learnedOn: record.asOf,
      lines: lines.map((line) => lineView(line, { reader, saleTimeNames: SALE_TIME_NAMES })),
      total: isWhole ? total : null,
    }
    return [id, { byDate: byDateOf(cost, outlook, discountOf(inputs)), advice: adviceOf(cost, outlook, elsewhereOf) }]
  })
  return new Map(found)
}
