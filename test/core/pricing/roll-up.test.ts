import { fc, test } from '@fast-check/vitest'
import { median } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { addDays } from '../../../core/dates.ts'
import { closedStoreFacts } from '../../../core/pricing/closed-store-facts.ts'
import { factsOfSummary, summarisePair } from '../../../core/pricing/pair-summary.ts'
import { factsWithTax } from '../../../core/pricing/facts-with-tax.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import { rollUp, type StoreFacts } from '../../../core/pricing/roll-up.ts'
import { rollUpByRegion } from '../../../core/pricing/roll-up-by-region.ts'
import { shelfBefore } from '../../../core/pricing/shelf-drift.ts'
import { aSighting, aStore } from './a-sighting.ts'

const ASOF = '2026-10-20'
const PAIR = { productId: 'heater', storeId: 'kettle' }
const REGIONS = [
  { id: 'north', name: 'North', storeIds: ['kettle', 'upriver'] },
  { id: 'south', name: 'South', storeIds: ['upriver', 'saltcote', 'nobody'] },
]

/** A store as the record may tell of it: the regular price full, today at most that, best seen at most today. */
const store = (storeId: string) =>
  fc
    .record({
      full: fc.integer({ min: 10_000, max: 12_000 }),
      off: fc.integer({ min: 0, max: 3 }).map((step) => step * 1000),
      further: fc.integer({ min: 0, max: 2 }).map((step) => step * 500),
      age: fc.nat(180),
      change: fc.option(fc.integer({ min: -20, max: 20 }).map((percent) => percent / 100)),
      known: fc.integer({ min: 0, max: 4 }),
      used: fc.option(fc.integer({ min: 2000, max: 9000 })),
    })
    .map(({ full, off, further, age, change, known, used }): StoreFacts => {
      const seenOn = addDays(ASOF, -age)
      const seen = { seenOn, age: 'current' as const, sightingIds: [`${storeId}-1`, `${storeId}-2`, `${storeId}-3`, `${storeId}-4`] }
      const view: PriceView = {
        productId: 'heater',
        storeId,
        regular: { ...seen, priceMinor: full, from: 'shelf' },
        today: {
          ...seen,
          priceMinor: full - off,
          condition: off > 0 ? 'sale' : 'shelf',
          holdsUntil: null,
          lastDayStated: false,
          reporters: 1,
        },
        best: { priceMinor: full - off - further, seenOn, sightingId: `${storeId}-best` },
      }
      return {
        storeId,
        ...(known > 0 && { view }),
        ...(known > 0 && change !== null && { drift: { change, since: addDays(seenOn, -365), sightingIds: [`${storeId}-then`] } }),
        ...(used !== null && { used: { best: { priceMinor: used, seenOn, sightingId: `${storeId}-used` } } }),
      }
    })
const stores = fc.tuple(store('kettle'), store('saltcote'), store('upriver'), store('wend')).chain((all) => fc.shuffledSubarray(all))

const newPrices = (list: readonly StoreFacts[], of: (view: PriceView) => number | undefined): number[] =>
  list.flatMap(({ view }) => (view ? (of(view) ?? []) : []))

describe('the roll-up of a product over stores', () => {
  test.prop([stores, fc.nat()])('is the same in whatever order the stores come', (list, turn) => {
    const at = turn % Math.max(1, list.length)
    expect(rollUp([...list.slice(at), ...list.slice(0, at)].toReversed())).toEqual(rollUp(list))
  })

  test.prop([store('kettle')])('of one store says what that store says', (one) => {
    const { new: ofNew, used } = rollUp([one])
    const { view, drift } = one
    expect(ofNew?.today?.priceMinor).toBe(view?.today?.priceMinor)
    expect(ofNew?.best).toEqual(
      view?.best && { priceMinor: view.best.priceMinor, storeId: 'kettle', seenOn: view.best.seenOn, sightingIds: [view.best.sightingId] },
    )
    expect(ofNew?.regular?.medianMinor).toBe(view?.regular?.priceMinor)
    expect(ofNew?.regular?.highestMinor).toBe(ofNew?.regular?.lowestMinor)
    expect(ofNew?.onSale?.stores ?? 0).toBe(view && view.today?.condition !== 'shelf' ? 1 : 0)
    expect(ofNew?.drift).toEqual(drift && { ...drift, stores: 1 })
    expect(used?.best.priceMinor).toBe(one.used?.best.priceMinor)
  })

  test.prop([stores])('has best seen ≤ today ≤ full, and the middle of the regular prices between their ends', (list) => {
    const { new: ofNew } = rollUp(list)
    expect(ofNew === undefined).toBe(newPrices(list, () => 1).length === 0)
    if (!ofNew?.today || !ofNew.regular || !ofNew.best) return
    const { today, regular, best } = ofNew
    expect(best.priceMinor).toBeLessThanOrEqual(today.priceMinor)
    expect(today.priceMinor).toBeLessThanOrEqual(regular.highestMinor)
    expect(regular.lowestMinor).toBeLessThanOrEqual(regular.medianMinor)
    expect(regular.medianMinor).toBeLessThanOrEqual(regular.highestMinor)
    // Half a cent where the middle of two prices is rounded.
    expect(Math.abs(regular.medianMinor - median(newPrices(list, (view) => view.regular?.priceMinor)))).toBeLessThanOrEqual(0.5)
    expect(today.priceMinor).toBe(Math.min(...newPrices(list, (view) => view.today?.priceMinor)))
  })

  test.prop([stores])('of a region is never under that of the whole, and each figure names sightings behind it', (list) => {
    const [whole, ...parts] = rollUpByRegion(list, REGIONS)
    for (const part of parts) {
      expect(part.new?.today?.priceMinor ?? Infinity).toBeGreaterThanOrEqual(whole?.new?.today?.priceMinor ?? Infinity)
      expect(part.new?.today?.priceMinor ?? Infinity).toBeGreaterThanOrEqual(whole?.new?.best?.priceMinor ?? Infinity)
      expect(part.used?.best.priceMinor ?? Infinity).toBeGreaterThanOrEqual(whole?.used?.best.priceMinor ?? Infinity)
      for (const figure of [part.new?.today, part.new?.regular, part.new?.onSale, part.new?.drift, part.new?.best, part.used?.best])
        expect(figure?.sightingIds.length ?? 1).toBeGreaterThan(0)
    }
    const told = list.filter(({ view, used }) => view ?? used)
    expect(whole === undefined).toBe(told.length === 0)
    expect(parts.some(({ part }) => part === 'rest')).toBe(told.some(({ storeId }) => storeId === 'wend'))
  })

  it('takes of a store that is closed what was seen, and no price to buy at', () => {
    const seen = { priceMinor: 4000, seenOn: '2026-10-01', sightingId: 'b' }
    const price = { priceMinor: 5000, seenOn: '2026-10-01', age: 'current' as const, sightingIds: ['s'] }
    const today = { ...price, condition: 'sale' as const, holdsUntil: null, lastDayStated: false, reporters: 1 }
    const view: PriceView = { ...PAIR, regular: { ...price, from: 'shelf' }, today, best: seen }
    const open: StoreFacts = { storeId: 'kettle', view, used: { best: seen, lowest: seen } }
    const best = { priceMinor: 4000, storeId: 'kettle', seenOn: '2026-10-01', sightingIds: ['b'] }
    expect(rollUp([open])).toMatchObject({ new: { stores: 1, onSale: { stores: 1 }, best }, used: { lowest: best, best } })
    expect(rollUp([closedStoreFacts(open)])).toEqual({ new: { stores: 0, best }, used: { stores: 1, best } })
    const { best: _best, ...neverSeen } = view
    expect(rollUp([closedStoreFacts({ storeId: 'kettle', view: neverSeen })])).toEqual({})
  })

  it('has one basis where one store prints tax in its tags and another adds it', () => {
    const price = { seenOn: '2026-10-01', age: 'current' as const, sightingIds: ['s'] }
    const used = { priceMinor: 50, seenOn: '2026-10-01', sightingId: 'u' }
    const at = (storeId: string, priceMinor: number): StoreFacts => ({
      storeId,
      view: { ...PAIR, storeId, regular: { ...price, priceMinor, from: 'shelf' } },
      used: { best: used, lowest: used },
    })
    const goods = { productId: 'heater', kind: 'heater' as const }
    const withTax = [
      factsWithTax(at('kettle', 10_000), aStore({ id: 'kettle', taxBasisPoints: 600 }), goods),
      factsWithTax(at('saltcote', 10_300), aStore({ id: 'saltcote', taxBasisPoints: 600, pricesIncludeTax: true }), goods),
    ]
    // 10,000 × 1.06 = 10,600; (10,600 + 10,300) ÷ 2 = 10,450, where the tags alone would give 10,150.
    expect(rollUp(withTax).new?.regular).toMatchObject({ medianMinor: 10_450, lowestMinor: 10_300, highestMinor: 10_600 })
    // 50 × 1.06 = 53 at the first, 50 at the second, whose tag holds its tax.
    expect(withTax.map((facts) => facts.used?.best.priceMinor)).toEqual([53, 50])
    expect(rollUp(withTax).used?.lowest).toMatchObject({ priceMinor: 50, storeId: 'saltcote' })
  })

  it('keeps new and used goods apart', () => {
    const used = { best: { priceMinor: 4000, seenOn: '2026-10-01', sightingId: 'u' } }
    const [whole] = rollUpByRegion([{ storeId: 'kettle', used }], [])
    expect(whole).toEqual({
      part: 'all',
      regionId: null,
      regionName: null,
      used: { stores: 1, best: { priceMinor: 4000, storeId: 'kettle', seenOn: '2026-10-01', sightingIds: ['u'] } },
    })
    expect(rollUpByRegion([], REGIONS)).toEqual([])
  })
})

describe('what rolls up of one store', () => {
  const shelf = (seenOn: string, priceMinor: number) => aSighting({ ...PAIR, id: `s-${seenOn}`, seenOn, priceMinor })
  const used = (seenOn: string, priceMinor: number) => aSighting({ ...PAIR, id: `u-${seenOn}`, seenOn, priceMinor, condition: 'used' })
  const factsOf = (...sightings: Array<ReturnType<typeof shelf>>) => factsOfSummary(summarisePair(sightings), PAIR, ASOF)

  it('is how its shelf price moved since a year before the newest, with the sightings at both ends', () => {
    expect(
      factsOf(shelf('2025-08-01', 9000), shelf('2025-10-01', 10_000), shelf('2026-02-01', 11_000), shelf('2026-10-10', 10_500))?.drift,
    ).toEqual({
      change: 0.05,
      since: '2025-10-01',
      sightingIds: ['s-2026-10-10', 's-2025-10-01'],
    })
    expect(factsOf(shelf('2026-02-01', 10_000), shelf('2026-10-10', 10_500))?.drift?.since).toBe('2026-02-01')
    expect(factsOf(shelf('2026-08-01', 10_000), shelf('2026-10-10', 10_500))?.drift).toBeUndefined()
  })

  it('takes no drift from less than 90 days', () => {
    expect(shelfBefore([{ seenOn: '2026-01-01' }, { seenOn: '2026-04-01' }])).toEqual({ seenOn: '2026-01-01' })
    expect(shelfBefore([{ seenOn: '2026-01-01' }, { seenOn: '2026-03-31' }])).toBeUndefined()
    expect(shelfBefore([])).toBeUndefined()
  })

  it('tells used goods of the year, those of half a year as a price, and none of them as a price of new ones', () => {
    const facts = factsOf(shelf('2026-10-10', 10_000), used('2026-01-05', 3000), used('2026-09-01', 4500), used('2025-09-01', 1000))
    expect(facts?.used).toEqual({
      best: { priceMinor: 3000, seenOn: '2026-01-05', sightingId: 'u-2026-01-05' },
      lowest: { priceMinor: 4500, seenOn: '2026-09-01', sightingId: 'u-2026-09-01' },
    })
    expect(facts?.view?.best?.priceMinor).toBe(10_000)
    expect(factsOf(used('2026-09-01', 4500))).toMatchObject({ storeId: 'kettle', used: { best: { priceMinor: 4500 } } })
    expect(factsOf(used('2025-09-01', 4500))).toBeUndefined()
  })
})
