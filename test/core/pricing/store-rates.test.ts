import { describe, expect, it } from 'vitest'
import { buildCost } from '../../../core/pricing/build-cost.ts'
import { deliveryRateIndex, rateIndexOf, ratesOf } from '../../../core/pricing/store-rates.ts'
import { asOf, lineOf, viewOf } from './a-market.ts'
import { aStore } from './a-sighting.ts'

const store = aStore({
  id: 'kettle',
  taxBasisPoints: 1900,
  otherRates: [
    { name: 'Reduced', basisPoints: 700, kinds: ['substrate', 'conditioner'], productIds: [] },
    { name: 'None', basisPoints: 0, kinds: [], productIds: ['book'] },
  ],
})

describe('the rate that a product takes at a store', () => {
  it.each([
    [{ productId: 'gravel', kind: 'substrate' as const }, 1],
    [{ productId: 'heater', kind: 'heater' as const }, 0],
    [{ productId: 'book', kind: 'substrate' as const }, 2],
    [{ productId: 'heater' }, 0],
  ])('is the one that names it, else that of its kind, else the usual one: %o', (goods, index) => {
    expect(rateIndexOf(store, goods)).toBe(index)
  })

  it('is the usual one where a store of before has no other', () => {
    expect(rateIndexOf({}, { productId: 'gravel', kind: 'substrate' })).toBe(0)
    expect(ratesOf({ taxBasisPoints: 600 })).toEqual([{ name: null, basisPoints: 600 }])
  })

  it('of delivery is found by its name', () => {
    expect(deliveryRateIndex({ ...store, deliveryRate: 'Reduced' })).toBe(1)
    expect(deliveryRateIndex(store)).toBe(0)
  })

  it('stands on the receipt of a build', () => {
    const lines = [lineOf('gravel', { kind: 'substrate' }), lineOf('heater', { kind: 'heater' })]
    const prices = [viewOf('gravel', 'kettle', 2000), viewOf('heater', 'kettle', 4000)]
    const { receipts } = buildCost({ lines, stores: [store], prices, storeIds: ['kettle'], asOf })
    expect(receipts[0]?.taxes).toEqual([
      { name: null, basisPoints: 1900, taxableMinor: 4000, taxMinor: 760 },
      { name: 'Reduced', basisPoints: 700, taxableMinor: 2000, taxMinor: 140 },
    ])
  })

  it('decides where a line is bought', () => {
    const plain = aStore({ id: 'saltcote', taxBasisPoints: 1000 })
    const prices = [viewOf('gravel', 'kettle', 1020), viewOf('gravel', 'saltcote', 1000)]
    const lines = [lineOf('gravel', { kind: 'substrate' })]
    const { lines: costs } = buildCost({ lines, stores: [store, plain], prices, storeIds: ['kettle', 'saltcote'], asOf })
    // By hand: 10.20 and 7 % is 10.91, 10.00 and 10 % is 11.00.
    expect(costs[0]?.storeId).toBe('kettle')
  })
})
