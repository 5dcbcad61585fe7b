import { cumulativeStdNormalProbability } from 'simple-statistics'
import { expect, it } from 'vitest'
import { apartByDate } from '../../../core/quote/apart-by-date.ts'
import { comparePair } from '../../../core/quote/compare-pair.ts'
import { sayPair } from '../../../core/quote/compare-totals.ts'
import type { BuildLetter } from '../../../core/quote/draft.ts'
import { aLineCost } from '../pricing/a-line-cost.ts'

const expected = (expectedMinor: number, low10Minor = expectedMinor, high90Minor = expectedMinor, waits = 1) => ({
  until: '2026-12-20',
  learnedOn: '2026-11-26',
  expectedMinor,
  low10Minor,
  high90Minor,
  waits,
})
const total = { complete: true as const, goodsMinor: 50_000, discountMinor: 0, deliveryMinor: 0, taxMinor: 0, totalMinor: 50_000 }
const build = (letter: BuildLetter, byDate: ReturnType<typeof expected>) => ({
  letter,
  cost: { lines: [aLineCost({})], receipts: [], full: total, today: total, bestSeen: total },
  byDate,
})
const said = { currency: 'USD', thisYear: 2026, mode: 'club' } as const

// Worked by hand: the wider range is 569 − 438 = 131, half of it 65.5, a quarter of that 16.375.
const a = expected(50_000, 44_000, 57_000)

it('a difference that the ranges drown is none, in the row of tiers and in the sentence', () => {
  const [one, other] = [build('A', a), build('B', expected(49_700, 43_800, 56_900))]
  expect(apartByDate(one.byDate, other.byDate, 'USD')).toBe(0)
  expect(comparePair(one, other, said).tiers.find(({ tier }) => tier === 'byDate')?.words).toBe('about the same')
  expect(sayPair(one, other, said)).toContain('By Dec 20, following the advice, they come to about the same.')
})

it('is told from a quarter of half the wider range on, whichever of the two is the wider', () => {
  const at = (minor: number) => [
    apartByDate(a, expected(minor, 43_900, 57_000), 'USD'),
    apartByDate(expected(minor, 43_900, 57_000), a, 'USD'),
    apartByDate(expected(50_000), expected(minor, 43_900, 57_000), 'USD'),
  ]
  expect(at(48_363)).toEqual([0, 0, 0])
  expect(at(48_362)).toEqual([-1638, 1638, -1638])
})

it('sums without a range are told apart from half a unit on: where nothing waits, the range is of no outcome', () => {
  expect(apartByDate(expected(50_000), expected(49_951), 'USD')).toBe(0)
  expect(apartByDate(expected(50_000), expected(49_950), 'USD')).toBe(-50)
  expect(apartByDate(expected(50_000, 44_000, 57_000, 0), expected(49_700, 43_800, 56_900, 0), 'USD')).toBe(-300)
})

it('at the mark the cheaper of two alike and independent builds is the dearer one in some four of ten cases', () => {
  // 8 of 10 outcomes of a normal distribution lie within 1.2816 deviations (any table of it).
  const mark = (0.25 * 1.2816) / Math.SQRT2
  expect(1 - cumulativeStdNormalProbability(mark)).toBeCloseTo(0.41, 2)
})
