import { fc } from '@fast-check/vitest'
import type { Store } from '../../../core/catalog/store.ts'
import { buildCost, type CostLine } from '../../../core/pricing/build-cost.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import type { BuildCost } from '../../../core/pricing/tiers.ts'
import { aStore } from './a-sighting.ts'

export const asOf = '2026-10-20'

/** Stores, their prices today and lines that name no store. */
export interface Market {
  stores: Store[]
  prices: PriceView[]
  lines: CostLine[]
}

export const viewOf = (productId: string, storeId: string, priceMinor: number, seenOn = '2026-10-01'): PriceView => ({
  productId,
  storeId,
  regular: { priceMinor, seenOn, age: 'current', from: 'shelf', sightingIds: [] },
  today: {
    priceMinor,
    condition: 'shelf',
    seenOn,
    holdsUntil: null,
    lastDayStated: false,
    age: 'current',
    reporters: 1,
    sightingIds: [],
  },
})

export const lineOf = (productId: string, fields: Partial<CostLine> = {}): CostLine => ({
  lineId: `line-${productId}`,
  productId,
  name: productId,
  quantity: 1,
  storeId: null,
  oversize: false,
  archived: false,
  ...fields,
})

interface Kind {
  stores: number
  lines: number
  /** Whether stores may deliver free over an amount. */
  thresholds: boolean
  /** Whether stores may take other rates of tax on some of the products. */
  rates?: boolean
  /** Amounts and rates so round that no tax is ever rounded. */
  wholeTax?: boolean
}

/** Markets in which each line has a price at one store at least, at about the same level everywhere so that delivery decides. */
export function markets({ stores: most, lines: mostLines, thresholds, wholeTax = false, rates = false }: Kind): fc.Arbitrary<Market> {
  const step = wholeTax ? 100 : 1
  const amount = (to: number): fc.Arbitrary<number> => fc.nat(Math.floor(to / step)).map((steps) => steps * step)
  const flat = fc.record({ kind: fc.constant('flat' as const), feeMinor: amount(2000), oversizeMinor: amount(5000) })
  const freeOver = fc.record({
    kind: fc.constant('free_over' as const),
    feeMinor: amount(2000),
    freeOverMinor: fc.integer({ min: 1, max: 20_000 }),
    oversizeMinor: amount(5000),
  })
  const pickup = fc.constant({ kind: 'pickup_only' as const })
  const percent = wholeTax ? fc.nat(25).map((whole) => whole * 100) : fc.nat(2500)
  const otherRate = fc.record({
    basisPoints: percent,
    productIds: fc.subarray(Array.from({ length: mostLines }, (_, at) => `p${at}`)),
  })
  const otherRates = fc
    .array(otherRate, { maxLength: rates ? 2 : 0 })
    .map((all) => all.map((rate, at) => ({ ...rate, name: `rate ${at}`, kinds: [] })))
  const store = fc.record({
    otherRates,
    deliveryRate: fc.constantFrom(null, ...(rates ? ['rate 0', 'rate 1'] : [])),
    taxBasisPoints: percent,
    pricesIncludeTax: fc.boolean(),
    deliveryTaxed: fc.boolean(),
    delivery: thresholds ? fc.oneof(pickup, flat, freeOver, freeOver) : fc.oneof(pickup, flat, flat),
  })
  return fc.integer({ min: 1, max: most }).chain((count) => {
    const line = fc.record({
      quantity: fc.integer({ min: 1, max: 4 }),
      oversize: fc.oneof(fc.constant(false), fc.boolean()),
      level: fc.integer({ min: 5, max: 80 }),
      shares: fc.array(fc.integer({ min: 85, max: 115 }), { minLength: count, maxLength: count }),
      sold: fc.subarray([...Array(count).keys()], { minLength: 1 }),
    })
    return fc
      .tuple(fc.array(store, { minLength: count, maxLength: count }), fc.array(line, { minLength: 1, maxLength: mostLines }))
      .map(([stores, lines]) => ({
        stores: stores.map((fields, index) => aStore({ id: `s${String(index).padStart(2, '0')}`, ...fields })),
        lines: lines.map(({ quantity, oversize }, index) => lineOf(`p${index}`, { quantity, oversize })),
        prices: lines.flatMap(({ level, shares, sold }, index) =>
          sold.map((at) =>
            viewOf(`p${index}`, `s${String(at).padStart(2, '0')}`, Math.max(step, Math.round((level * (shares[at] ?? 100)) / step) * step)),
          ),
        ),
      }))
  })
}

export const costOf = ({ stores, prices, lines }: Market): BuildCost =>
  buildCost({ lines, stores, prices, storeIds: stores.map(({ id }) => id), asOf })

/** What the lines cost at stores that they name, one store a line. */
export const totalAt = (market: Market, storeIds: readonly string[]): number =>
  totalOf({ ...market, lines: market.lines.map((line, index) => ({ ...line, storeId: storeIds[index] ?? null })) })

export function totalOf(market: Market): number {
  const { today } = costOf(market)
  if (!today.complete) throw new Error('Every line of this market has a price.')
  return today.totalMinor
}

/** Where a line is sold, the cheapest with tax first. */
export function soldAt({ stores, prices }: Market, line: CostLine): string[] {
  const withTax = ({ storeId, today }: PriceView): number => {
    const store = stores.find(({ id }) => id === storeId)
    const rate = store?.otherRates?.find(({ productIds }) => productIds.includes(line.productId))?.basisPoints ?? store?.taxBasisPoints ?? 0
    return (today?.priceMinor ?? 0) * (store?.pricesIncludeTax ? 1 : 1 + rate / 10_000)
  }
  return prices
    .filter(({ productId }) => productId === line.productId)
    .toSorted((a, b) => withTax(a) - withTax(b) || (a.storeId < b.storeId ? -1 : 1))
    .map(({ storeId }) => storeId)
}

/** The least total over all ways to give each line a store: the plain count of them all. */
export function leastOfAll(market: Market): number {
  const places = market.lines.map((line) => soldAt(market, line))
  const ways = places.reduce<string[][]>((all, stores) => all.flatMap((way) => stores.map((store) => [...way, store])), [[]])
  return Math.min(...ways.map((way) => totalAt(market, way)))
}
