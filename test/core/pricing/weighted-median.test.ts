import { fc, test } from '@fast-check/vitest'
import { median as oracle } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { weightedMedian } from '../../../core/pricing/weighted-median.ts'

const prices = (values: number[], weights: number[]) => values.map((value, index) => ({ value, weight: weights[index] ?? 1 }))

describe('the trust-weighted median', () => {
  it('is 49.99 for the check case of the pricing reference (own, independent script)', () => {
    expect(weightedMedian(prices([49.99, 52, 47.5, 44, 61], [1, 0.8572, 0.7071, 0.2143, 0.0992]))).toBe(49.99)
  })

  it('follows the one who is trusted where two disagree', () => {
    expect(weightedMedian(prices([18999, 19999], [9 / 11, 2 / 3]))).toBe(18999)
    expect(weightedMedian(prices([18999, 19999], [2 / 3, 9 / 11]))).toBe(19999)
  })

  it('refuses to make a price of nothing', () => {
    expect(() => weightedMedian([])).toThrow(RangeError)
  })

  test.prop([
    fc.array(fc.integer({ min: 1, max: 1_000_000 }), { minLength: 1, maxLength: 41 }).filter((values) => values.length % 2 === 1),
  ])('agrees with a statistics library where all weigh the same', (values) => {
    expect(weightedMedian(values.map((value) => ({ value, weight: 2 / 3 })))).toBe(oracle(values))
  })

  test.prop([
    fc.array(fc.tuple(fc.integer({ min: 1, max: 10_000 }), fc.double({ min: 0.01, max: 1, noNaN: true })), { minLength: 1, maxLength: 30 }),
  ])('is a price that somebody saw, with at most half of the weight on either side', (pairs) => {
    const values = pairs.map(([value, weight]) => ({ value, weight }))
    const middle = weightedMedian(values)
    const weigh = (keep: (value: number) => boolean) =>
      values.filter(({ value }) => keep(value)).reduce((sum, { weight }) => sum + weight, 0)
    const half = weigh(() => true) / 2 + 1e-9
    expect(values.map(({ value }) => value)).toContain(middle)
    expect(weigh((value) => value < middle)).toBeLessThanOrEqual(half)
    expect(weigh((value) => value > middle)).toBeLessThanOrEqual(half)
  })
})
