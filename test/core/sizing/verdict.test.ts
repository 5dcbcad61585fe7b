import { expect, it } from 'vitest'
import { settled } from '../../../core/sizing/settled.ts'
import { exactly, isExact, over, sumOf } from '../../../core/sizing/span.ts'
import { judgeAtLeast, judgeAtMost, settle, worstOf } from '../../../core/sizing/verdict.ts'

it.each([
  [99.9, 'does_not_fit'],
  [100, 'marginal'],
  [124.9, 'marginal'],
  [125, 'fits'],
])('%s, of which 100 is the least and 125 comfortable: %s', (value, verdict) => {
  expect(judgeAtLeast(value, 100, 25)).toBe(verdict)
})

it.each([
  [32.1, 'does_not_fit'],
  [32, 'marginal'],
  [31.1, 'marginal'],
  [31, 'fits'],
])('%s, of which 32 is the most and 31 comfortable: %s', (value, verdict) => {
  expect(judgeAtMost(value, 32, 1)).toBe(verdict)
})

it('is not known where the two ends of what nobody stated disagree', () => {
  expect(settle('marginal', 'marginal')).toBe('marginal')
  expect(settle('does_not_fit', 'fits')).toBe('not_known')
})

it('names what nobody stated as assumed where the ends agree, else as missing', () => {
  expect(settled('fits', 'fits', ['pump power'], ['kind of floor', 'pump power'])).toEqual({
    verdict: 'fits',
    assumed: ['pump power', 'kind of floor'],
    missing: [],
  })
  expect(settled('marginal', 'fits', ['pump power', 'pump power'], ['kind of floor'])).toEqual({
    verdict: 'not_known',
    assumed: ['kind of floor'],
    missing: ['pump power'],
  })
})

it('takes the worst of several verdicts, one beyond its limit before one that nobody knows', () => {
  expect(worstOf(['fits', 'marginal', 'not_known', 'does_not_fit'])).toBe('does_not_fit')
  expect(worstOf(['fits', 'marginal', 'not_known'])).toBe('not_known')
  expect(worstOf(['marginal', 'fits'])).toBe('marginal')
  expect(worstOf(['fits'])).toBe('fits')
  expect(worstOf([])).toBe('fits')
})

it('spans a figure over several cases, and adds spans end by end', () => {
  expect(over([3, 1, 2], (x) => 2 * x)).toEqual({ low: 2, high: 6 })
  expect(sumOf([exactly(2), { low: 1, high: 4 }])).toEqual({ low: 3, high: 6 })
  expect([isExact(exactly(2)), isExact({ low: 1, high: 4 })]).toEqual([true, false])
})
