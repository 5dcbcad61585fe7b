import { describe, expect, it } from 'vitest'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { ammoniaOfFeed, filmForAmmonia } from '../../../core/sizing/filter-feed.ts'
import { turnover } from '../../../core/sizing/filter-flow.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'

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
  it('wants 1.035 m² of film for it at 0.2 g/m² a day', () => expect(filmForAmmonia(0.207)).toBeCloseTo(1.035, 6))

  it('judges media between the best and the poorest film', () => {
    const livestock = group('african-lake')
    // 5 g of feed: 1.035 m², 1.5 to 5.2 L of media.
    expect(findingOf('filter_feed', filter(2000, 5.2), { livestock }).verdict).toBe('fits')
    expect(findingOf('filter_feed', filter(2000, 3), { livestock }).verdict).toBe('marginal')
    expect(findingOf('filter_feed', filter(2000, 1), { livestock }).verdict).toBe('does_not_fit')
    expect(sayPhrase(findingOf('filter_feed', filter(2000, 1), { livestock }).reason, METRIC)).toContain('1.5 L to 5.2 L')
  })

  it('tells a need of less than a litre in millilitres, so that nobody reads 0.0', () => {
    // Own: 0.05 g × 0.45 × 0.092 / 0.2 is 0.01035 m² of film; 0.2 to 0.7 m² a litre.
    const found = findingOf('filter_feed', filter(2000, 0.5), { livestock: group('dwarf-shrimp') })
    expect(found).toMatchObject({ verdict: 'fits', value: { value: 500, unit: 'mL' }, limit: { low: { value: 52, unit: 'mL' } } })
    expect(sayPhrase(found.reason, US)).toContain('needs 15 mL to 52 mL of media; there are 500 mL.')
  })

  it('is left out where the media are not stated', () => {
    expect(reportOf(filter(2000)).findings.some(({ check }) => check === 'filter_feed')).toBe(false)
  })
})
