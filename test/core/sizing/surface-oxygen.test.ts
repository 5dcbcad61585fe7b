import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jetPowerW, LEAST_OXYGEN_MG_L, oxygenOfFeed, stillTransfer, stirredBy, surfaceOxygen } from '../../../core/sizing/surface-oxygen.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { oxygenSaturation } from '../../../core/water/dissolved-oxygen.ts'
import { SALINITY } from '../../../core/water/sea-salinity.ts'
import { isNear } from './reference-tanks.ts'
import { findingOf, gear, group, one, reportOf } from './sample-build.ts'

const SURFACE = { areaM2: 0.52429, waterC: 25, water: 'fresh' } as const

describe('oxygen of a day', () => {
  it('costs what is breathed and 4.57 g for each gram of ammonia-N', () => {
    // 5 g of feed at 45 % protein make 0.207 g of ammonia-N, and that takes 0.9460 g of oxygen (own worked value).
    isNear(oxygenOfFeed().low - 0.3, 0.946 / 5, 1e-3)
    expect(oxygenOfFeed().high - oxygenOfFeed().low).toBeCloseTo(0.2, 12)
  })

  it('is taken up by the film model: lacking milligrams × centimetres an hour × square metres', () => {
    // (8.263 − 5) g/m³ × 0.02481 m/h × 0.52429 m² × 24 h, by hand.
    isNear(surfaceOxygen(SURFACE, stillTransfer(SURFACE)), 1.0187, 2e-3)
  })

  it('is nothing where the water holds no more than the least, and grows with the area', () => {
    const any = fc.record({
      areaM2: fc.double({ min: 0.01, max: 3, noNaN: true }),
      waterC: fc.double({ min: 0, max: 35, noNaN: true }),
      water: fc.constantFrom('fresh' as const, 'salt' as const),
    })
    fc.assert(
      fc.property(any, fc.double({ min: 1e-6, max: 2, noNaN: true }), (surface, powerW) => {
        const taken = surfaceOxygen(surface, stillTransfer(surface))
        expect(taken > 0).toBe(oxygenSaturation(surface.waterC, SALINITY[surface.water]) > LEAST_OXYGEN_MG_L)
        isNear(surfaceOxygen({ ...surface, areaM2: surface.areaM2 * 2 }, 2), surfaceOxygen(surface, 4), 1e-9)
        const stirred = stirredBy(surface, powerW, 100)
        expect(stirred.low).toBeGreaterThanOrEqual(stillTransfer(surface))
        expect(stirred.high).toBeGreaterThanOrEqual(stirred.low)
        expect(stirredBy(surface, powerW * 2, 100).high).toBeGreaterThanOrEqual(stirred.high)
      }),
    )
  })
})

describe('a filter’s return', () => {
  it('leaves by its bore with half a mass times the square of its speed', () => {
    // 1200 L/h through 16 mm: 3.333e-4 m³/s at 1.658 m/s, ½ × 1000 × 3.333e-4 × 2.749 = 0.458 W, by hand.
    isNear(jetPowerW(1200, 16), 0.458, 3e-3)
    isNear(jetPowerW(2400, 16), jetPowerW(1200, 16) * 8, 1e-12)
    isNear(jetPowerW(1200, 32), jetPowerW(1200, 16) / 16, 1e-12)
  })
})

describe('the finding', () => {
  const fed = (feedGramsPerDay: number, more = {}) =>
    findingOf('surface_oxygen', more, { livestock: { ...group('small-tropical'), feedGramsPerDay } })

  it('goes from fitting over marginal to not fitting as more is fed, and tells grams, no percentage', () => {
    expect(fed(1)).toMatchObject({ verdict: 'fits', action: null, value: { unit: 'g' } })
    expect(fed(12).verdict).toBe('marginal')
    expect(fed(60).verdict).toBe('does_not_fit')
    expect(fed(60).action).not.toBeNull()
    expect(fed(1).assumed).toEqual(['movement of the surface', 'feed a day of the group', 'height above the sea'])
  })

  it('tells what is left in a power cut', () => {
    const still = /in a power cut for (?<grams>[\d.]+) g/.exec(sayPhrase(fed(1).reason, METRIC))?.groups?.['grams']
    expect(Number(still)).toBeGreaterThan(0)
    expect(Number(still)).toBeLessThan(fed(1).value?.value ?? 0)
  })

  it('is not known without the filter’s flow, unless a still surface carries it; bubbles settle it too', () => {
    const unknown = { filters: [one('Pellick sponge', { type: 'sponge' as const })] }
    expect(fed(5, unknown)).toMatchObject({ verdict: 'not_known', missing: ['flow of the filter'] })
    expect(fed(0.1, unknown).verdict).toBe('fits')
    const appliances = [{ kind: 'air_pump' as const, name: 'Torvane air', quantity: 1, spec: {} }]
    expect(fed(2, { ...unknown, appliances }).verdict).toBe('fits')
  })

  it('carries less high above the sea, and in salt water, and says where it is', () => {
    const at = (altitudeM: number | undefined, water: 'fresh' | 'salt' = 'fresh') =>
      findingOf('surface_oxygen', {}, { altitudeM, livestock: { ...group('small-tropical'), water } })
    expect(sayPhrase(at(undefined).reason, METRIC)).toContain('At 28.0 °C and at the height of the sea the surface')
    expect(sayPhrase(at(1600).reason, METRIC)).toContain('at 1,600 m above the sea')
    expect(sayPhrase(at(1600).reason, US)).toContain('at 5,249 ft above the sea')
    expect(at(1600).value?.value).toBeLessThan(at(0).value?.value ?? 0)
    expect(at(undefined).value).toEqual(at(0).value)
    expect(at(0, 'salt').value?.value).toBeLessThan(at(0).value?.value ?? 0)
  })

  it('leaves a build without a filter to the check that asks for one', () => {
    const { filters: _, ...others } = gear()
    expect(reportOf({ ...others, filters: [] }).findings.some(({ check }) => check === 'surface_oxygen')).toBe(false)
  })
})
