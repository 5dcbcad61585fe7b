import { describe, expect, it } from 'vitest'
import { mean, standardDeviation } from 'simple-statistics'
import {
  learnChanges,
  priceIntervals,
  quantilesOf,
  steadyShelf,
  type PriceInterval,
} from '../../../../core/pricing/outlook/regular-changes.ts'
import { drawNormal, randomOf } from '../../../../core/pricing/outlook/random.ts'
import type { ReportDay } from '../../../../core/pricing/outlook/timeline.ts'

const shelf = (day: number, shelfMinor: number): ReportDay => ({ day, onSale: false, saleMinor: NaN, shelfMinor, printedMinor: NaN })

/** Intervals of a price that changes with a daily chance, sizes normal in logarithms. */
function intervals(chance: number, size: { mean: number; sd: number }, lengths: readonly number[], seed: number): PriceInterval[] {
  const random = randomOf(seed, 'intervals')
  return lengths.map((days) => {
    let changeLog = 0
    for (let day = 0; day < days; day += 1) if (random() < chance) changeLog += size.mean + size.sd * drawNormal(random)
    return { days, changeLog }
  })
}

describe('how often a regular price changes', () => {
  it('is −ln(1 − share changed) ÷ t for intervals of one length (closed form), when what was believed before weighs nothing', () => {
    const alike = Array.from({ length: 1000 }, (_, index) => ({ days: 90, changeLog: index < 300 ? 0.05 : 0 }))
    const { shape, days } = learnChanges(alike, { chance: 0.001, days: 1e-6 })
    expect(shape / days).toBeCloseTo(-Math.log(1 - 0.3) / 90, 8)
  })

  it('and the size of one change are found from intervals that hide how many there were', () => {
    const lengths = Array.from({ length: 3000 }, (_, index) => 20 + ((index * 37) % 300))
    const learned = learnChanges(intervals(1 / 250, { mean: 0.02, sd: 0.06 }, lengths, 3))
    // Standard errors: of the chance its own over √changes, of the mean size sd/√changes; about 1500 intervals changed.
    expect(Math.abs(learned.shape / learned.days - 1 / 250)).toBeLessThan(3 / 250 / Math.sqrt(1500))
    expect(Math.abs(mean(learned.sizesLog) - 0.02)).toBeLessThan(3 * (0.06 / Math.sqrt(1500)) + 0.002)
    expect(standardDeviation(learned.sizesLog) / 0.06).toBeGreaterThan(0.85)
    expect(standardDeviation(learned.sizesLog) / 0.06).toBeLessThan(1.15)
  })

  it('of a kind without shelf prices is what is believed beforehand: a change every other year', () => {
    const { shape, days } = learnChanges([])
    expect((365 * shape) / days).toBeCloseTo(0.5, 2)
  })
})

describe('shelf prices of a store', () => {
  it('leave out one that stands alone between two of the same', () => {
    expect(steadyShelf([shelf(1, 5000), shelf(20, 500), shelf(40, 5000), shelf(60, 5200)]).map(({ priceMinor }) => priceMinor)).toEqual([
      5000, 5000, 5200,
    ])
  })

  it('make an interval of each two in a row, where less than half a per cent is no change', () => {
    expect(priceIntervals([shelf(0, 5000), shelf(30, 5010), shelf(90, 5500)])).toEqual([
      { days: 30, changeLog: 0 },
      { days: 60, changeLog: Math.log(5500 / 5010) },
    ])
  })
})

it('quantiles of a sample are the middles of equal shares of it', () => {
  const sample = [1, 2, 3, 4].map((value) => ({ value, weight: 1 }))
  expect(quantilesOf(sample, 4)).toEqual([1, 2, 3, 4])
  expect(quantilesOf([...sample, { value: 5, weight: 4 }], 4)).toEqual([1, 3, 5, 5])
})
