import { WHOLE_RATE } from '../../core/money.ts'
import { byDateOf, outlookLines } from '../../core/pricing/by-date.ts'
import { adviceOf, type ExpectedBuild } from '../../core/pricing/line-advice.ts'
import { lineView } from '../../core/pricing/line-view.ts'
import { learn, outlookOf, type Learned, type MarketRecord, type SaleWindow } from '../../core/pricing/outlook/outlook.ts'
import { LEAST_SAVING_MINOR } from '../../core/install.ts'
import { withTaxExact } from '../../core/pricing/receipt.ts'
import { usedSeen } from '../../core/pricing/used-seen.ts'
import { addDays, type CivilDate } from '../../core/dates.ts'
import { cheaperElsewhere } from '../../core/quote/cheaper-elsewhere.ts'
import { discountOf } from '../../core/quote/quote-market.ts'
import type { QuoteInputs } from '../../core/quote/revision.ts'
import { workBuild } from '../../core/quote/worked-build.ts'
import { CATALOG } from './catalog.ts'
import { windowsBetween } from './sale-times.ts'
import type { SeededSaleTime } from './seed-sale-times.ts'
import type { DemoRecord } from './sightings.ts'

/** The spans, the draws and the seed are those of the service: what it tells of the same quote a minute later is the same. */
const TAUGHT_BY_DAYS = 3 * 365
const AHEAD_DAYS = 366
const LONGEST_RUN_DAYS = 62
const DRAWS = 400
const SEED = 20_261_126

/** What the record taught by a day, as the service learns it each night. */
export interface Taught {
  asOf: CivilDate
  sightings: DemoRecord['sightings']
  products: MarketRecord['products']
  saleTimes: readonly SeededSaleTime[]
  learned: ReturnType<typeof learn>
}

export function taughtBy(record: DemoRecord, saleTimes: readonly SeededSaleTime[], trust: Learned['trust'], asOf: CivilDate): Taught {
  const sightings = record.sightings.filter(({ seenOn }) => seenOn <= asOf)
  const products = CATALOG.map(({ product: { id, kind } }) => ({ id, kind }))
  const windows = windowsOf(saleTimes, addDays(asOf, -TAUGHT_BY_DAYS), addDays(asOf, AHEAD_DAYS))
  return { asOf, sightings, products, saleTimes, learned: learn({ sightings, products, windows, asOf }, trust) }
}

const windowsOf = (saleTimes: readonly SeededSaleTime[], from: CivilDate, to: CivilDate): SaleWindow[] =>
  saleTimes.flatMap(({ id, time, storeIds }) =>
    windowsBetween(time, from, to).flatMap(({ first, last }) => storeIds.map((storeId) => ({ saleTimeId: id, storeId, first, last }))),
  )

/** What each build is expected to come to by the day of its need, and what to do about its lines; none where the need says no day or one that is past. */
export function expectedBuilds(inputs: QuoteInputs, { asOf, sightings, products, saleTimes, learned }: Taught): Map<string, ExpectedBuild> {
  const { byDate: until, weekWaitMinor } = inputs.draft.need
  if (until === null || until < asOf) return new Map()
  const record = { sightings, products, windows: windowsOf(saleTimes, addDays(asOf, -LONGEST_RUN_DAYS), until), asOf }
  const saleTimeNames = new Map(saleTimes.map(({ id, name }) => [id, name]))
  const stores = new Map(inputs.stores.map((store) => [store.id, store]))
  const priceOf = (storeId: string, unitMinor: number): number => {
    const store = stores.get(storeId)
    return store ? withTaxExact(unitMinor, store) / WHOLE_RATE : unitMinor
  }
  const reader = { currency: inputs.install.currency, asOf, until, weekWaitMinor: weekWaitMinor ?? 0, withTax: true }
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
    const usedOf = (line: (typeof asked)[number] | undefined) => line && usedSeen(line, sightings, asOf)
    const isWhole = lines.every(({ payTodayMinor }) => Number.isFinite(payTodayMinor))
    const outlook = {
      asOf,
      until,
      learnedOn: asOf,
      lines: lines.map((line, at) => lineView(line, { reader, saleTimeNames, used: usedOf(asked[at]) })),
      total: isWhole ? total : null,
    }
    return [id, { byDate: byDateOf(cost, outlook, discountOf(inputs)), advice: adviceOf(cost, outlook, elsewhereOf) }]
  })
  return new Map(found)
}
