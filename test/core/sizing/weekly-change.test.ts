import { describe, expect, it } from 'vitest'
import { feedGrams, feedOfAnimal, feedWords, stockFeed } from '../../../core/sizing/stock-feed.ts'
import { METRIC, sayPhrase, sayQuantity } from '../../../core/units/say.ts'
import { weekOf } from '../../../core/sizing/weekly-change.ts'
import { actionOf, inRoundTank, reasonOf } from './round-tank.ts'
import { conditions, gear, group, one } from './sample-build.ts'

const fed = (feedGramsPerDay: number, water: 'fresh' | 'salt' = 'fresh') =>
  inRoundTank('weekly_change', {}, { livestock: { ...group('small-tropical'), feedGramsPerDay, water } })

/**
 * By hand: 1 g of feed at 45 % protein gives 0.0414 g of ammonia-N (Timmons & Ebeling). Seven of them in 160 L are 1.81125 mg/L, 8.018 mg/L of nitrate (62.004/14.007)
 * and, at 7.14 mg of CaCO₃ each and 17.848 mg/L a German degree, 0.725 °dKH.
 */
describe('a week of 1 g a day in 160 L', () => {
  it('adds nitrate and takes hardness', () => {
    const { nitrateMgL, khDegrees } = weekOf(1, 160)
    expect(nitrateMgL).toBeCloseTo(8.018, 2)
    expect(khDegrees).toBeCloseTo(0.725, 2)
  })

  it('is told whole', () => {
    const found = fed(1)
    expect(reasonOf(found)).toBe(
      'A usual stock eats 1.0 g of dry feed a day. In a week it adds 8.0 mg/L of nitrate and uses up 0.7 dKH of carbonate hardness. A change of 20 % a week keeps it at about 40 mg/L of nitrate. Plants take some of it up; what the tap water brings comes on top.',
    )
    expect(found).toMatchObject({
      verdict: 'fits',
      action: null,
      value: { value: 20, unit: 'percent' },
      limit: { kind: 'at_most', high: { value: 50 } },
      assumed: ['feed a day of the group'],
      source: { tag: 'from_memory' },
    })
  })
})

describe('the share to change', () => {
  // 8.018 mg/L for each gram over 40 mg/L: half at 2.494 g, four fifths at 3.991 g, all at 4.989 g.
  it.each([
    [2.49, 50, 'fits'],
    [2.52, 51, 'marginal'],
    [3.99, 80, 'marginal'],
    [4.02, 81, 'does_not_fit'],
  ])('of %s g a day is %s per cent: %s', (grams, percent, verdict) => {
    const found = fed(grams)
    expect(found).toMatchObject({ verdict, value: { value: percent } })
    expect(actionOf(found)).toBe(
      verdict === 'fits'
        ? null
        : 'Split it into two changes a week, feed less, keep fewer animals, or choose a larger tank. Test nitrate and KH.',
    )
  })

  it('is a half in salt water of what it is in fresh', () => {
    expect(fed(1.24, 'salt').value?.value).toBe(50)
    expect(reasonOf(fed(1.24, 'salt'))).toContain('keeps it at about 20 mg/L of nitrate.')
  })

  it('is told to be none where all of the water is not enough', () => {
    expect(reasonOf(fed(4.98))).toContain('A change of 100 % a week keeps it at about 40 mg/L of nitrate.')
    // 8.018 mg/L a gram over 40: 101 % at 5.03 g, 160 % at 7.98 g, 161 % at 8.03 g.
    expect(reasonOf(fed(5.03))).toContain('No one change a week keeps it at 40 mg/L of nitrate; two of 51 % each do.')
    expect(reasonOf(fed(7.98))).toContain('No one change a week keeps it at 40 mg/L of nitrate; two of 80 % each do.')
    expect(actionOf(fed(7.98))).toMatch(/^Split it into two changes a week, feed less/)
    expect(reasonOf(fed(8.03))).toContain('No one change a week keeps it at 40 mg/L of nitrate, nor do two.')
    expect(actionOf(fed(8.03))).toBe('Feed less, keep fewer animals, or choose a larger tank. Test nitrate and KH.')
  })

  it('is one figure where next to nothing is eaten', () => {
    // 0.001 g a day: 0.008 mg/L and 0.0007 °dKH.
    expect(reasonOf(fed(0.001))).toContain('In a week it adds 0.0 mg/L of nitrate and uses up 0.0 dKH of carbonate hardness.')
  })

  it('runs over what the animals eat, and over tanks that the figures allow', () => {
    // 100 mm, 1000 cm³: 0.04 to 0.4 g; 0.3 to 3.2 mg/L and 0.03 to 0.29 dKH.
    const found = inRoundTank('weekly_change', { animals: [one('Bog fin', { adultLengthMm: 100 })] })
    expect(reasonOf(found)).toContain('adds 0.3 mg/L to 3.2 mg/L of nitrate and uses up 0.0 dKH to 0.3 dKH of carbonate hardness.')
    expect(found).toMatchObject({ value: { value: 8 }, assumed: ['feed a day by the size of the animals'] })
  })
})

/** Length–weight relations of fish: 0.008 to 0.02 g/cm³; common practice: they eat 0.5 to 2 % of it. By hand. */
describe('what the animals eat', () => {
  it('goes with the cube of their length', () => {
    expect(feedOfAnimal(50).low).toBeCloseTo(0.005, 12)
    expect(feedOfAnimal(50).high).toBeCloseTo(0.05, 12)
    expect(feedOfAnimal(100).high).toBeCloseTo(0.4, 12)
  })

  const fedBy = (animals: Array<{ adultLengthMm?: number }>, count = 1) =>
    stockFeed({ gear: gear({ animals: animals.map((spec) => one('Bog fin', spec, count)) }), conditions: conditions() })

  it('adds up where each states its length', () => {
    const found = fedBy([{ adultLengthMm: 50 }, { adultLengthMm: 100 }], 3)
    expect(found.grams.low).toBeCloseTo(0.135, 12)
    expect(found.grams.high).toBeCloseTo(1.35, 12)
    expect(found).toMatchObject({ who: 'animals', assumed: 'feed a day by the size of the animals' })
    expect(sayPhrase(feedWords(found), METRIC)).toMatch(/^Grown, the animals chosen here eat 0\.1[34] g to 1\.4 g of dry feed a day$/)
  })

  it('is that of a usual stock where one does not, or nobody chose any', () => {
    for (const animals of [[], [{}], [{ adultLengthMm: 100 }, {}]])
      expect(fedBy(animals)).toEqual({ grams: { low: 1, high: 1 }, who: 'group', assumed: 'feed a day of the group' })
    expect(stockFeed({ gear: gear(), conditions: conditions() }).who).toBe('group')
  })

  it('is told to two digits below a gram', () => {
    expect(sayQuantity(feedGrams(0.994), METRIC)).toBe('0.99 g')
    expect(sayQuantity(feedGrams(1), METRIC)).toBe('1.0 g')
  })
})
