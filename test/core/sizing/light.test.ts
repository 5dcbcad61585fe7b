import { describe, expect, it } from 'vitest'
import { lightAtDepth, photonFlux } from '../../../core/sizing/light-at-depth.ts'
import { lightLevel } from '../../../core/sizing/light-level.ts'
import { situationOf } from '../../../core/sizing/situation.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
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

describe('light and algae', () => {
  const found = (hours: number, plants: 'none' | 'low' | 'medium' | 'high', lm = 3000) =>
    findingOf('light_level', light({ luminousFluxLm: lm, dimmable: true }), { lightHoursPerDay: hours, plants })

  /** Common practice: 8 to 10 hours once plants grow. */
  it.each([
    ['none', 10, 'fits'],
    ['none', 10.5, 'marginal'],
    ['medium', 10, 'fits'],
    ['medium', 11, 'marginal'],
    ['high', 12, 'fits'],
    ['high', 12.5, 'marginal'],
  ] as const)('plants: %s, %s hours a day: %s', (plants, hours, verdict) => {
    const lumens = plants === 'high' ? 9000 : 3000
    expect(found(hours, plants, lumens).verdict).toBe(verdict)
    if (verdict === 'marginal') expect(sayPhrase(found(hours, plants, lumens).reason, METRIC)).toContain('So many hours feed algae.')
  })

  it('warns of much light without food for plants', () => {
    expect(sayPhrase(found(8, 'high', 9000).reason, METRIC)).toContain('Without carbon dioxide and fertiliser')
    const fed = findingOf(
      'light_level',
      { ...light({ luminousFluxLm: 9000, dimmable: true }), appliances: [{ kind: 'co2', ...one('Pellick Gas', { powerW: 3 }) }] },
      { plants: 'high' },
    )
    expect(sayPhrase(fed.reason, METRIC)).not.toContain('carbon dioxide')
    expect(sayPhrase(found(8, 'medium').reason, METRIC)).not.toContain('carbon dioxide')
  })
})

describe('coloured light', () => {
  it('is not judged by its lumens, of which the eye misses most', () => {
    const lamp = light({ luminousFluxLm: 3000, spectrum: 'coloured' })
    expect(photonFlux({ luminousFluxLm: 3000, spectrum: 'coloured' })).toBeUndefined()
    expect(findingOf('light_level', lamp)).toMatchObject({ verdict: 'not_known', missing: ['photon flux of the light'] })
    expect(sayPhrase(findingOf('light_level', lamp).action?.text ?? [], METRIC)).toContain('lumens tell nothing of coloured light')
    expect(reportOf(lamp).figures.lightAtBedUmol).toBeUndefined()
  })

  it('is judged by its photon flux like any other', () => {
    const white = findingOf('light_level', light({ photonFluxUmolS: 40 }))
    expect(findingOf('light_level', light({ photonFluxUmolS: 40, luminousFluxLm: 300, spectrum: 'coloured' }))).toEqual(white)
    expect(sayPhrase(white.reason, METRIC)).not.toContain('Reckoned for white light')
    expect(sayPhrase(findingOf('light_level', light({ luminousFluxLm: 3000 })).reason, METRIC)).toContain('Reckoned for white light')
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

  it('tells how ends and front compare with the middle', () => {
    expect(sayPhrase(findingOf('light_coverage').reason, METRIC)).toMatch(
      /^115 cm of light over 121\.9 cm of tank\. Before the end panes it gives \d\d % of the light in the middle, before the front pane \d\d %\.$/,
    )
  })

  it('asks for a second row over a deep planted tank, which two long ones or a wide one are', () => {
    const tank = one('Deep', { lengthMm: 1219, widthMm: 700, heightMm: 450, glassMm: 10, bottomMm: 10, material: 'glass' as const })
    const over = (spec: LightSpec, count = 1, plants: 'none' | 'medium' = 'medium') =>
      findingOf('light_coverage', { tank, lights: [one('Halden', { lengthMm: 1150, luminousFluxLm: 6000, ...spec }, count)] }, { plants })
    expect(over({ widthMm: 80 })).toMatchObject({ verdict: 'marginal', margin: { value: 69 } })
    expect(sayPhrase(over({ widthMm: 80 }).action?.text ?? [], METRIC)).toContain('a second row')
    expect(over({ widthMm: 80 }, 2).verdict).toBe('fits')
    expect(over({ widthMm: 500 }).verdict).toBe('fits')
    expect(over({ widthMm: 80 }, 1, 'none').verdict).toBe('fits')
  })

  it('takes two in line for one', () => {
    expect(findingOf('light_coverage', { lights: [one('Halden', { lengthMm: 600 }, 2)] }).verdict).toBe('fits')
  })

  it('is not known where the length is not stated', () => {
    expect(findingOf('light_coverage', { lights: [one('Halden', { powerW: 20 })] }).verdict).toBe('not_known')
  })
})
