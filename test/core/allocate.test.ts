import { fc, test } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import { allocate } from '../../core/allocate.ts'

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
const weights = fc.array(fc.nat(2_000_000_000), { minLength: 1, maxLength: 12 }).filter((all) => sum(all) > 0)

describe('an amount split by weights', () => {
  it('gives the units left over to the largest remainders', () => {
    expect(allocate(100, [1, 1, 1])).toEqual([34, 33, 33])
    // By hand: 10 x 5/8 = 6.25, 10 x 2/8 = 2.5, 10 x 1/8 = 1.25.
    expect(allocate(10, [5, 2, 1])).toEqual([6, 3, 1])
    expect(allocate(0, [0, 0])).toEqual([0, 0])
  })

  it('refuses to split something among nothing', () => {
    expect(() => allocate(1, [0, 0])).toThrow(RangeError)
  })

  test.prop([fc.nat(1_000_000_000), weights])('is kept whole, each share within one unit of the exact one', (minor, all) => {
    const shares = allocate(minor, all)
    const whole = all.reduce((total, weight) => total + BigInt(weight), 0n)
    expect(sum(shares)).toBe(minor)
    shares.forEach((share, at) => {
      const exact = BigInt(minor) * BigInt(all[at] ?? 0)
      expect(BigInt(share) * whole >= exact - whole && BigInt(share) * whole <= exact + whole).toBe(true)
      expect(share).toBeGreaterThanOrEqual(0)
    })
  })

  test.prop([weights, fc.double({ min: 0, max: 1, noNaN: true })])('takes no more from a part than the part is', (all, part) => {
    const minor = Math.floor(sum(all) * part)
    allocate(minor, all).forEach((share, at) => expect(share).toBeLessThanOrEqual(all[at] ?? 0))
  })

  test.prop([fc.nat(1_000_000), weights, fc.nat()])('gives the same weight the same shares in any order', (minor, all, turn) => {
    const at = turn % all.length
    const turned = [...all.slice(at), ...all.slice(0, at)].reverse()
    const sorted = (shares: number[], of: readonly number[]) =>
      shares.map((share, index) => [of[index] ?? 0, share] as const).toSorted((a, b) => a[0] - b[0] || a[1] - b[1])
    expect(sorted(allocate(minor, turned), turned)).toEqual(sorted(allocate(minor, all), all))
  })
})
