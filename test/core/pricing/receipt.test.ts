import { fc, test } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import type { Store } from '../../../core/catalog/store.ts'
import { taxOn, taxWithin } from '../../../core/money.ts'
import { discountsOf, type Discount } from '../../../core/pricing/discount.ts'
import { deliveredReceipt, receiptOf, sumOf, withTaxExact } from '../../../core/pricing/receipt.ts'
import { aStore } from './a-sighting.ts'

const rate = (name: string, basisPoints: number, kinds: NonNullable<Store['otherRates']>[number]['kinds'] = []) => ({
  name,
  basisPoints,
  kinds,
  productIds: [],
})
const twoRates = aStore({ id: 'kettle', taxBasisPoints: 1900, taxName: 'Full', otherRates: [rate('Reduced', 700, ['substrate'])] })

describe('a receipt with several rates', () => {
  it('works tax out once a rate, on the goods of that rate together', () => {
    // By hand: 10.50 x 0.19 = 1.995, half away from zero 2.00; 3.33 x 0.07 = 0.2331.
    const receipt = receiptOf(twoRates, [1050, 333], 0)
    expect(receipt.taxes).toEqual([
      { name: 'Full', basisPoints: 1900, taxableMinor: 1050, taxMinor: 200 },
      { name: 'Reduced', basisPoints: 700, taxableMinor: 333, taxMinor: 23 },
    ])
    expect(receipt).toMatchObject({ goodsMinor: 1383, taxMinor: 223, totalMinor: 1606 })
  })

  // Own: three lines of 0.55 at 19 %: 0.1045 rounds to 0.10 a line, 0.30 in all; on the sum of 1.65 it is 0.3135, so 0.31.
  it('does not round by the line', () => {
    expect(receiptOf(aStore({ id: 's', taxBasisPoints: 1900 }), 3 * 55, 0).taxMinor).toBe(31)
  })

  it('taxes delivery at the rate the store names, at its usual one, or not at all', () => {
    const of = (fields: Partial<Store>) => receiptOf({ ...twoRates, ...fields }, [1000, 1000], 500).taxMinor
    expect(of({ deliveryTaxed: false })).toBe(190 + 70)
    expect(of({ deliveryTaxed: true })).toBe(285 + 70)
    expect(of({ deliveryTaxed: true, deliveryRate: 'Reduced' })).toBe(190 + 105)
    expect(of({ deliveryTaxed: true, deliveryRate: 'gone' })).toBe(285 + 70)
  })

  it('lists no rates where the store has one, and none that nothing was bought at', () => {
    expect(receiptOf(aStore({ id: 's', taxBasisPoints: 600 }), 100, 0).taxes).toBeUndefined()
    expect(receiptOf(twoRates, [1000], 0).taxes).toHaveLength(1)
  })

  it('compares prices by the rate each product takes there', () => {
    expect(withTaxExact(100, twoRates, 1)).toBeLessThan(withTaxExact(100, twoRates))
    expect(withTaxExact(100, twoRates, 1)).toBe(107_000_000)
  })
})

describe('a discount on a receipt', () => {
  it('lowers the taxable amount before tax is rounded, where prices exclude tax', () => {
    // By hand: (200.00 − 20.00) x 0.06 = 10.80.
    const receipt = receiptOf(aStore({ id: 's', taxBasisPoints: 600 }), 20_000, 0, [2_000])
    expect(receipt).toMatchObject({ goodsMinor: 20_000, discountMinor: 2_000, taxMinor: 1_080, totalMinor: 19_080 })
  })

  it('leaves less tax in the price, where prices include it', () => {
    // By hand: (119.00 − 11.90) holds 107.10 x 19/119 = 17.10.
    const receipt = receiptOf(aStore({ id: 's', taxBasisPoints: 1900, pricesIncludeTax: true }), 11_900, 0, [1_190])
    expect(receipt).toMatchObject({ taxMinor: 1_710, taxIncludedMinor: 1_710, totalMinor: 10_710 })
  })

  it('does not cost the customer a free delivery that the goods as printed had earned', () => {
    const store = aStore({ id: 's', delivery: { kind: 'free_over', feeMinor: 990, freeOverMinor: 7500, oversizeMinor: 0 } })
    expect(deliveredReceipt(store, 7500, false, [7500])).toMatchObject({ deliveryMinor: 0, totalMinor: 0 })
  })

  it('is split by the goods of each store and rate, or stays with the store it names', () => {
    const bought = [
      { storeId: 'a', goods: [3000, 1000] },
      { storeId: 'b', goods: [4000] },
    ]
    const ten: Discount = { kind: 'amount', amountMinor: 1000, storeId: null, reason: 'club evening' }
    expect(discountsOf(ten, bought)).toEqual(
      new Map([
        ['a', [375, 125]],
        ['b', [500]],
      ]),
    )
    expect(discountsOf({ ...ten, storeId: 'b' }, bought)).toEqual(new Map([['b', [1000]]]))
    expect(discountsOf({ ...ten, storeId: 'gone' }, bought)).toEqual(new Map())
    expect(discountsOf({ kind: 'share', basisPoints: 1000, storeId: null, reason: '' }, bought).get('b')).toEqual([400])
    expect(discountsOf(null, bought)).toEqual(new Map())
  })
})

const rates = fc.array(fc.record({ basisPoints: fc.nat(3000) }), { maxLength: 3 })
const stores = fc
  .array(
    fc.record({
      taxBasisPoints: fc.nat(3000),
      otherRates: rates.map((all) => all.map(({ basisPoints }, at) => rate(`rate ${at}`, basisPoints))),
      pricesIncludeTax: fc.boolean(),
      deliveryTaxed: fc.boolean(),
      deliveryRate: fc.constantFrom(null, 'rate 0', 'rate 1'),
      goods: fc.array(fc.nat(5_000_000), { minLength: 1, maxLength: 4 }),
      deliveryMinor: fc.nat(20_000),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((all) =>
    all.map(({ goods, deliveryMinor, ...fields }, at) => ({
      store: aStore({ id: `s${at}`, ...fields }),
      goods: goods.slice(0, 1 + fields.otherRates.length),
      deliveryMinor,
    })),
  )
const discount: fc.Arbitrary<Discount> = fc.oneof(
  fc.record({
    kind: fc.constant('amount' as const),
    amountMinor: fc.nat(30_000_000),
    storeId: fc.constantFrom(null, 's0', 's1'),
    reason: fc.constant(''),
  }),
  fc.record({
    kind: fc.constant('share' as const),
    basisPoints: fc.nat(10_000),
    storeId: fc.constantFrom(null, 's0'),
    reason: fc.constant(''),
  }),
)
type Bought = typeof stores extends fc.Arbitrary<Array<infer One>> ? One : never
const receiptsOf = (bought: readonly Bought[], off: Discount) => {
  const shares = discountsOf(
    off,
    bought.map(({ store, goods }) => ({ storeId: store.id, goods })),
  )
  return bought.map(({ store, goods, deliveryMinor }) => receiptOf(store, goods, deliveryMinor, shares.get(store.id)))
}

describe('receipts of any goods, rates and discount', () => {
  test.prop([stores, discount])('keep their sums and never fall below nothing', (bought, off) => {
    for (const each of receiptsOf(bought, off)) {
      const { goodsMinor, discountMinor = 0, deliveryMinor, taxMinor, taxIncludedMinor = 0, totalMinor } = each
      expect(goodsMinor - discountMinor + deliveryMinor + taxMinor - taxIncludedMinor).toBe(totalMinor)
      expect(totalMinor).toBeGreaterThanOrEqual(0)
      expect(taxMinor).toBeGreaterThanOrEqual(0)
      expect(discountMinor).toBeLessThanOrEqual(goodsMinor)
    }
  })

  test.prop([stores, discount])('have tax rounded once a rate: within half a unit of the exact', (bought, off) => {
    receiptsOf(bought, off).forEach((receipt, at) => {
      const included = bought[at]?.store.pricesIncludeTax === true
      for (const { basisPoints, taxableMinor, taxMinor } of receipt.taxes ?? []) {
        const exact = (taxableMinor * basisPoints) / (10_000 + (included ? basisPoints : 0))
        expect(Math.abs(taxMinor - exact)).toBeLessThanOrEqual(0.5 + 1e-6)
        expect(taxMinor).toBe((included ? taxWithin : taxOn)(taxableMinor, basisPoints))
      }
      if (receipt.taxes) expect(receipt.taxes.reduce((sum, tax) => sum + tax.taxMinor, 0)).toBe(receipt.taxMinor)
    })
  })

  test.prop([stores, discount])('give the whole discount away, up to the goods it may come off', (bought, off) => {
    const goods = bought
      .filter(({ store }) => off.storeId === null || store.id === off.storeId)
      .reduce((sum, each) => sum + each.goods.reduce((all, minor) => all + minor, 0), 0)
    const wanted = off.kind === 'amount' ? off.amountMinor : taxOn(goods, off.basisPoints)
    expect(sumOf(receiptsOf(bought, off)).discountMinor ?? 0).toBe(Math.min(wanted, goods))
  })

  test.prop([stores, discount])('come to the same in any order of the stores', (bought, off) => {
    const turned = bought.toReversed()
    expect(receiptsOf(turned, off).toReversed()).toEqual(receiptsOf(bought, off))
    expect(sumOf(receiptsOf(turned, off))).toEqual(sumOf(receiptsOf(bought, off)))
  })
})
