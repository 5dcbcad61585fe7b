import { fc, test } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import { depositOn, sayLineTerms, sayWarranty } from '../../../core/quote/terms.ts'

describe('terms of a quote', () => {
  it('take a deposit as an amount or a share, rounded half away from zero', () => {
    expect(depositOn({ kind: 'share', basisPoints: 2500 }, 110_703)).toBe(27_676)
    expect(depositOn({ kind: 'amount', amountMinor: 20_000 }, 110_703)).toBe(20_000)
  })

  test.prop([fc.nat(1_000_000_000), fc.nat(1_000_000_000), fc.nat(10_000)])('never ask for more than the total', (total, amount, share) => {
    expect(depositOn({ kind: 'amount', amountMinor: amount }, total)).toBeLessThanOrEqual(total)
    expect(depositOn({ kind: 'share', basisPoints: share }, total)).toBeLessThanOrEqual(total)
  })

  it.each([
    [1, '1 month'],
    [6, '6 months'],
    [12, '1 year'],
    [18, '18 months'],
    [24, '2 years'],
  ])('say a warranty of %i months', (months, words) => expect(sayWarranty(months)).toBe(words))

  it.each([
    [{ returnDays: 30, warrantyMonths: 24 }, 'return within 30 days, warranty 2 years'],
    [{ returnDays: 1 }, 'return within 1 day'],
    [{ returnDays: 0, warrantyMonths: 0 }, 'no returns, no warranty'],
    [{ returnDays: null, warrantyMonths: null }, ''],
    [{}, ''],
  ])('say what is stated of a line: %o', (line, words) => expect(sayLineTerms(line)).toBe(words))
})
