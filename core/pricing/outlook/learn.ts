import type { Kind } from '../../catalog/kinds.ts'
import { trustFrom } from '../trust.ts'
import { dayNumber } from './civil-day.ts'
import { gridTables } from './gap-tables.ts'
import type { KindLearned, Learned, ProductLearned } from './learned.ts'
import type { MarketRecord } from './market-record.ts'
import { falseShare, printedCount } from './printed-regular.ts'
import { learnChanges, priceIntervals } from './regular-changes.ts'
import { learnDepths, saleDepths } from './sale-depth.ts'
import { filterSales, partsOf, type TakesPart } from './sale-filter.ts'
import {
  axisMoments,
  fitKind,
  likelihoodsOf,
  posterior,
  standIns,
  type KindPrior,
  type ProductLikelihood,
  type ProductSteps,
} from './sale-fit.ts'
import { saleSteps, type StoreDays, type WindowDays } from './sale-steps.ts'
import { learnSaleTimes, type SaleTimesLearned, type WindowEvidence } from './sale-times.ts'
import { timelines, type Timeline } from './timeline.ts'
import { unwatchedOf } from './unwatched.ts'

/** Places of the grid kept of a product: as many futures as are drawn share them. */
const KEPT_POINTS = 48
/** Of these so many weigh a window: a ratio of likelihoods needs no finer mean. */
const EVIDENCE_POINTS = 6
/** A window whose reports are so many times likelier with part than without changes what its product's other sales tell. */
const MOVES = 2

/**
 * What the record teaches on its day: sales, sale times, depths and changes of regular prices, by kind and product. Sightings of later
 * days, of products that are not listed and what is not accepted count for nothing.
 *
 * Reports of one day that disagree weigh by `trust` of their reporters.
 * Pure: the same record gives the same bytes, whatever the order of its lists.
 */
export const learn = (record: MarketRecord, trust: Learned['trust'] = {}): Learned =>
  learnFrom(timelines(record.sightings, dayNumber(record.asOf), trustFrom(trust)), record, trust)

/** The same from report days, for a record whose sightings are too many to hold at once: each pair once, in the order of product, then store. */
export function learnFrom(lines: readonly Timeline[], record: Omit<MarketRecord, 'sightings'>, trust: Learned['trust']): Learned {
  const asOf = dayNumber(record.asOf)
  const kindOf = new Map(record.products.map(({ id, kind }) => [id, kind]))
  const all = lines.filter(({ productId }) => kindOf.has(productId))
  const days = daysByStore(record, all, asOf)
  const byKind = new Map([...Map.groupBy(all, ({ productId }) => kindOf.get(productId) as Kind)].sort(([a], [b]) => (a < b ? -1 : 1)))
  const steps = new Map([...byKind].map(([kind, lines]) => [kind, stepsOf(lines, days, asOf)]))
  // Sale times need beliefs about ordinary sales, and these need sale times: the second round settles both, for products that were seen on sale in a window.
  const first = salesOf(steps, learnSaleTimes([]), new Map())
  const seen = evidenceOf(steps, first)
  const moved = new Set(seen.filter(({ ratio }) => ratio > MOVES).map(({ productId }) => productId))
  const kept = new Map([...first.likelihoods].filter(([productId]) => !moved.has(productId)))
  const sales = salesOf(steps, learnSaleTimes(seen), kept)
  const times = learnSaleTimes(evidenceOf(steps, sales))
  const kinds: Learned['kinds'] = { any: kindLearned(all, sales.everyKind, times, 'any') }
  const products: Learned['products'] = {}
  for (const [kind, lines] of byKind) {
    const depths = learnDepths(depthsOf(lines))
    kinds[kind] = { ...kindLearned(lines, sales.kinds.get(kind) as KindPrior, times, kind, kinds['any']), depth: depths.kind }
    for (const [productId, own] of Map.groupBy(lines, (line) => line.productId))
      products[productId] = {
        kind,
        ...(sales.products.get(productId) ?? { points: [], kindShare: 1 }),
        depth: depths.products.get(productId) ?? { mean: depths.kind.mean, sd: depths.kind.betweenSd },
        part: times.products.get(productId) ?? times.kinds.get(kind) ?? kinds[kind].part,
        reportDays: own.reduce((sum, { reports }) => sum + reports.length, 0),
        saleDays: saleDaysOf(own),
      } satisfies ProductLearned
  }
  return {
    asOf: record.asOf,
    kinds,
    products: inOrder(products),
    unwatched: inOrder(Object.fromEntries([...days].map(([storeId, { unwatched }]) => [storeId, unwatched]))),
    stores: Object.fromEntries([...times.stores].map(([storeId, ofStore]) => [storeId, inOrder(Object.fromEntries(ofStore))])),
    running: inOrder(Object.fromEntries(times.running)),
    trust: inOrder(trust),
  }
}

const inOrder = <Value>(of: Readonly<Record<string, Value>>): Record<string, Value> =>
  Object.fromEntries(Object.entries(of).sort(([a], [b]) => (a < b ? -1 : 1)))

function daysByStore({ windows }: Pick<MarketRecord, 'windows'>, lines: readonly Timeline[], asOf: number): Map<string, StoreDays> {
  const byStore = Map.groupBy(windows, ({ storeId }) => storeId)
  return new Map(
    [...Map.groupBy(lines, ({ storeId }) => storeId)].map(([storeId, ofStore]) => {
      const days = (byStore.get(storeId) ?? []).map(({ saleTimeId, first, last }) => ({
        saleTimeId,
        first: dayNumber(first),
        last: dayNumber(last),
      }))
      return [storeId, { windows: days, unwatched: unwatchedOf(ofStore, asOf) }]
    }),
  )
}

function stepsOf(lines: readonly Timeline[], days: ReadonlyMap<string, StoreDays>, asOf: number): ProductSteps[] {
  return [...Map.groupBy(lines, ({ productId }) => productId)].map(([productId, ofProduct]) => ({
    productId,
    stores: ofProduct.flatMap(({ storeId, reports }) => {
      const steps = saleSteps(reports, days.get(storeId) as StoreDays, asOf)
      return steps ? [{ storeId, steps }] : []
    }),
  }))
}

interface SalesLearned {
  everyKind: KindPrior
  kinds: Map<Kind, KindPrior>
  products: Map<string, Pick<ProductLearned, 'points' | 'kindShare'>>
  likelihoods: Map<string, ProductLikelihood>
}

function salesOf(
  steps: ReadonlyMap<Kind, ProductSteps[]>,
  times: SaleTimesLearned,
  known: ReadonlyMap<string, ProductLikelihood>,
): SalesLearned {
  const likelihoods = new Map(
    [...steps].map(([kind, products]) => [
      kind,
      likelihoodsOf(products, (productId, storeId) => takesPart(times, kind, productId, storeId), known),
    ]),
  )
  const everyKind = fitKind([...likelihoods.values()].flat())
  const kinds = new Map([...likelihoods].map(([kind, products]) => [kind, fitKind(products, everyKind)]))
  const products = new Map<string, Pick<ProductLearned, 'points' | 'kindShare'>>()
  for (const [kind, ofKind] of likelihoods) {
    const prior = kinds.get(kind) as KindPrior
    for (const product of ofKind) {
      const belief = posterior(product, prior)
      const { rate } = axisMoments(belief, product.regularChance)
      products.set(product.productId, {
        points: standIns(belief, KEPT_POINTS),
        kindShare: Math.min(1, rate.variance / prior.rate.sd ** 2),
      })
    }
  }
  const all = [...likelihoods.values()].flat()
  return { everyKind, kinds, products, likelihoods: new Map(all.map((product) => [product.productId, product])) }
}

function takesPart(times: SaleTimesLearned, kind: Kind, productId: string, storeId: string): TakesPart {
  const [partYes, partNo] = times.products.get(productId) ?? times.kinds.get(kind) ?? [0.3, 1.7]
  return ({ window }) => {
    const [runYes, runNo] = times.stores.get(storeId)?.get(window.saleTimeId) ?? [0.6, 1.4]
    return ((runYes / (runYes + runNo)) * partYes) / (partYes + partNo)
  }
}

function evidenceOf(steps: ReadonlyMap<Kind, ProductSteps[]>, sales: SalesLearned): WindowEvidence[] {
  const evidence: WindowEvidence[] = []
  for (const [kind, products] of steps)
    for (const { productId, stores } of products) {
      const points = sales.products.get(productId)?.points ?? []
      const few = Array.from(
        { length: EVIDENCE_POINTS },
        (_, index) => points[Math.floor(((index + 0.5) / EVIDENCE_POINTS) * points.length)],
      )
      for (const { storeId, steps: ofStore } of stores) {
        const parts = partsOf(ofStore, () => 0.05)
        const sums = new Map<WindowDays, { ratio: number; open: boolean }>()
        for (const point of few.filter((at) => at !== undefined))
          filterSales(ofStore, gridTables(point), parts, (step, logRatio) => {
            const ratio = (sums.get(step.window)?.ratio ?? 0) + Math.min(1e6, Math.exp(logRatio)) / EVIDENCE_POINTS
            sums.set(step.window, { ratio, open: step.open })
          })
        for (const [{ saleTimeId, first }, { ratio, open }] of sums)
          evidence.push({ productId, kind, storeId, saleTimeId, first, ratio, open })
      }
    }
  return evidence
}

const depthsOf = (lines: readonly Timeline[]): Map<string, ReturnType<typeof saleDepths>> =>
  new Map(
    [...Map.groupBy(lines, ({ productId }) => productId)].map(([productId, own]) => [
      productId,
      own.flatMap(({ reports }) => saleDepths(reports)),
    ]),
  )

const saleDaysOf = (lines: readonly Timeline[]): number =>
  lines.reduce((sum, { reports }) => sum + reports.filter(({ onSale }) => onSale).length, 0)

/** What a kind has in common; changes of its regular prices lean on those of all kinds as much as on a year of its own. */
function kindLearned(
  lines: readonly Timeline[],
  sales: KindPrior,
  times: SaleTimesLearned,
  kind: string,
  everyKind?: KindLearned,
): KindLearned {
  const first = everyKind && { chance: everyKind.changes.shape / everyKind.changes.days, days: 365 }
  return {
    logRate: sales.rate,
    changes: {
      ...learnChanges(
        lines.flatMap(({ reports }) => priceIntervals(reports)),
        first,
      ),
      falsePrinted: falseShare(lines.map(({ reports }) => printedCount(reports))),
    },
    depth: learnDepths(depthsOf(lines)).kind,
    part: times.kinds.get(kind) ?? [0.3, 1.7],
    saleDays: saleDaysOf(lines),
  }
}
