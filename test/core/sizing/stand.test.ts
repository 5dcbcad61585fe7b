import { describe, expect, it } from 'vitest'
import type { StandSpec } from '../../../core/catalog/spec.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { findingOf, gear, one, reportOf } from './sample-build.ts'

const stand = (spec: StandSpec) => ({ stand: one('Thornby', spec) })
const tank = (style?: 'rimmed' | 'rimless') => ({ tank: one('Wendlemere', { ...gear().tank!.spec, style }) })

describe('stand load', () => {
  /** Own: 356.9 kg filled to the rim. */
  it.each([
    [393, 'fits'],
    [392, 'marginal'],
    [357, 'marginal'],
    [356, 'does_not_fit'],
  ])('of %s kg: %s', (ratedLoadKg, verdict) => {
    const found = findingOf('stand_load', stand({ ratedLoadKg }))
    expect(found.verdict).toBe(verdict)
    expect(found.limit).toMatchObject({ kind: 'at_least', low: { value: 357, unit: 'kg' } })
    expect(found.caution).toMatch(/A full tank that falls can kill/)
  })

  it('without a stated load is not known, and says what it must carry', () => {
    const found = findingOf('stand_load', stand({}))
    expect(found.verdict).toBe('not_known')
    expect(found.missing).toEqual(['stated load of the stand'])
    expect(sayPhrase(found.reason, METRIC)).toContain('357 kg')
    expect(found.action?.want?.minimum.ratedLoadKg).toBe(393)
  })

  it('is not known either when the tank stands on something of its owner’s', () => {
    const found = findingOf('stand_load', { stand: null, notNeeded: { carry_tank: 'a sideboard' } })
    expect(found.verdict).toBe('not_known')
    expect(sayPhrase(found.reason, METRIC)).toMatch(/something whose load nobody has stated/)
  })

  it('weighs the brim-full state, not the running one', () => {
    expect(findingOf('stand_load', {}, { waterBelowRimMm: 100 }).limit).toEqual(findingOf('stand_load').limit)
  })
})

describe('stand size', () => {
  it('does not fit where the tank overhangs', () => {
    const found = findingOf('stand_footprint', stand({ topLengthMm: 1200, topWidthMm: 460 }))
    expect(found.verdict).toBe('does_not_fit')
    expect(found).toMatchObject({
      value: { value: 1200, unit: 'mm' },
      limit: { kind: 'at_least', low: { value: 1219 } },
      margin: { value: -19 },
    })
    expect(found.action?.want?.minimum).toEqual({ lengthMm: 1218, widthMm: 456 })
  })

  it('allows a larger board but not a larger frame', () => {
    expect(findingOf('stand_footprint', stand({ topLengthMm: 1300, topWidthMm: 500, top: 'full' })).verdict).toBe('fits')
    expect(findingOf('stand_footprint', stand({ topLengthMm: 1300, topWidthMm: 500, top: 'perimeter' })).verdict).toBe('does_not_fit')
  })

  it('tells the worse of length and depth against the tank’s, short of it wherever it does not fit', () => {
    const frame = (topLengthMm: number, topWidthMm: number) =>
      findingOf('stand_footprint', stand({ topLengthMm, topWidthMm, top: 'perimeter' }))
    // The tank is 1219.2 × 457.2 mm; a frame may stand 20 mm beyond it.
    expect(frame(1300, 460)).toMatchObject({ verdict: 'does_not_fit', value: { value: 1300 }, margin: { value: -61 } })
    expect(frame(1222, 500)).toMatchObject({ verdict: 'does_not_fit', value: { value: 500 }, margin: { value: -23 } })
    expect(frame(1300, 300)).toMatchObject({ verdict: 'does_not_fit', value: { value: 300 }, margin: { value: -157 } })
    expect(frame(1220, 460)).toMatchObject({ verdict: 'fits', value: { value: 1220 }, margin: { value: 1 } })
  })

  it('counts less than a maker’s rounding as no overhang', () => {
    const found = findingOf('stand_footprint', stand({ topLengthMm: 1218, topWidthMm: 456 }))
    expect(found).toMatchObject({ verdict: 'fits', value: { value: 1218 }, limit: { low: { value: 1218 } }, margin: { value: 0 } })
    expect(findingOf('stand_footprint', stand({ topLengthMm: 1216, topWidthMm: 456 })).verdict).toBe('does_not_fit')
  })

  it('is not known where nobody measured the top', () => {
    expect(findingOf('stand_footprint', stand({ ratedLoadKg: 500 })).verdict).toBe('not_known')
  })
})

describe('bed under the glass', () => {
  const mat = (lengthMm: number, widthMm: number) => ({ mat: one('Thornby mat', { lengthMm, widthMm, thicknessMm: 6 }) })
  const full = stand({ topLengthMm: 1220, topWidthMm: 460, top: 'full' })

  it('wants a mat under a rimless tank and none under a rimmed one', () => {
    expect(findingOf('stand_bedding', { ...tank('rimless'), ...full }).verdict).toBe('does_not_fit')
    expect(findingOf('stand_bedding', { ...tank('rimless'), ...full, ...mat(1219, 457) }).verdict).toBe('fits')
    expect(findingOf('stand_bedding', { ...tank('rimmed'), ...full }).verdict).toBe('fits')
    expect(findingOf('stand_bedding', { ...tank('rimmed'), ...full, ...mat(1219, 457) }).verdict).toBe('marginal')
  })

  it('refuses an open frame and a small mat under flat glass', () => {
    expect(findingOf('stand_bedding', { ...tank('rimless'), ...stand({ top: 'perimeter' }), ...mat(1219, 457) }).verdict).toBe(
      'does_not_fit',
    )
    expect(findingOf('stand_bedding', { ...tank('rimless'), ...full, ...mat(900, 457) }).verdict).toBe('does_not_fit')
  })

  it('is not known without a stated style, for the two want opposite things', () => {
    expect(findingOf('stand_bedding', { ...tank(), ...full })).toMatchObject({
      verdict: 'not_known',
      missing: ['style of the tank: rimmed or rimless'],
    })
  })
})

it('keeps particle board dry', () => {
  expect(findingOf('stand_wet', stand({ surface: 'particle_board' })).verdict).toBe('marginal')
  expect(findingOf('stand_wet', stand({ surface: 'metal' })).verdict).toBe('fits')
  expect(reportOf(stand({})).findings.some(({ check }) => check === 'stand_wet')).toBe(false)
})

describe('lifting the empty tank', () => {
  /** Own: 57.283 kg of glass; common practice: two people from 20 kg or 900 mm on, 25 kg each beyond. */
  it('asks for three people for the 75 gallon tank', () => {
    const found = findingOf('empty_lift')
    expect(found).toMatchObject({ verdict: 'marginal', value: { value: 57.3, unit: 'kg' } })
    expect(sayPhrase(found.reason, METRIC)).toContain('3 people, at 25 kg each')
  })

  it('leaves a small one to one person', () => {
    const small = one('Wendlemere', { lengthMm: 600, widthMm: 300, heightMm: 360, glassMm: 6, bottomMm: 6, material: 'glass' as const })
    const found = findingOf('empty_lift', { tank: small })
    expect(found.verdict).toBe('fits')
    expect(sayPhrase(found.reason, METRIC)).toContain('One person can lift it')
  })

  it('gives a long light one to two, and still fits', () => {
    const long = one('Wendlemere', { lengthMm: 914, widthMm: 300, heightMm: 360, glassMm: 4, bottomMm: 4, material: 'glass' as const })
    const found = findingOf('empty_lift', { tank: long })
    expect(found.value?.value).toBeLessThan(20)
    expect(found.verdict).toBe('fits')
    expect(sayPhrase(found.reason, METRIC)).toContain('Two people')
  })
})
