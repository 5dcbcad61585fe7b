import { describe, expect, it } from 'vitest'
import { drawMarket, type Market } from '../market/market.ts'
import type { KindTruth, ProductTruth } from '../market/parameters.ts'
import { oracleShares } from './oracle.ts'
import { atOrUnder, BUY_NOW, FIRST_SALE, saleCame, shop, WAIT_TO_DATE } from './shopper.ts'

interface Plain {
  regular: number
  depth: number
  rate: number
  risesPerYear?: number
  saleTime?: { day: number; chance: number }
}

/** A market of one product at one store, nothing of it uncertain but sales. */
function plain({ regular, depth, rate, risesPerYear = 0, saleTime }: Plain): Market {
  const market = drawMarket('oracle', 0)
  const kind: KindTruth = {
    ...(market.truth.kinds[0] as KindTruth),
    depthSpread: 0,
    depthInSteps: false,
    changesPerYear: 365,
    changeMean: Math.log(1 + risesPerYear) / 365,
    changeSpread: 0,
  }
  const product: ProductTruth = {
    ...(market.truth.products[0] as ProductTruth),
    kind,
    depth,
    takesPart: 1,
    startChance: [1 - Math.exp(-rate / 365)],
  }
  const time = { id: 'time', dayOfYear: 0, lengthDays: 1, runs: [saleTime?.chance ?? 0] }
  const first = market.asOfDay + (saleTime?.day ?? 1)
  return {
    ...market,
    truth: { ...market.truth, products: [product], saleTimeDepth: 1 },
    windows: saleTime ? [{ saleTime: time, store: 0, first, last: first }] : [],
    ahead: [[{ regular: Int32Array.of(regular), price: Int32Array.of(regular), onSale: Uint8Array.of(0) }]],
  }
}
const waiting = (setting: Plain, days: number): number =>
  setting.regular * (oracleShares(plain(setting), { product: 0, stores: [0] }, days, 0)[0] as number)

describe('what waiting comes to with everything known', () => {
  // Closed forms: the regular price less the discount times the chance that a sale comes; figures of the pricing reference to a hundredth.
  it.each([
    [{ regular: 200, depth: 0.5, rate: 3 }, 60, 161.0699],
    [{ regular: 90, depth: 0.25, rate: 2 }, 120, 79.1579],
    [{ regular: 400, depth: 0.3, rate: 2, risesPerYear: 0.06 }, 150, 338.6609],
  ])('agrees with the reference: %o over %i days', (setting, days, value) => {
    expect(waiting(setting, days)).toBeCloseTo(value, 2)
  })

  it('counts a sale time beside ordinary sales', () => {
    const chance = 1 - Math.exp(-40 / 365) * (1 - 0.6)
    expect(waiting({ regular: 150, depth: 0.35, rate: 1, saleTime: { day: 25, chance: 0.6 } }, 40)).toBeCloseTo(
      150 * (1 - 0.35 * chance),
      6,
    )
  })

  it('buys at the regular price at once where nothing will come and waiting costs', () => {
    const shares = oracleShares(plain({ regular: 200, depth: 0.5, rate: 0 }), { product: 0, stores: [0] }, 30, 0.002)
    expect(shares[0]).toBeGreaterThan(1)
  })
})

describe('a shopper', () => {
  const path = { regular: Int32Array.of(100, 100, 110, 110), price: Int32Array.of(100, 100, 80, 110), onSale: Uint8Array.of(0, 0, 1, 0) }
  const dear = { regular: Int32Array.of(120, 120, 120, 120), price: Int32Array.of(120, 90, 120, 120), onSale: Uint8Array.of(0, 1, 0, 0) }
  const stretch = { from: 0, until: 3 }

  it.each([
    ['buys now', BUY_NOW, { paidMinor: 100, day: 0 }],
    ['waits to the date', WAIT_TO_DATE, { paidMinor: 110, day: 3 }],
    ['takes the first sale at any of the stores', FIRST_SALE, { paidMinor: 90, day: 1 }],
    ['buys at or under a share of the regular price then', atOrUnder([0, 0.8, 0.8, 1]), { paidMinor: 80, day: 2 }],
  ])('%s', (_, advice, trip) => {
    expect(shop({ product: 0, stores: [0, 1] }, [[path, dear]], stretch, advice)).toEqual(trip)
  })

  it('sees a sale on the days asked for and on no others', () => {
    const line = { product: 0, stores: [1] }
    expect(saleCame(line, [[path, dear]], { from: 1, until: 1 })).toBe(true)
    expect(saleCame(line, [[path, dear]], { from: 2, until: 3 })).toBe(false)
  })
})
