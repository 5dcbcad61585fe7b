import { fc, test } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import type { Store } from '../../../core/catalog/store.ts'
import { addDays } from '../../../core/dates.ts'
import { buildCost, type CostLine } from '../../../core/pricing/build-cost.ts'
import { priceViews } from '../../../core/pricing/price-views.ts'
import { CONDITIONS, type Sighting } from '../../../core/pricing/sighting.ts'
import type { BuildCost, Tier } from '../../../core/pricing/tiers.ts'
import { aStore } from './a-sighting.ts'

const asOf = '2026-10-20'
const STORE_IDS = ['kettle', 'saltcote', 'upriver']
const PRODUCT_IDS = ['filter', 'heater', 'tank']

const delivery: fc.Arbitrary<Store['delivery']> = fc.oneof(
  fc.constant({ kind: 'pickup_only' as const }),
  fc.record({ kind: fc.constant('flat' as const), feeMinor: fc.nat(3000), oversizeMinor: fc.nat(9000) }),
  fc.record({
    kind: fc.constant('free_over' as const),
    feeMinor: fc.nat(3000),
    freeOverMinor: fc.integer({ min: 1, max: 30_000 }),
    oversizeMinor: fc.nat(9000),
  }),
)
const stores: fc.Arbitrary<Store[]> = fc
  .tuple(
    ...STORE_IDS.map((id) =>
      fc
        .record({
          kind: fc.constantFrom('local' as const, 'local' as const, 'online' as const),
          taxBasisPoints: fc.nat(3000),
          pricesIncludeTax: fc.boolean(),
          deliveryTaxed: fc.boolean(),
          delivery,
          archived: fc.boolean(),
        })
        .map((fields) => aStore({ id, ...fields, archived: fields.archived && id === 'kettle' })),
    ),
  )
  .map((list) => [...list])

const sightings: fc.Arbitrary<Sighting[]> = fc
  .array(
    fc.record({
      id: fc.uuid(),
      productId: fc.constantFrom(...PRODUCT_IDS),
      storeId: fc.constantFrom(...STORE_IDS),
      condition: fc.constantFrom(...CONDITIONS),
      priceMinor: fc.integer({ min: 1, max: 20_000 }),
      printedRegularMinor: fc.option(fc.integer({ min: 1, max: 20_000 })),
      daysAgo: fc.oneof(fc.integer({ min: -3, max: 60 }), fc.integer({ min: -3, max: 400 })),
      lasts: fc.option(fc.nat(40)),
      reporterId: fc.constantFrom('noor', 'ada', 'tom'),
      doubted: fc.integer({ min: 0, max: 9 }).map((draw) => draw === 0),
      withdrawn: fc.integer({ min: 0, max: 9 }).map((draw) => draw === 0),
      confirmations: fc.nat(2),
      disputes: fc.integer({ min: 0, max: 5 }).map((draw) => Math.max(0, draw - 3)),
    }),
    { minLength: 20, maxLength: 80 },
  )
  .map((rows) =>
    rows.map(({ daysAgo, lasts, doubted, ...row }): Sighting => {
      const seenOn = addDays(asOf, -daysAgo)
      const lastDay = lasts === null ? null : addDays(seenOn, lasts)
      return {
        ...row,
        seenOn,
        lastDay,
        evidence: 'none',
        note: null,
        receivedAt: `${seenOn}T12:00:00Z`,
        doubt: doubted ? { code: 'too_deep', words: '' } : null,
      }
    }),
  )
const lines: fc.Arbitrary<CostLine[]> = fc
  .array(
    fc.record({
      productId: fc.constantFrom(...PRODUCT_IDS),
      quantity: fc.integer({ min: 1, max: 999 }),
      storeId: fc.option(fc.constantFrom(...STORE_IDS), { freq: 1 }),
      oversize: fc.boolean(),
      archived: fc.constant(false),
    }),
    { maxLength: 6 },
  )
  .map((rows) => rows.map((row, index) => ({ ...row, lineId: `l${index}`, name: row.productId })))
const allowed = fc.subarray(STORE_IDS, { minLength: 1 })

const cost = (of: Sighting[], stores: Store[], lines: CostLine[], storeIds: string[]): BuildCost =>
  buildCost({ lines, stores, prices: priceViews(of, asOf), storeIds, asOf })
const total = (tier: Tier): number | null => (tier.complete ? tier.totalMinor : null)

describe('the cost of any build', () => {
  test.prop([sightings, stores, lines, allowed], { numRuns: 400 })(
    'keeps best seen at or under today, and today at or under full',
    (of, stores, lines, storeIds) => {
      const { full, today, bestSeen } = cost(of, stores, lines, storeIds)
      const [best, now, most] = [total(bestSeen), total(today), total(full)]
      if (best !== null && now !== null) expect(best).toBeLessThanOrEqual(now)
      if (now !== null && most !== null) expect(now).toBeLessThanOrEqual(most)
      if (most !== null) expect(now).not.toBeNull()
    },
  )

  it('is tried on cases of which many have all three totals', () => {
    const cases = fc.sample(fc.tuple(sightings, stores, lines, allowed), { numRuns: 200, seed: 7 })
    const whole = cases
      .map((each) => cost(...each))
      .filter(({ lines, full, today, bestSeen }) => lines.length > 0 && full.complete && today.complete && bestSeen.complete)
    expect(whole.length).toBeGreaterThan(80)
  })

  test.prop([sightings, stores, lines, allowed, fc.integer()])(
    'does not depend on the order in which anything arrived',
    (of, stores, lines, storeIds, turn) => {
      const turned = <T>(list: T[]): T[] => {
        const at = list.length === 0 ? 0 : Math.abs(turn) % list.length
        return [...list.slice(at), ...list.slice(0, at)].reverse()
      }
      expect(cost(turned(of), turned(stores), lines, turned(storeIds))).toEqual(cost(of, stores, lines, storeIds))
    },
  )

  test.prop([sightings, stores, lines, allowed])(
    'adds up: receipts make today, and lines make the goods',
    (of, stores, lines, storeIds) => {
      const { today, receipts, lines: costs } = cost(of, stores, lines, storeIds)
      if (!today.complete) {
        expect(receipts).toEqual([])
        return
      }
      expect(receipts.reduce((sum, { totalMinor }) => sum + totalMinor, 0)).toBe(today.totalMinor)
      expect(costs.reduce((sum, { todayMinor }) => sum + (todayMinor ?? NaN), 0)).toBe(today.goodsMinor)
      expect(today.goodsMinor + today.deliveryMinor + today.taxMinor - (today.taxIncludedMinor ?? 0)).toBe(today.totalMinor)
    },
  )

  test.prop([sightings, stores, lines, allowed, fc.nat()])(
    'loses a sighting from every tier at once when it is withdrawn, doubted or disputed',
    (of, stores, lines, storeIds, which) => {
      fc.pre(of.length > 0)
      const index = which % of.length
      const gone = of.filter((_, at) => at !== index)
      const expected = cost(gone, stores, lines, storeIds)
      const marks: Array<Partial<Sighting>> = [
        { withdrawn: true },
        { doubt: { code: 'too_deep', words: '' }, confirmations: 0 },
        { disputes: 1, confirmations: 0 },
      ]
      for (const mark of marks) {
        const marked = of.map((sighting, at) => (at === index ? { ...sighting, ...mark } : sighting))
        expect(cost(marked, stores, lines, storeIds)).toEqual(expected)
      }
    },
  )

  test.prop([sightings, stores, lines, allowed])('never prices a line from used goods', (of, stores, lines, storeIds) => {
    const used = new Set(of.filter(({ condition }) => condition === 'used').map(({ id }) => id))
    for (const { sightingIds, best } of cost(of, stores, lines, storeIds).lines) {
      for (const id of [...sightingIds, best?.sightingId ?? '']) expect(used.has(id)).toBe(false)
    }
  })
})
