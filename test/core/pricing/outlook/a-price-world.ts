import { KINDS, type Kind } from '../../../../core/catalog/kinds.ts'
import { addDays, daysBetween } from '../../../../core/dates.ts'
import type { MarketRecord, SaleWindow } from '../../../../core/pricing/outlook/market-record.ts'
import { drawDaysUntil, drawNormal, randomOf, type Random } from '../../../../core/pricing/outlook/random.ts'
import type { Sighting } from '../../../../core/pricing/sighting.ts'
import { aSighting } from '../a-sighting.ts'

/** A small market that is known: what is charged every day, and what of it was reported. */
export interface PriceWorld {
  record: MarketRecord
  /** What a store asks on a day: `[day][0]` the price, `[day][1]` the regular one; day 0 is the first of the record. */
  prices: Map<string, Array<[price: number, regular: number]>>
  recordDays: number
}

export const WORLD_BEGINS = '2024-01-01'
export const worldDay = (day: number): string => addDays(WORLD_BEGINS, day)

export interface WorldPlan {
  kinds: number
  productsPerKind: number
  stores: number
  recordDays: number
  aheadDays: number
  ratePerYear: number
  changesPerYear: number
  reportsPerYear: number
  reportRatio: number
  runs: number
  part: number
}

export const USUAL_WORLD: WorldPlan = {
  kinds: 3,
  productsPerKind: 8,
  stores: 3,
  recordDays: 730,
  aheadDays: 120,
  ratePerYear: 3,
  changesPerYear: 1,
  reportsPerYear: 12,
  reportRatio: 15,
  runs: 0.7,
  part: 0.4,
}

/** The same plan and seed give the same world. */
export function aPriceWorld(plan: WorldPlan, seed: number): PriceWorld {
  const random = randomOf(seed, 'world')
  const days = plan.recordDays + plan.aheadDays
  const windows = saleWindows(plan, days)
  const runs = new Map(windows.map((window) => [window, random() < plan.runs]))
  const products: Array<{ id: string; kind: Kind }> = []
  const sightings: Sighting[] = []
  const prices: PriceWorld['prices'] = new Map()
  for (let kind = 0; kind < plan.kinds; kind += 1) {
    const kindRate = plan.ratePerYear * Math.exp(0.5 * drawNormal(random))
    const kindDepth = 0.15 + 0.15 * random()
    for (let number = 0; number < plan.productsPerKind; number += 1) {
      const id = `k${kind}-p${number}`
      products.push({ id, kind: KINDS[kind] as Kind })
      const product: ProductPlan = {
        rate: kindRate * Math.exp(0.4 * drawNormal(random)),
        depth: Math.max(0.05, kindDepth + 0.03 * drawNormal(random)),
        reports: (plan.reportsPerYear / 365) * Math.exp(0.5 * drawNormal(random)),
        base: 3000 * Math.exp(drawNormal(random)),
      }
      for (let store = 0; store < plan.stores; store += 1) {
        const storeId = `s${store}`
        const here = windows.filter((window) => window.storeId === storeId)
        const taken = here.filter((window) => runs.get(window) === true && random() < plan.part)
        const charged = chargedDays(random, plan, product, taken, days)
        prices.set(`${id} ${storeId}`, charged)
        sightings.push(...reported(random, plan, product, id, storeId, charged))
      }
    }
  }
  return { record: { sightings, products, windows, asOf: worldDay(plan.recordDays - 1) }, prices, recordDays: plan.recordDays }
}

interface ProductPlan {
  rate: number
  depth: number
  reports: number
  base: number
}

/** Two sale times a year, of five days each. */
function saleWindows({ stores }: WorldPlan, days: number): SaleWindow[] {
  const windows: SaleWindow[] = []
  for (let store = 0; store < stores; store += 1)
    for (const [saleTimeId, offset] of [
      ['summer', 150],
      ['autumn', 330],
    ] as const)
      for (let first = offset; first < days; first += 365)
        windows.push({ saleTimeId, storeId: `s${store}`, first: worldDay(first), last: worldDay(first + 4) })
  return windows
}

function chargedDays(
  random: Random,
  plan: WorldPlan,
  product: ProductPlan,
  taken: readonly SaleWindow[],
  days: number,
): Array<[number, number]> {
  const charged: Array<[number, number]> = []
  let regular = product.base * Math.exp(0.05 * drawNormal(random))
  const depth = (): number => Math.min(0.7, Math.max(0.04, product.depth + 0.05 * drawNormal(random)))
  const changes = -Math.expm1(-plan.changesPerYear / 365)
  const starts = -Math.expm1(-product.rate / 365)
  const begins = new Set(taken.map(({ first }) => daysBetween(WORLD_BEGINS, first)))
  let until = -1
  let off = 0
  for (let day = 0; day < days; day += 1) {
    if (random() < changes) regular *= Math.exp(0.03 + 0.05 * drawNormal(random))
    if (day > until && random() < starts) {
      until = day + 3 + drawDaysUntil(random, 0.2)
      off = depth()
    }
    if (begins.has(day) && day > until) {
      off = depth()
      until = day + 4
    }
    const shelf = Math.round(regular)
    charged.push([day <= until ? Math.round(regular * (1 - off)) : shelf, shelf])
  }
  return charged
}

function reported(
  random: Random,
  plan: WorldPlan,
  product: ProductPlan,
  productId: string,
  storeId: string,
  charged: ReadonlyArray<[number, number]>,
): Sighting[] {
  return charged.slice(0, plan.recordDays).flatMap(([priceMinor, regular], day) => {
    const onSale = priceMinor < regular
    const chance = Math.min(0.6, product.reports * (onSale ? plan.reportRatio : 1))
    return random() < chance
      ? [
          aSighting({
            productId,
            storeId,
            priceMinor,
            seenOn: worldDay(day),
            condition: onSale ? 'sale' : 'shelf',
            reporterId: `m${day % 7}`,
          }),
        ]
      : []
  })
}
