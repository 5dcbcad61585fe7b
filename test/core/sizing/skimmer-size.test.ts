import { describe, expect, it } from 'vitest'
import type { Appliance } from '../../../core/sizing/gear.ts'
import { actionOf, inRoundTank, isMadeInRoundTank, reasonOf } from './round-tank.ts'
import { findingOf, group, one } from './sample-build.ts'

/** 48 × 18 × 21 in, of glass whose thickness nobody stated. */
const UNSTATED = { lengthMm: 1219.2, widthMm: 457.2, heightMm: 533.4 }
const REEF = { livestock: group('soft-coral-reef') }
const skimmers = (...specs: Array<Appliance['spec']>) => ({
  appliances: specs.map((spec) => ({ kind: 'skimmer' as const, ...one('Corbelle foam', spec) })),
})
const named = (ratedVolumeL?: number) => inRoundTank('skimmer_size', skimmers({ ratedVolumeL }), REEF)

describe('a skimmer in 160 L', () => {
  // Common practice: its box names half as much again, 240 L.
  it.each([
    [159, 'does_not_fit'],
    [160, 'marginal'],
    [239, 'marginal'],
    [240, 'fits'],
  ])('whose box names %s L: %s', (litres, verdict) => {
    const found = named(litres)
    expect(found).toMatchObject({
      verdict,
      value: { value: litres, unit: 'L' },
      limit: { kind: 'at_least', low: { value: 160 } },
      margin: { value: litres - 160 },
      source: { tag: 'common_practice' },
    })
    expect(reasonOf(found)).toBe(
      `The skimmer's box names ${litres} L; there are 160 L of water, and for a usual stock it should name 240 L or more.`,
    )
    expect(actionOf(found)).toBe(verdict === 'fits' ? null : 'Choose a skimmer whose box names 240 L or more, or change more water.')
  })

  it('adds up with others, and is not known where one of them names nothing', () => {
    const two = {
      appliances: [
        { kind: 'skimmer' as const, ...one('Corbelle foam', { ratedVolumeL: 70 }, 2) },
        ...skimmers({ ratedVolumeL: 100 }).appliances,
      ],
    }
    expect(inRoundTank('skimmer_size', two, REEF).value?.value).toBe(240)
    for (const specs of [
      [{ ratedVolumeL: 300 }, {}],
      [{}, { ratedVolumeL: 300 }],
    ]) {
      const found = inRoundTank('skimmer_size', skimmers(...specs), REEF)
      expect(found).toMatchObject({ verdict: 'not_known', missing: ['tank size on the skimmer’s box'], limit: { low: { value: 160 } } })
      expect(reasonOf(found)).toBe('No tank size is stated for the skimmer; for 160 L of water it should name 240 L or more.')
      expect(actionOf(found)).toBe("Enter the tank size on the skimmer's box.")
    }
  })

  it('tells of water that nobody stated in full that it is the most there may be', () =>
    expect(reasonOf(findingOf('skimmer_size', { ...skimmers({ ratedVolumeL: 400 }), tank: one('Wendlemere', UNSTATED) }, REEF))).toMatch(
      /there are up to 2\d\d L of water/,
    ))

  it('is judged by skimmers alone, and in salt water alone', () => {
    const pump = { appliances: [{ kind: 'circulation_pump' as const, ...one('Corbelle stream', {}) }] }
    expect(isMadeInRoundTank('skimmer_size', pump, REEF)).toBe(false)
    expect(
      inRoundTank('skimmer_size', { appliances: [...pump.appliances, ...skimmers({ ratedVolumeL: 240 }).appliances] }, REEF).verdict,
    ).toBe('fits')
    expect(isMadeInRoundTank('skimmer_size', skimmers({ ratedVolumeL: 240 }))).toBe(false)
  })
})
