import type { Kind } from '../../catalog/kinds.ts'
import { trustFrom } from '../trust.ts'
import { dayNumber } from './civil-day.ts'
import type { KindLearned, Learned, ProductLearned } from './learned.ts'
import type { MarketRecord } from './market-record.ts'
import { falseShare } from './printed-regular.ts'
import { learnChanges } from './regular-changes.ts'
import { learnDepths } from './sale-depth.ts'
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
import { saleSteps, type StoreDays } from './sale-steps.ts'
import { learnSaleTimes, type SaleTimesLearned, type WindowEvidence } from './sale-times.ts'
import { stateDays, taughtBy, type ProductTaught } from './taught.ts'
import { timelines } from './timeline.ts'
import { unwatchedOf } from './unwatched.ts'
import { evidenceOf, takesPart } from './window-evidence.ts'

/** Places of the grid kept of a product: as many futures as are drawn share them. */
const KEPT_POINTS = 48
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
  learnFrom(taughtBy(timelines(record.sightings, dayNumber(record.asOf), trustFrom(trust))), record, trust)

/** The same from what is kept of each product (`taughtBy`), for a record whose sightings are too many to hold at once: each product once, in the order of their ids. */
export function learnFrom(taught: readonly ProductTaught[], record: Omit<MarketRecord, 'sightings'>, trust: Learned['trust']): Learned {
  const asOf = dayNumber(record.asOf)
  const kindOf = new Map(record.products.map(({ id, kind }) => [id, kind]))
  const all = taught.filter(({ productId }) => kindOf.has(productId))
  const days = daysByStore(record, all, asOf)
  const byKind = new Map([...Map.groupBy(all, ({ productId }) => kindOf.get(productId) as Kind)].sort(([a], [b]) => (a < b ? -1 : 1)))
  const { sales, times } = salesAndTimes(new Map([...byKind].map(([kind, own]) => [kind, stepsOf(own, days, asOf)])))
  const kinds: Learned['kinds'] = { any: kindLearned(all, sales.everyKind, times, 'any') }
  const products: Learned['products'] = {}
  for (const [kind, ofKind] of byKind) {
    const depths = learnDepths(depthsOf(ofKind))
    kinds[kind] = { ...kindLearned(ofKind, sales.kinds.get(kind) as KindPrior, times, kind, kinds['any']), depth: depths.kind }
    for (const { productId, reportDays, saleDays } of ofKind)
      products[productId] = {
        kind,
        ...(sales.products.get(productId) ?? { points: [], kindShare: 1 }),
        depth: depths.products.get(productId) ?? { mean: depths.kind.mean, sd: depths.kind.betweenSd },
        part: times.products.get(productId) ?? times.kinds.get(kind) ?? kinds[kind].part,
        reportDays,
        saleDays,
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

function daysByStore({ windows }: Pick<MarketRecord, 'windows'>, products: readonly ProductTaught[], asOf: number): Map<string, StoreDays> {
  const byStore = Map.groupBy(windows, ({ storeId }) => storeId)
  const taught = products.flatMap(({ stores }) => stores)
  return new Map(
    [...Map.groupBy(taught, ({ storeId }) => storeId)].map(([storeId, ofStore]) => {
      const days = (byStore.get(storeId) ?? []).map(({ saleTimeId, first, last }) => ({
        saleTimeId,
        first: dayNumber(first),
        last: dayNumber(last),
      }))
      return [storeId, { windows: days, unwatched: unwatchedOf(Array.from(ofStore, stateDays), asOf) }]
    }),
  )
}

/** Steps of each product, made anew each time they are gone through: kept, they would be most of what the record takes. */
const stepsOf = (products: readonly ProductTaught[], days: ReadonlyMap<string, StoreDays>, asOf: number): Iterable<ProductSteps> => ({
  *[Symbol.iterator]() {
    for (const { productId, stores } of products)
      yield {
        productId,
        stores: stores.flatMap((store) => {
          const steps = saleSteps(stateDays(store), days.get(store.storeId) as StoreDays, asOf)
          return steps ? [{ storeId: store.storeId, steps }] : []
        }),
      }
  },
})

type StepsByKind = ReadonlyMap<Kind, Iterable<ProductSteps>>

/** Sale times need beliefs about ordinary sales, and these need sale times: the second round settles both, for products that were seen on sale in a window. */
function salesAndTimes(steps: StepsByKind): { sales: Beliefs; times: SaleTimesLearned } {
  const sales = secondRound(steps)
  return { sales, times: learnSaleTimes(evidenceBy(steps, sales)) }
}

/** Beliefs that know of sale times. No likelihood outlives them: those of all products are a great part of what learning takes. */
function secondRound(steps: StepsByKind): Beliefs {
  const { times, kept } = firstRound(steps)
  const { everyKind, kinds, products } = salesOf(steps, times, kept)
  return { everyKind, kinds, products }
}

/** Sale times by beliefs that know of none, and the likelihoods that stay as they are. The others end here, before the second round makes theirs. */
function firstRound(steps: StepsByKind): { times: SaleTimesLearned; kept: Map<string, ProductLikelihood> } {
  const { likelihoods, ...first } = salesOf(steps, learnSaleTimes([]), new Map())
  const kept = new Map(likelihoods)
  return { times: learnSaleTimes(without(kept, evidenceBy(steps, first))), kept }
}

/** The same evidence; a product that it moves is no more among those kept. */
function* without(kept: Map<string, ProductLikelihood>, evidence: Iterable<WindowEvidence>): Generator<WindowEvidence> {
  for (const of of evidence) {
    if (of.ratio > MOVES) kept.delete(of.productId)
    yield of
  }
}

const evidenceBy = (steps: StepsByKind, { products }: Pick<Beliefs, 'products'>): Iterable<WindowEvidence> =>
  evidenceOf(steps, (productId) => products.get(productId)?.points ?? [])

interface Beliefs {
  everyKind: KindPrior
  kinds: Map<Kind, KindPrior>
  products: Map<string, Pick<ProductLearned, 'points' | 'kindShare'>>
}

interface SalesLearned extends Beliefs {
  likelihoods: Map<string, ProductLikelihood>
}

function salesOf(steps: StepsByKind, times: SaleTimesLearned, known: ReadonlyMap<string, ProductLikelihood>): SalesLearned {
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

const depthsOf = (products: readonly ProductTaught[]): Map<string, ProductTaught['depths']> =>
  new Map(products.map(({ productId, depths }) => [productId, depths]))

/** What a kind has in common; changes of its regular prices lean on those of all kinds as much as on a year of its own. */
function kindLearned(
  products: readonly ProductTaught[],
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
        products.flatMap(({ intervals }) => intervals),
        first,
      ),
      falsePrinted: falseShare(products.map(({ printed }) => printed)),
    },
    depth: learnDepths(depthsOf(products)).kind,
    part: times.kinds.get(kind) ?? [0.3, 1.7],
    saleDays: products.reduce((sum, { saleDays }) => sum + saleDays, 0),
  }
}
