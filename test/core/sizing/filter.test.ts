import { describe, expect, it } from 'vitest'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { feedOfMedia, filmForAmmonia } from '../../../core/sizing/filter-feed.ts'
import { ammoniaOfFeed } from '../../../core/water/nitrogen.ts'
import { turnover } from '../../../core/sizing/filter-flow.ts'
import { stockFeed } from '../../../core/sizing/stock-feed.ts'
import { weekOf } from '../../../core/sizing/weekly-change.ts'
import { conditions, findingOf, gear, group, one, reportOf } from './sample-build.ts'

const filter = (ratedFlowLph?: number, mediaVolumeL?: number) => ({
  filters: [one('Pellick', { type: 'canister' as const, ratedFlowLph, mediaVolumeL, powerW: 20 })],
})

describe('filter flow', () => {
  /** Common practice: media leave 0.5 to 0.7 of the printed flow. */
  it('derates the printed flow', () => expect(turnover({ loaded: 500, clean: 700 }, 100)).toEqual({ low: 5, high: 7 }))

  /** Own: 237.71 L of water in use, at least 4 an hour: 951 L/h, printed 1902 loaded and 1358 clean. */
  it.each([
    [1905, 'fits'],
    [1870, 'marginal'],
    [1365, 'marginal'],
    [1335, 'does_not_fit'],
  ])('printed at %s L/h: %s', (printed, verdict) => expect(findingOf('filter_flow', filter(printed)).verdict).toBe(verdict))

  it('offers the printed flow that would settle it', () => {
    const found = findingOf('filter_flow', filter(800))
    const wanted = found.action?.want?.minimum.ratedFlowLph ?? NaN
    expect(findingOf('filter_flow', filter(wanted)).verdict).toBe('fits')
    expect(findingOf('filter_flow', filter(wanted - 40)).verdict).toBe('marginal')
  })

  it('judges the tenth that it tells', () => {
    // Own: 1890 L/h by half through 237.71 L are 3.975 an hour, told as 4.0.
    expect(findingOf('filter_flow', filter(1890))).toMatchObject({ verdict: 'fits', value: { value: 4 }, margin: { value: 0 } })
  })

  it('is not known for a sponge that prints no flow', () => {
    const found = findingOf('filter_flow', { filters: [one('Pellick sponge', { type: 'sponge' })] })
    expect(found).toMatchObject({ verdict: 'not_known', missing: ['flow of the filter'] })
    expect(found.value).toBeUndefined()
  })

  it('does not fit without a filter', () => expect(findingOf('filter_flow', { filters: [] }).verdict).toBe('does_not_fit'))

  it('adds filters up', () => {
    const found = findingOf('filter_flow', { filters: [one('Pellick', { ratedFlowLph: 1000 }, 2)] })
    expect(found.verdict).toBe('fits')
  })
})

describe('flow ceiling', () => {
  /** Group: 6 an hour at most; 237.71 L: 1426 L/h, printed 2037 clean and 2853 loaded. */
  it.each([
    [2030, 'fits'],
    [2100, 'marginal'],
    [2840, 'marginal'],
    [2900, 'does_not_fit'],
  ])('for slow-water fish at %s L/h: %s', (printed, verdict) => {
    expect(findingOf('flow_ceiling', filter(printed), { livestock: group('labyrinth') }).verdict).toBe(verdict)
  })

  it('is not asked of groups that flow does not harm', () => {
    expect(reportOf(filter(3000), { livestock: group('cool-stream') }).findings.some(({ check }) => check === 'flow_ceiling')).toBe(false)
  })
})

describe('filter against feeding', () => {
  /** Own from Timmons & Ebeling’s factor 0.092 (from memory); tolerance 1e-4. */
  it('makes 0.2070 g of ammonia-N from 5 g of feed at 45 % protein', () => expect(ammoniaOfFeed(5)).toBeCloseTo(0.207, 6))
  it('makes 32.20 g from a kilogram at 35 %', () => expect(ammoniaOfFeed(1000, 0.35)).toBeCloseTo(32.2, 6))
  it.each([
    [0.2, 1.035],
    [0.5, 0.414],
    [1, 0.207],
  ])('wants film for it by an uptake of %s g/m² a day', (uptake, film) => expect(filmForAmmonia(0.207, uptake)).toBeCloseTo(film, 6))

  /** Own: 5 L × 0.2 m²/L × 0.2 g/m² ÷ 0.0414 and 5 × 0.7 × 0.5 ÷ 0.0414; below 20 °C less by 1.072 for each degree. */
  it('carries the feed of its film, less of it in cool water', () => {
    expect(feedOfMedia(5, 25).low).toBeCloseTo(4.831, 3)
    expect(feedOfMedia(5, 25).high).toBeCloseTo(42.271, 3)
    expect(feedOfMedia(5, 20)).toEqual(feedOfMedia(5, 25))
    expect(feedOfMedia(5, 10).low / feedOfMedia(5, 20).low).toBeCloseTo(0.499, 3)
  })

  it('judges what the film carries against what the stock eats', () => {
    const livestock = group('african-lake')
    // 5 g of feed: 5.2 L of poor media, 0.6 L of the best.
    expect(findingOf('filter_feed', filter(2000, 5.2), { livestock })).toMatchObject({
      verdict: 'fits',
      value: { value: 5, unit: 'g' },
      limit: { kind: 'at_least', low: { value: 5 } },
    })
    expect(findingOf('filter_feed', filter(2000, 3), { livestock }).verdict).toBe('marginal')
    const small = findingOf('filter_feed', filter(2000, 0.5), { livestock })
    expect(small.verdict).toBe('does_not_fit')
    expect(sayPhrase(small.reason, METRIC)).toContain('the film on 500 mL of media takes up that of 0.48 g to 4.2 g')
    expect(sayPhrase(small.action?.text ?? [], METRIC)).toContain('at least 5.2 L of media')
  })

  it('tells a need of less than a litre in millilitres, so that nobody reads 0.0', () => {
    // Own: 0.05 g × 0.45 × 0.092 / 0.2 is 0.01035 m² of film; at 0.2 m² a litre 52 mL.
    const found = findingOf('filter_feed', filter(2000, 0.03), { livestock: group('dwarf-shrimp') })
    expect(found.verdict).toBe('marginal')
    expect(sayPhrase(found.action?.text ?? [], US)).toContain('at least 1.8 fl oz (52 mL) of media')
  })

  it('takes the media of its kind and flow where none are stated, and asks for them only where they decide', () => {
    // Own: a canister printed at 2000 L/h holds 6 to 16 L; 5 g of feed want 5.2, 10 g want 10.4.
    const fed = (feedGramsPerDay: number) =>
      findingOf('filter_feed', filter(2000), { livestock: { ...group('small-tropical'), feedGramsPerDay } })
    expect(fed(5)).toMatchObject({ verdict: 'fits', value: { value: 5.8 } })
    expect(fed(5).assumed).toContain('volume of the media')
    expect(fed(10)).toMatchObject({ verdict: 'not_known', missing: ['volume of the media'] })
    const bare = findingOf('filter_feed', { filters: [one('Pellick sponge', { type: 'sponge' as const })] })
    expect(bare).toMatchObject({ verdict: 'marginal', value: { value: 0.19 } })
  })
})

describe('what the stock eats', () => {
  const fish = (adultLengthMm: number | undefined, count: number) => ({ animals: [one('Silver dart', { adultLengthMm }, count)] })

  /** Own: 4 cm cubed × 0.008 to 0.02 g × 0.5 to 2 %, by 20. */
  it('is reckoned from the length of the animals chosen, as a range', () => {
    expect(stockFeed({ gear: gear(fish(40, 20)), conditions: conditions() }).grams.low).toBeCloseTo(0.0512, 4)
    expect(stockFeed({ gear: gear(fish(40, 20)), conditions: conditions() }).grams.high).toBeCloseTo(0.512, 3)
    expect(sayPhrase(findingOf('filter_feed', fish(40, 20)).reason, METRIC)).toContain(
      'Grown, the animals chosen here eat 0.05 g to 0.51 g of dry feed a day.',
    )
    expect(findingOf('surface_oxygen', fish(40, 20)).limit).toMatchObject({ low: { value: 0.51 } })
  })
  it('is the usual stock of the group where a length is missing', () => {
    const part = { animals: [...fish(40, 20).animals, ...fish(undefined, 1).animals] }
    expect(stockFeed({ gear: gear(part), conditions: conditions() })).toMatchObject({ grams: { low: 1, high: 1 }, who: 'group' })
  })
})

describe('weekly water change', () => {
  const fed = (feedGramsPerDay: number) => ({ livestock: { ...group('small-tropical'), feedGramsPerDay } })

  /** Own, from 0.8708 mg N/L a day of 5 g of feed in 237.7 L: by seven, × 4.4268 of nitrate, × 7.14 of calcium carbonate ÷ 17.848. */
  it('adds nitrate and uses carbonate hardness up', () => {
    expect(weekOf(5, 237.7132).nitrateMgL).toBeCloseTo(26.984, 2)
    expect(weekOf(5, 237.7132).khDegrees).toBeCloseTo(2.4385, 3)
  })
  it('is judged by the share that keeps nitrate in bounds', () => {
    expect(findingOf('weekly_change', {}, fed(1))).toMatchObject({ verdict: 'fits', value: { value: 13, unit: 'percent' } })
    expect(findingOf('weekly_change', {}, fed(3.7))).toMatchObject({ verdict: 'fits', value: { value: 50 } })
    expect(findingOf('weekly_change', {}, fed(3.75))).toMatchObject({ verdict: 'marginal', value: { value: 51 } })
    expect(findingOf('weekly_change', {}, fed(6)).verdict).toBe('does_not_fit')
    expect(sayPhrase(findingOf('weekly_change', {}, fed(8)).reason, METRIC)).toContain(
      'No one change a week keeps it at 40 mg/L of nitrate; two of 54 % each do.',
    )
  })
  it('bears less nitrate in salt water', () => {
    const [fresh, salt] = ['fresh', 'salt'].map((water) =>
      findingOf('weekly_change', {}, { livestock: { ...group('small-tropical'), water: water as 'fresh' | 'salt' } }),
    )
    expect(salt?.value?.value).toBeGreaterThan(1.9 * (fresh?.value?.value ?? 0))
  })
})
