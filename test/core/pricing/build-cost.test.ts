import { describe, expect, it } from 'vitest'
import type { Store } from '../../../core/catalog/store.ts'
import { buildCost, type CostLine } from '../../../core/pricing/build-cost.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import { priceViews } from '../../../core/pricing/price-views.ts'
import { aSighting, aStore } from './a-sighting.ts'

const asOf = '2026-10-20'
const line = (fields: Partial<CostLine> = {}): CostLine => ({
  lineId: 'l1',
  productId: 'filter',
  name: 'Pellick C-1800',
  quantity: 1,
  storeId: null,
  oversize: false,
  archived: false,
  ...fields,
})
const shelfAt = (storeId: string, priceMinor: number, productId = 'filter') =>
  aSighting({ productId, storeId, priceMinor, seenOn: '2026-10-01' })
const cost = (lines: CostLine[], stores: Store[], prices: PriceView[], storeIds = stores.map(({ id }) => id)) =>
  buildCost({ lines, stores, prices, storeIds, asOf })

describe('the store of a line', () => {
  const stores = [aStore({ id: 'kettle', taxBasisPoints: 0 }), aStore({ id: 'saltcote', taxBasisPoints: 600 })]
  const prices = priceViews([shelfAt('kettle', 10_500), shelfAt('saltcote', 10_000)], asOf)

  it('is the cheapest with tax, not before it', () => {
    // 100.00 + 6 % is 106.00; 105.00 without tax is less.
    expect(cost([line()], stores, prices).lines[0]).toMatchObject({ storeId: 'kettle', todayMinor: 10_500 })
  })

  it('is one the customer will use', () => {
    expect(cost([line()], stores, prices, ['saltcote']).today).toMatchObject({ complete: true, totalMinor: 10_600 })
  })

  it('is the one that the line names, also where the customer named others', () => {
    expect(cost([line({ storeId: 'saltcote' })], stores, prices, ['kettle']).lines[0]?.storeId).toBe('saltcote')
  })

  it('is the newer fact where two cost the same, then the lower id', () => {
    const same = [aStore({ id: 'a' }), aStore({ id: 'b' }), aStore({ id: 'c' })]
    const older = aSighting({ storeId: 'a', priceMinor: 100, seenOn: '2026-09-01' })
    const views = priceViews([shelfAt('c', 100), older, shelfAt('b', 100)], asOf)
    expect(cost([line()], same, views).lines[0]?.storeId).toBe('b')
  })

  it('is never an archived one of its own choice', () => {
    const archived = stores.map((store) => ({ ...store, archived: store.id === 'kettle' }))
    expect(cost([line()], archived, prices).lines[0]?.storeId).toBe('saltcote')
    expect(cost([line({ storeId: 'kettle' })], archived, prices).today).toMatchObject({
      complete: false,
      missing: [{ lineId: 'l1', why: 'archived' }],
    })
  })
})

describe('tax', () => {
  it('is rounded once a receipt, not once a line', () => {
    const store = aStore({ id: 'saltcote', taxBasisPoints: 600 })
    const lines = [1, 2, 3].map((index) => line({ lineId: `l${index}`, productId: `p${index}` }))
    // 3 × 0.99 = 2.97, of which 6 % is 0.1782: 18. By line it would be 3 × round(5.94) = 18 too; with 0.91 a line it is 16.38 against 3 × 5 = 15.
    const prices = priceViews(
      [1, 2, 3].map((index) => shelfAt('saltcote', 91, `p${index}`)),
      asOf,
    )
    expect(cost(lines, [store], prices).today).toMatchObject({ goodsMinor: 273, taxMinor: 16, totalMinor: 289 })
  })

  it('rounds half a minor unit away from zero', () => {
    const store = aStore({ id: 'saltcote', taxBasisPoints: 500 })
    expect(cost([line()], [store], priceViews([shelfAt('saltcote', 110)], asOf)).today).toMatchObject({ taxMinor: 6, totalMinor: 116 })
  })

  it('is worked out apart for each store', () => {
    const stores = [aStore({ id: 'a', taxBasisPoints: 500 }), aStore({ id: 'b', taxBasisPoints: 500 })]
    const prices = priceViews([shelfAt('a', 110, 'p1'), shelfAt('b', 110, 'p2')], asOf)
    const { today, receipts } = cost([line({ productId: 'p1' }), line({ lineId: 'l2', productId: 'p2' })], stores, prices)
    expect(receipts.map(({ taxMinor }) => taxMinor)).toEqual([6, 6])
    expect(today).toMatchObject({ goodsMinor: 220, taxMinor: 12, totalMinor: 232 })
  })

  it('held in the prices is told and not added again', () => {
    const store = aStore({ id: 'a', taxBasisPoints: 2500, pricesIncludeTax: true })
    expect(cost([line()], [store], priceViews([shelfAt('a', 12_500)], asOf)).today).toMatchObject({
      goodsMinor: 12_500,
      taxMinor: 2500,
      taxIncludedMinor: 2500,
      totalMinor: 12_500,
    })
  })

  it('falls on delivery only where the store says so', () => {
    const delivery = { kind: 'flat', feeMinor: 1000, oversizeMinor: 0 } as const
    const totals = [true, false].map((deliveryTaxed) => {
      const store = aStore({ id: 'a', taxBasisPoints: 600, delivery, deliveryTaxed })
      const { today } = cost([line()], [store], priceViews([shelfAt('a', 10_000)], asOf))
      return today.complete && today.totalMinor
    })
    expect(totals).toEqual([11_660, 11_600])
  })
})

describe('delivery of a build', () => {
  const delivery = { kind: 'free_over', feeMinor: 990, freeOverMinor: 15_000, oversizeMinor: 4000 } as const
  const store = aStore({ id: 'online', kind: 'online', delivery })
  const prices = priceViews([shelfAt('online', 8000)], asOf)

  it('looks at the basket and not at the line', () => {
    const lines = [line(), line({ lineId: 'l2' })]
    expect(cost([line()], [store], prices).today).toMatchObject({ deliveryMinor: 990 })
    expect(cost(lines, [store], prices).today).toMatchObject({ deliveryMinor: 0, totalMinor: 16_000 })
  })

  it('names the line that cannot be brought', () => {
    const nowhere = aStore({ id: 'online', kind: 'online' })
    expect(cost([line()], [nowhere], prices).today).toEqual({
      complete: false,
      missing: [{ lineId: 'l1', name: 'Pellick C-1800', why: 'cannot_be_delivered' }],
    })
  })

  it('is in every tier the amount charged today', () => {
    const sightings = [
      shelfAt('online', 16_000),
      aSighting({ storeId: 'online', condition: 'sale', priceMinor: 8000, seenOn: '2026-10-19' }),
      aSighting({ storeId: 'online', condition: 'sale', priceMinor: 7000, seenOn: '2026-05-01' }),
    ]
    const { full, today, bestSeen } = cost([line()], [store], priceViews(sightings, asOf))
    expect([full, today, bestSeen].map((tier) => tier.complete && [tier.goodsMinor, tier.deliveryMinor])).toEqual([
      [16_000, 990],
      [8000, 990],
      [7000, 990],
    ])
  })
})

describe('the three tiers', () => {
  it('take the regular price, today’s sale and the best of the year', () => {
    const stores = [aStore({ id: 'upriver' }), aStore({ id: 'saltcote' })]
    const sightings = [
      aSighting({ priceMinor: 18_999, seenOn: '2026-09-22' }),
      aSighting({ condition: 'sale', priceMinor: 15_199, seenOn: '2026-10-16', lastDay: '2026-10-25' }),
      aSighting({ condition: 'sale', priceMinor: 14_900, seenOn: '2025-11-28' }),
      aSighting({ storeId: 'saltcote', priceMinor: 19_500, seenOn: '2026-10-03' }),
    ]
    const { lines, full, today, bestSeen } = cost([line({ quantity: 2 })], stores, priceViews(sightings, asOf))
    expect([full, today, bestSeen].map((tier) => tier.complete && tier.totalMinor)).toEqual([37_998, 30_398, 29_800])
    expect(lines[0]).toMatchObject({
      storeId: 'upriver',
      condition: 'sale',
      holdsUntil: '2026-10-25',
      unitFullMinor: 18_999,
      unitTodayMinor: 15_199,
      bestSeenMinor: 29_800,
    })
  })

  it('take the best price from another store the customer will use, not from one she will not', () => {
    const stores = [aStore({ id: 'upriver' }), aStore({ id: 'saltcote' })]
    const prices = priceViews(
      [shelfAt('upriver', 10_000), aSighting({ storeId: 'saltcote', condition: 'sale', priceMinor: 5000, seenOn: '2026-02-01' })],
      asOf,
    )
    expect(cost([line()], stores, prices).bestSeen).toMatchObject({ totalMinor: 5000 })
    expect(cost([line()], stores, prices, ['upriver']).bestSeen).toMatchObject({ totalMinor: 10_000 })
  })

  it('stay today’s where rounding a second receipt would eat what the best price saves', () => {
    const stores = [aStore({ id: 'a', taxBasisPoints: 500 }), aStore({ id: 'b', taxBasisPoints: 1500 })]
    const sightings = [
      shelfAt('a', 10, 'p1'),
      shelfAt('a', 11, 'p2'),
      aSighting({ productId: 'p2', storeId: 'b', condition: 'sale', priceMinor: 10, seenOn: '2026-02-01' }),
    ]
    const { today, bestSeen } = cost(
      [line({ productId: 'p1' }), line({ lineId: 'l2', productId: 'p2' })],
      stores,
      priceViews(sightings, asOf),
    )
    // Today 21 + 1.05 = 22. Apart: 10 + 0.50 = 11 and 10 + 1.50 = 12, which is 23, although 11.50 is less than 11.55.
    expect([today, bestSeen].map((tier) => tier.complete && tier.totalMinor)).toEqual([22, 22])
  })

  it('never print a total with a hole in it: the tiers name the line and hold no sum', () => {
    const prices = priceViews([shelfAt('upriver', 10_000)], asOf)
    const { full, today, bestSeen, receipts } = cost(
      [line(), line({ lineId: 'l2', productId: 'heater', name: 'Torvane 150 W' })],
      [aStore({ id: 'upriver' })],
      prices,
    )
    for (const tier of [full, today, bestSeen])
      expect(tier).toEqual({ complete: false, missing: [{ lineId: 'l2', name: 'Torvane 150 W', why: 'no_price' }] })
    expect(receipts).toEqual([])
  })

  it('are incomplete at full price alone where only a sale is known', () => {
    const prices = priceViews([aSighting({ condition: 'sale', priceMinor: 10_000, seenOn: '2026-10-19' })], asOf)
    const { full, today } = cost([line()], [aStore({ id: 'upriver' })], prices)
    expect(full).toMatchObject({ complete: false, missing: [{ lineId: 'l1', why: 'no_price' }] })
    expect(today).toMatchObject({ complete: true, totalMinor: 10_000 })
  })

  it('leave an archived product out', () => {
    expect(cost([line({ archived: true })], [aStore({ id: 'upriver' })], priceViews([shelfAt('upriver', 100)], asOf)).today).toMatchObject({
      missing: [{ why: 'archived' }],
    })
  })

  it('fall back to the regular price where the view is older than the sale’s end', () => {
    const prices = priceViews(
      [shelfAt('upriver', 10_000), aSighting({ condition: 'sale', priceMinor: 8000, seenOn: '2026-10-16', lastDay: '2026-10-18' })],
      '2026-10-17',
    )
    expect(cost([line()], [aStore({ id: 'upriver' })], prices).today).toMatchObject({ totalMinor: 10_000 })
  })
})
