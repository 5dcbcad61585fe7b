import { describe, expect, it } from 'vitest'
import { lightAtDepth, photonFlux } from '../../../core/sizing/light-at-depth.ts'
import { lightLevel } from '../../../core/sizing/light-level.ts'
import { situationOf } from '../../../core/sizing/situation.ts'
import { conditions, findingOf, gear, one, reportOf } from './sample-build.ts'
import type { LightSpec } from '../../../core/catalog/spec.ts'
import { isNear } from './reference-tanks.ts'

const light = (spec: LightSpec) => ({ lights: [one('Halden', { lengthMm: 1150, widthMm: 80, powerW: 30, ...spec })] })

describe('light at a depth', () => {
  const path = { fluxUmolS: 3000 / 70, utilisation: 0.9532, entering: 0.97, waterAreaM2: 0.52429, attenuationPerM: 0.5, depthM: 0 }
  /** Own worked example, tolerance 1e-3. */
  it('gives 75.58 µmol/m²s at the surface and 60.96 at 0.43 m', () => {
    isNear(lightAtDepth(path), 75.58, 1e-3)
    isNear(lightAtDepth({ ...path, depthM: 0.43 }), 60.96, 1e-3)
  })

  /** Beer–Lambert at 0.45 m, tolerance 1e-4. */
  it.each([
    [0.1, 0.956],
    [0.5, 0.7985],
    [1, 0.6376],
    [2, 0.4066],
  ])('lets attenuation of %s per metre leave %s', (attenuationPerM, share) => {
    isNear(lightAtDepth({ ...path, attenuationPerM, depthM: 0.45 }) / lightAtDepth(path), share, 1e-4)
  })

  it('takes a stated photon flux as it is and lumens as a range', () => {
    expect(photonFlux({ photonFluxUmolS: 40, luminousFluxLm: 9999 })).toEqual({ low: 40, high: 40 })
    expect(photonFlux({ luminousFluxLm: 2400 })).toEqual({ low: 30, high: 40 })
    expect(photonFlux({ powerW: 30 })).toBeUndefined()
  })
})

describe('light at the substrate', () => {
  it('lies around the worked example’s figure', () => {
    const { lightAtBedUmol } = reportOf({ lid: null, ...light({ luminousFluxLm: 3000 }) }).figures
    expect(lightAtBedUmol?.low).toBeLessThan(61)
    expect(lightAtBedUmol?.high).toBeGreaterThan(61)
  })

  it('does not fit where even the bright end is too dark, and offers lumens that settle it', () => {
    const found = findingOf('light_level', light({ luminousFluxLm: 900 }))
    expect(found.verdict).toBe('does_not_fit')
    const lumens = found.action?.want?.minimum.luminousFluxLm ?? NaN
    expect(findingOf('light_level', light({ luminousFluxLm: lumens, dimmable: true })).verdict).toBe('fits')
  })

  it('is marginal where the range reaches below the plants’ band', () => {
    expect(findingOf('light_level', light({ luminousFluxLm: 1600 })).verdict).toBe('marginal')
  })

  it('is marginal where it is too bright, unless it can be dimmed', () => {
    expect(findingOf('light_level', light({ luminousFluxLm: 9000 })).verdict).toBe('marginal')
    expect(findingOf('light_level', light({ luminousFluxLm: 9000, dimmable: true })).verdict).toBe('fits')
  })

  it('is marginal where even the dark end is above the band, within the share that the bright end may pass it or not', () => {
    // A plain light: 31 µmol/m²s at the dark end and 37 at the bright one, over the undemanding plants' 30.
    const span = { low: 31, high: 37 }
    const situation = situationOf({ gear: gear(), conditions: conditions({ plants: 'low' }) })
    if (!situation.ok) throw new Error(situation.refusal.code)
    const plain = { ...situation.value, gear: gear({ lights: [one('Halden', { lengthMm: 1150, luminousFluxLm: 3000 })] }) }
    const found = lightLevel(plain, { dim: span, bright: span, fluxUnstated: false, perLumenLow: 0.01, shares: [span] })
    expect(found).toMatchObject({ verdict: 'marginal', margin: { value: -7 } })
  })

  it('tells the level after dimming, inside the plants’ band', () => {
    const found = findingOf('light_level', light({ luminousFluxLm: 9000, dimmable: true }))
    expect(found.value?.value).toBeGreaterThanOrEqual(30)
    expect(found.value?.value).toBeLessThanOrEqual(60)
    expect(found.margin?.value).toBeGreaterThanOrEqual(0)
    expect(found.reason[0]).toMatch(/^Dimmed to about/)
  })

  it('is not known where only watts are stated and the verdict hangs on them', () => {
    expect(findingOf('light_level', light({ powerW: 30 }))).toMatchObject({
      verdict: 'not_known',
      missing: ['lumens or photon flux of the light'],
    })
  })

  it('asks plants for light, and nothing of a tank without them', () => {
    expect(findingOf('light_level', { lights: [] }).verdict).toBe('does_not_fit')
    expect(reportOf({ lights: [] }, { plants: 'none' }).findings.some(({ check }) => check === 'light_level')).toBe(false)
  })

  it('is darker under a lid', () => {
    const open = reportOf({ lid: null }).figures.lightAtBedUmol
    const lidded = reportOf().figures.lightAtBedUmol
    isNear((lidded?.low ?? NaN) / (open?.low ?? NaN), 0.9, 0.02)
  })
})

describe('light over the length', () => {
  /** Common practice: 0.75 to 1.0 of the tank’s length, 1219 mm here. */
  it.each([
    [1219, 'fits'],
    [915, 'fits'],
    [910, 'marginal'],
    [740, 'marginal'],
    [720, 'does_not_fit'],
    [1300, 'marginal'],
    [1400, 'does_not_fit'],
  ])('of %s mm: %s', (lengthMm, verdict) => expect(findingOf('light_coverage', light({ lengthMm })).verdict).toBe(verdict))

  it('judges the millimetres that it tells', () => {
    // Three quarters of 1219.2 mm are 914.4, told as 914.
    expect(findingOf('light_coverage', light({ lengthMm: 914 }))).toMatchObject({ verdict: 'fits', margin: { value: 0 }, action: null })
    const short = findingOf('light_coverage', light({ lengthMm: 913 }))
    expect(short).toMatchObject({ verdict: 'marginal', margin: { value: -1 }, action: { want: { minimum: { lengthMm: 914 } } } })
  })

  it('takes two in line for one', () => {
    expect(findingOf('light_coverage', { lights: [one('Halden', { lengthMm: 600 }, 2)] }).verdict).toBe('fits')
  })

  it('is not known where the length is not stated', () => {
    expect(findingOf('light_coverage', { lights: [one('Halden', { powerW: 20 })] }).verdict).toBe('not_known')
  })
})
