import { describe, expect, it } from 'vitest'
import type { Appliance } from '../../../core/sizing/gear.ts'
import { salinityWithout } from '../../../core/sizing/salinity-drift.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'
import { figuresOf, told } from './told.ts'

const reef = { livestock: group('soft-coral-reef') }
const pump = (ratedFlowLph: number | undefined, count = 1): Appliance => ({
  kind: 'circulation_pump',
  ...one('Corbelle stream', { ratedFlowLph }, count),
})
const skimmer = (ratedVolumeL: number | undefined): Appliance => ({ kind: 'skimmer', ...one('Corbelle foam', { ratedVolumeL }) })

describe('salinity between top-ups', () => {
  /** By hand: 35 × 200 ÷ 198 and ÷ 186. */
  it('rises as water goes and salt stays', () => {
    expect(salinityWithout(200, 2, 1)).toBeCloseTo(35.3535, 4)
    expect(salinityWithout(200, 2, 7)).toBeCloseTo(37.6344, 4)
    expect(salinityWithout(200, 1e6, 7)).toBeLessThanOrEqual(350.01)
  })

  it('is told for a day and a week, with what a stuck top-up does', () => {
    const found = findingOf('salinity_drift', { lid: null }, reef)
    expect(found).toMatchObject({ verdict: 'fits', value: { unit: 'percent' }, limit: { high: { value: 1.5 } } })
    expect(sayPhrase(found.reason, METRIC)).toMatch(
      /evaporate and leave their salt: without a top-up salinity rises from 35\.0 g\/kg to 35\.\d g\/kg to 35\.\d g\/kg in a day .* An automatic top-up that sticks runs its whole reservoir in: 24 L lower it from 35\.0 g\/kg to 31\.8 g\/kg; with 2[0-9] L or less it stays above 32\.0 g\/kg\.$/,
    )
    expect(sayPhrase(found.reason, { ...US, salinity: 'sg' })).toContain('rises from 1.0264 SG')
    expect(sayPhrase(found.action?.text ?? [], METRIC)).toContain('fresh water, never with salt water')
  })

  it('rises less under a lid, and is asked of salt water alone', () => {
    const value = (changes: object) => findingOf('salinity_drift', changes, reef).value?.value ?? NaN
    expect(value({})).toBeLessThan(value({ lid: null }))
    expect(reportOf().findings.some(({ check }) => check === 'salinity_drift')).toBe(false)
  })

  it('does not fit where a small open tank stands in a cold dry room', () => {
    const small = {
      lid: null,
      tank: one('Wendlemere 10', { lengthMm: 600, widthMm: 400, heightMm: 120, glassMm: 6, bottomMm: 6, material: 'glass' as const }),
    }
    expect(findingOf('salinity_drift', small, { ...reef, substrateDepthMm: 20, coldestRoomC: 12 }).verdict).toBe('does_not_fit')
  })
})

describe('movement of salt water', () => {
  /** Own: 1000 L/h of the filter with loaded media beside the pump's, in 237.7 L. */
  it.each([
    [1380, 'fits'],
    [1300, 'marginal'],
    [150, 'does_not_fit'],
  ])('of a pump of %s L/h beside the filter %s', (flow, verdict) => {
    expect(findingOf('circulation', { appliances: [pump(flow)] }, reef).verdict).toBe(verdict)
  })
  it('offers the pump that is missing', () => {
    const found = findingOf('circulation', {}, reef)
    expect(found.action?.want).toEqual({ slot: 'circulate', quantity: 1, minimum: { ratedFlowLph: 1400 } })
    expect(findingOf('circulation', { appliances: [pump(1400)] }, reef).verdict).toBe('fits')
  })
  it('is not known where the flow decides and nobody states it', () => {
    expect(findingOf('circulation', { appliances: [pump(undefined)] }, reef)).toMatchObject({
      verdict: 'not_known',
      missing: ['flow of the circulation pump'],
    })
    expect(findingOf('circulation', { appliances: [pump(undefined), pump(2000)] }, reef).verdict).toBe('fits')
  })
  it('is told with what is missing: 10 × 237.71 L less 1000 L/h of the filter is 1377 L/h', () => {
    const found = findingOf('circulation', {}, reef)
    expect(told(found)).toEqual({
      verdict: 'does_not_fit',
      reason:
        'Pumps and filter together move the water 4.2 times an hour; salt water is moved 10 times an hour at the least, and 20 times an hour or more where corals of strong water live.',
      action: 'Add circulation pumps of 1,400 L/h or more together, one at each end.',
      assumed: [],
      missing: [],
    })
    expect(figuresOf(found)).toEqual({ value: 4.2, low: 10, high: undefined, margin: -5.8 })
    expect(found.source.tag).toBe('common_practice')
  })
  it('counts every pump of a line, and pumps alone where there is no filter', () => {
    // 1000 and two of 700 L/h: 10.1; 1380 L/h alone: 5.8, and 997 more would do.
    expect(findingOf('circulation', { appliances: [pump(700, 2)] }, reef)).toMatchObject({
      verdict: 'fits',
      value: { value: 10.1 },
      action: null,
    })
    const alone = findingOf('circulation', { filters: [], appliances: [pump(1380)] }, reef)
    expect(told(alone)).toMatchObject({
      verdict: 'marginal',
      action: 'Add circulation pumps of 1,000 L/h or more together, one at each end.',
      missing: [],
    })
    const skimming = { ...pump(5000), kind: 'skimmer' as const }
    expect(findingOf('circulation', { appliances: [skimming] }, reef).value?.value).toBe(4.2)
  })
  it('is marginal from half of the least: 5.0 an hour are 188.6 L/h of a pump, told as 5.0 from 177', () => {
    const verdicts = [180, 170].map((flow) => findingOf('circulation', { appliances: [pump(flow)] }, reef).verdict)
    expect(verdicts).toEqual(['marginal', 'does_not_fit'])
  })
  it('asks for the flow of a filter or a pump that prints none', () => {
    const found = findingOf('circulation', { filters: [one('Pellick', {})], appliances: [pump(undefined), pump(undefined)] }, reef)
    expect(told(found)).toMatchObject({
      verdict: 'not_known',
      action: 'Enter the printed flow.',
      missing: ['flow of the circulation pump', 'flow of the filter'],
    })
    expect(found.action?.want?.slot).toBe('circulate')
  })
  it('names the glass where its thickness decides, and the fill that it took', () => {
    const tank = one('Wendlemere', { lengthMm: 1219.2, widthMm: 457.2, heightMm: 533.4, bottomMm: 10, material: 'glass' as const })
    // Glass of 8 to 15 mm: some 241 to 232 L, 2360 L/h turn the one less than ten times and the other more.
    const found = findingOf('circulation', { tank, appliances: [pump(1360)] }, { ...reef, assumed: ['substrateDepthMm'] })
    expect(found).toMatchObject({ verdict: 'not_known', missing: ['glass thickness'], assumed: ['substrate depth'] })
  })
  it('is not asked of fresh water', () => expect(reportOf().findings.some(({ check }) => check === 'circulation')).toBe(false))
})

describe('a skimmer', () => {
  it.each([
    [360, 'fits'],
    [300, 'marginal'],
    [200, 'does_not_fit'],
    [undefined, 'not_known'],
  ])('whose box names %s L: %s', (litres, verdict) => {
    expect(findingOf('skimmer_size', { appliances: [skimmer(litres)] }, reef).verdict).toBe(verdict)
  })
  it('in a sump asks how much that still holds when the power fails', () => {
    const asked = (place: 'in_sump' | 'hang_on') =>
      reportOf({ appliances: [{ ...skimmer(400), spec: { ratedVolumeL: 400, place } }] }, reef).findings.find(
        ({ check }) => check === 'drain_down',
      )
    expect(asked('in_sump')).toMatchObject({ verdict: 'not_known', missing: ['siphon level', 'water in the pipes', 'volume of the sump'] })
    expect(asked('hang_on')).toBeUndefined()
  })
  it('is not asked for', () => expect(reportOf({}, reef).findings.some(({ check }) => check === 'skimmer_size')).toBe(false))
})
