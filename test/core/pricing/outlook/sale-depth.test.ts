import { describe, expect, it } from 'vitest'
import { mean, standardDeviation } from 'simple-statistics'
import { drawNormal, randomOf } from '../../../../core/pricing/outlook/random.ts'
import { learnDepths, saleDepths } from '../../../../core/pricing/outlook/sale-depth.ts'
import type { ReportDay } from '../../../../core/pricing/outlook/timeline.ts'

const shelf = (day: number, shelfMinor: number): ReportDay => ({ day, onSale: false, saleMinor: NaN, shelfMinor, printedMinor: NaN })
const sale = (day: number, saleMinor: number): ReportDay => ({ day, onSale: true, saleMinor, shelfMinor: NaN, printedMinor: NaN })

describe('depth of a sale', () => {
  it('is against the regular price then, not the highest ever', () => {
    expect(saleDepths([shelf(0, 20000), shelf(100, 10000), sale(120, 8000), shelf(140, 10000)])).toEqual([{ depth: 1 - 0.8, weight: 1 }])
  })

  it('is counted once for a sale that ten members report', () => {
    expect(saleDepths([shelf(0, 10000), ...Array.from({ length: 10 }, (_, day) => sale(10 + day, 8000)), shelf(40, 10000)])).toHaveLength(1)
  })

  it('counts half where the prices around it differ, and takes the nearer', () => {
    expect(saleDepths([shelf(0, 10000), sale(90, 8800), shelf(100, 11000)])).toEqual([{ depth: 1 - 0.8, weight: 0.5 }])
  })
})

describe('depths of a kind', () => {
  const random = randomOf(4, 'depths')
  const drawn = new Map(
    Array.from({ length: 60 }, (_, product) => {
      const own = 0.25 + 0.06 * drawNormal(random)
      return [`p${product}`, Array.from({ length: 1 + (product % 8) }, () => ({ depth: own + 0.04 * drawNormal(random), weight: 1 }))]
    }),
  )
  const { kind, products } = learnDepths(drawn)

  it('find the mean, what products differ by and what sales differ by', () => {
    // 60 products: standard error of the mean 0.0085, of the spreads about a tenth.
    expect(Math.abs(kind.mean - 0.25)).toBeLessThan(3 * 0.0085)
    expect(Math.abs(kind.betweenSd - 0.06)).toBeLessThan(0.015)
    expect(Math.abs(standardDeviation(kind.residuals) - 0.04)).toBeLessThan(0.01)
    expect(Math.abs(mean(kind.residuals))).toBeLessThan(0.01)
  })

  it('shrink a product to them, the more the fewer sales it has', () => {
    const shrinkage = (product: number): number => {
      const own = mean((drawn.get(`p${product}`) ?? []).map(({ depth }) => depth))
      return Math.abs((products.get(`p${product}`)?.mean ?? NaN) - own) / Math.abs(kind.mean - own)
    }
    expect(shrinkage(0)).toBeGreaterThan(2 * shrinkage(7))
    expect(products.get('p0')?.sd).toBeGreaterThan(products.get('p7')?.sd ?? NaN)
  })
})
