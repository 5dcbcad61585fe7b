import { describe, expect, it } from 'vitest'
import { fc, test } from '@fast-check/vitest'
import type { BuildCost, Tier } from '../../../core/pricing/tiers.ts'
import { sumPartOf, sumParts, sumRowsOf } from '../../../core/quote/sum-parts.ts'

const buildWith = (today: Tier, rates: number[]): { cost: BuildCost } => {
  const receipts = rates.map((taxBasisPoints) => ({
    storeId: 's',
    taxBasisPoints,
    goodsMinor: 0,
    deliveryMinor: 0,
    taxMinor: 0,
    totalMinor: 0,
  }))
  return { cost: { lines: [], receipts, full: today, today, bestSeen: today } }
}

describe('the column of sums', () => {
  // One store prints prices with 6 % in them: of 91.05 paid there 5.15 is tax, 91.05 × 6 / 106. The other adds 31.56 to its prices. Own sums.
  const mixed = { goodsMinor: 61_686, deliveryMinor: 0, taxMinor: 3_671, taxIncludedMinor: 515, totalMinor: 64_842 }
  it('adds up where a store’s prices hold the tax already', () => {
    expect(sumParts(mixed).map(({ minor }) => minor)).toEqual([61_686, 0, 3_671, -515])
    expect(sumParts(mixed).reduce((sum, { minor }) => sum + minor, 0)).toBe(mixed.totalMinor)
  })
  it('has the row of tax in the prices only where some build needs it, and 0 in it for the others', () => {
    const plain = { goodsMinor: 1000, deliveryMinor: 200, taxMinor: 60, totalMinor: 1260 }
    expect(sumRowsOf([buildWith({ complete: true, ...plain }, [600])]).map(({ words }) => words)).toEqual(['Goods', 'Delivery', 'Tax, 6 %'])
    const both = [buildWith({ complete: true, ...plain }, [600]), buildWith({ complete: true, ...mixed }, [600, 825])]
    expect(sumRowsOf(both).map(({ words }) => words)).toEqual(['Goods', 'Delivery', 'Tax', 'Tax already in the prices'])
    expect(sumPartOf(plain, 'tax_in_prices')).toBe(0)
  })
  const minor = fc.integer({ min: 0, max: 10_000_000 })
  test.prop([minor, minor, minor, minor])('always comes to the total', (goodsMinor, deliveryMinor, added, taxIncludedMinor) => {
    const sum = {
      goodsMinor,
      deliveryMinor,
      taxMinor: added + taxIncludedMinor,
      taxIncludedMinor,
      totalMinor: goodsMinor + deliveryMinor + added,
    }
    expect(sumParts(sum).reduce((total, part) => total + part.minor, 0)).toBe(sum.totalMinor)
  })
})
