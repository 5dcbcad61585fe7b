import { describe, expect, it } from 'vitest'
import type { Appliance } from '../../../core/sizing/gear.ts'
import { salinityWithout } from '../../../core/sizing/salinity-drift.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'

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
  it('is not asked for', () => expect(reportOf({}, reef).findings.some(({ check }) => check === 'skimmer_size')).toBe(false))
})
