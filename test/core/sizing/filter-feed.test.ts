import { describe, expect, it } from 'vitest'
import type { FilterSpec } from '../../../core/catalog/spec.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'
import { figuresOf, told } from './told.ts'

/**
 * Own, from Timmons & Ebeling’s factor 0.092 (from memory): 1 g of feed at 45 % protein makes 0.0414 g of ammonia-N. A litre of poor media has 0.2 m² and
 * takes up 0.2 g/m²: 0.04 g, the ammonia of 0.966 g of feed; of the best 0.7 × 0.5 = 0.35 g, that of 8.454 g.
 */
const filter = (spec: FilterSpec, quantity = 1) => ({
  filters: [one('Pellick', { type: 'canister' as const, powerW: 20, ...spec }, quantity)],
})
const fed = (feedGramsPerDay: number, change = {}) => ({ livestock: { ...group('small-tropical'), feedGramsPerDay, ...change } })
const ON_TOP = 'What grows on substrate and stones comes on top; cool water and a new tank carry less.'

describe('what is told of feed and media', () => {
  it('where poor media do', () => {
    const found = findingOf('filter_feed', filter({ mediaVolumeL: 5.2 }), fed(1))
    expect(told(found)).toEqual({
      verdict: 'fits',
      reason: `A usual stock eats 1.0 g of dry feed a day. While ammonia is too low to be read, the film on 5.2 L of media takes up that of 5.0 g to 44.0 g. ${ON_TOP}`,
      action: null,
      assumed: ['film area of the media', 'feed a day of the group'],
      missing: [],
    })
    expect(figuresOf(found)).toMatchObject({ value: 5, low: 1, margin: 4 })
    expect(found.source.tag).toBe('from_memory')
  })

  it('where not even the best do: 5 g want 5.2 L', () => {
    const found = findingOf('filter_feed', filter({ mediaVolumeL: 0.5 }), fed(5))
    expect(told(found)).toMatchObject({
      verdict: 'does_not_fit',
      action: 'Feed less, keep fewer animals, or choose a filter with at least 5.2 L of media. Test for ammonia each week.',
    })
    expect(told(found).reason).toContain('the film on 500 mL of media takes up that of 0.48 g to 4.2 g.')
  })

  it('where the media of the kind decide: 3 to 8 mL for each litre an hour', () => {
    const open = findingOf('filter_feed', filter({ ratedFlowLph: 2000 }), fed(10))
    expect(told(open)).toMatchObject({
      verdict: 'not_known',
      action: "Enter the volume of the filter's media; 10 L carry it in any case.",
      missing: ['volume of the media'],
      assumed: ['film area of the media', 'feed a day of the group'],
    })
    expect(told(open).reason).toContain('the film on 6.0 L to 16 L of media takes up that of 5.8 g to 135.3 g.')
  })

  it('of a litre and of just under it', () => {
    const media = (mediaVolumeL: number) => told(findingOf('filter_feed', filter({ mediaVolumeL }), fed(1))).reason
    expect(media(1)).toContain('the film on 1.0 L of media')
    expect(media(0.99)).toContain('the film on 990 mL of media')
  })
})

it('counts each of several filters', () => {
  // Two of 3 L are 6 L: 5.8 g. Of a hang-on printed at 1000 L/h two hold 2 × 0.8 to 2 × 2.5 L, poor media 1.55 g.
  expect(findingOf('filter_feed', filter({ mediaVolumeL: 3 }, 2), fed(5)).value?.value).toBe(5.8)
  const two = findingOf('filter_feed', filter({ type: 'hang_on', ratedFlowLph: 1000 }, 2), fed(1))
  expect(two.value?.value).toBe(1.5)
  expect(told(two).reason).toContain('the film on 1.6 L to 5.0 L of media')
})

it('asks for media where one of two filters states none', () => {
  const filters = [one('A', { type: 'canister' as const, mediaVolumeL: 9 }), one('B', { type: 'hang_on' as const })]
  expect(findingOf('filter_feed', { filters }, fed(1)).assumed).toContain('volume of the media')
})

it('takes the media of any kind where nobody says which it is', () => {
  // 0.1 to 12 L without a flow: poor media of 0.1 L carry 0.097 g.
  expect(findingOf('filter_feed', { filters: [one('Pellick', {})] }, fed(1)).value?.value).toBe(0.1)
})

it('fits where the film takes up just what is eaten, and not with a tenth of a gram more', () => {
  const verdicts = [4.8, 4.9].map((grams) => findingOf('filter_feed', filter({ mediaVolumeL: 5 }), fed(grams)).verdict)
  expect(verdicts).toEqual(['fits', 'marginal'])
  // The best media of 0.5 L carry 4.2 g.
  const most = [4.2, 4.3].map((grams) => findingOf('filter_feed', filter({ mediaVolumeL: 0.5 }), fed(grams)).verdict)
  expect(most).toEqual(['marginal', 'does_not_fit'])
})

it('carries less in water below 20 °C, by 1.072 for each degree', () => {
  // 5 L carry 4.83 g; at 18 °C 4.83 ÷ 1.1492 = 4.20 g.
  const at = (targetC: number) => findingOf('filter_feed', filter({ mediaVolumeL: 5 }), fed(1, { targetC })).value?.value
  expect([at(25), at(20), at(18)]).toEqual([4.8, 4.8, 4.2])
  // The best of 0.3 L carry 0.3 × 8.454 ÷ 1.1492 = 2.2 g.
  const cool = findingOf('filter_feed', filter({ mediaVolumeL: 0.3 }), fed(1, { targetC: 18 }))
  expect(told(cool).reason).toContain('takes up that of 0.25 g to 2.2 g.')
})

it('is not asked without a filter', () => {
  expect(reportOf({ filters: [] }).findings.some(({ check }) => check === 'filter_feed')).toBe(false)
})
