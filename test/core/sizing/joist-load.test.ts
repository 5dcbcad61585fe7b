import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { beamResponse, type BeamLoad } from '../../../core/sizing/joist-beam.ts'
import { joistLoad, loadShare, LOAD_PATHS, type JoistCase } from '../../../core/sizing/joist-load.ts'
import { isNear } from './reference-tanks.ts'

/** 1 lbf/ft², NIST SP 811; 40 of them in rooms other than bedrooms: IRC table R301.5. */
const PSF = 47.88025898
const US_FLOOR = { massKg: 385, spanM: 3.6576, spacingM: 0.4064, livePa: 40 * PSF, path: 'full' } as const
const EN_FLOOR = { ...US_FLOOR, spanM: 4, spacingM: 0.4, livePa: 2000 } as const
const ACROSS = { alongM: 0.4572, acrossM: 1.2192, longSide: 'across' } as const
const ALONG = { alongM: 1.2192, acrossM: 0.4572, longSide: 'along' } as const
const AT_WALL = 0.05 + 0.4572 / 2

describe('a beam on two supports', () => {
  // AISC Manual, beam diagrams: w·l²/8 and w·l/2; P·l/4 and 5·w·l⁴/384, P·l³/48. From memory.
  it('under an even load over all of it', () => {
    const found = beamResponse([{ newtons: 8, fromM: 0, toM: 4 }], 4)
    expect(found).toMatchObject({ momentNm: 4, shearN: 4 })
    isNear(found.midDeflection, (5 * 2 * 4 ** 4) / 384, 1e-12)
  })
  it('under a weight at its middle', () => {
    const found = beamResponse([{ newtons: 6, fromM: 2, toM: 2 }], 4)
    expect(found).toMatchObject({ momentNm: 6, shearN: 3 })
    isNear(found.midDeflection, (6 * 4 ** 3) / 48, 1e-12)
  })
  it('under a load of one metre at its middle: 0.875, by hand', () => {
    expect(beamResponse([{ newtons: 1, fromM: 1.5, toM: 2.5 }], 4)).toMatchObject({ momentNm: 0.875, shearN: 0.5 })
  })
  /** By hand: reactions by moments about the far end, M·m summed over the half-spans for the deflection (unit-load theorem). */
  it('under two even loads apart: 2 N on the first metre and on the last', () => {
    const found = beamResponse(
      [
        { newtons: 2, fromM: 0, toM: 1 },
        { newtons: 2, fromM: 3, toM: 4 },
      ],
      4,
    )
    expect(found).toMatchObject({ momentNm: 1, shearN: 2 })
    isNear(found.midDeflection, 2 / 3 - 1 / 4 + 3 / 2, 1e-12)
  })
  it('under a weight of 1 N at one metre and 4 N over the far half: turns 1.625 m from the far end', () => {
    const found = beamResponse(
      [
        { newtons: 1, fromM: 1, toM: 1 },
        { newtons: 4, fromM: 2, toM: 4 },
      ],
      4,
    )
    expect(found.shearN).toBe(3.25)
    isNear(found.momentNm, 3.25 * 1.625 - 1.625 ** 2, 1e-12)
  })
  it.each([1, 3])('under 4 N over the middle half and 1 N at %s m, where it begins or ends: turns after 1.75 N of it', (at) => {
    const found = beamResponse(
      [
        { newtons: 1, fromM: at, toM: at },
        { newtons: 4, fromM: 1, toM: 3 },
      ],
      4,
    )
    // The farther reaction is 2.25 N and turns 2.125 m from its end, 1.125 m of the load before it.
    isNear(found.momentNm, 2.25 * 2.125 - 1.125 ** 2, 1e-12)
  })
  it('under two even loads on the same stretch as under one of both', () => {
    const stretch = { fromM: 0, toM: 2 }
    const both = beamResponse(
      [
        { newtons: 3, ...stretch },
        { newtons: 5, ...stretch },
      ],
      4,
    )
    // 8 N over the near half: reaction 6 N, turns at 1.5 m, 6·1.5 − 4·1.5²/2.
    expect(both).toMatchObject({ momentNm: 4.5, shearN: 6 })
    expect(both).toEqual(beamResponse([{ newtons: 8, ...stretch }], 4))
  })
  it('agrees with a sum over a hundred thousand slices, wherever the loads are', () => {
    const load = fc.record({
      newtons: fc.double({ min: 1, max: 5000, noNaN: true }),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      wide: fc.double({ min: 0, max: 1, noNaN: true }),
    })
    fc.assert(
      fc.property(load, fc.boolean(), ({ newtons, at, wide }, isPoint) => {
        const spanM = 3.6
        const fromM = at * spanM
        const one: BeamLoad = { newtons, fromM, toM: isPoint ? fromM : fromM + wide * (spanM - fromM) }
        const found = beamResponse([one], spanM)
        const exact = sliced(one, spanM)
        expect(Math.abs(found.momentNm - exact.momentNm)).toBeLessThan(1e-3 * newtons * spanM)
        expect(Math.abs(found.shearN - exact.shearN)).toBeLessThan(1e-3 * newtons)
        expect(Math.abs(found.midDeflection - exact.midDeflection)).toBeLessThan(1e-3 * newtons * spanM ** 3)
      }),
      { numRuns: 30 },
    )
  })
})

/** The load as many small weights: reactions by moments, bending by sections, deflection by Maxwell's formula for a weight off the middle. */
function sliced({ newtons, fromM, toM }: BeamLoad, spanM: number) {
  const slices = 1000
  const places = Array.from({ length: slices }, (_, index) => fromM + ((index + 0.5) / slices) * (toM - fromM))
  const each = newtons / slices
  const nearN = places.reduce((sum, x) => sum + (each * (spanM - x)) / spanM, 0)
  const momentAt = (x: number): number => nearN * x - places.reduce((sum, at) => sum + (at < x ? each * (x - at) : 0), 0)
  const sections = Array.from({ length: 400 }, (_, index) => (spanM * index) / 400).concat(places.filter((_, index) => index % 20 === 0))
  const bowOf = (x: number): number => {
    const b = Math.min(x, spanM - x)
    return (each * b * (3 * spanM ** 2 - 4 * b ** 2)) / 48
  }
  return {
    momentNm: Math.max(...sections.map(momentAt)),
    shearN: Math.max(nearN, newtons - nearN),
    midDeflection: places.reduce((sum, x) => sum + bowOf(x), 0),
  }
}

describe('a tank on joists', () => {
  /**
   * Own worked values, verified by an integration of 400 001 points; tolerance 2e-4. The shear of the fifth by hand: 3775.56 N × 0.4/1.2192 ÷ 2 over 1600 N.
   */
  it.each<[string, Omit<JoistCase, 'massKg'>, number, number]>([
    ['across, back 50 mm from the support', { ...US_FLOOR, ...ACROSS, centreM: AT_WALL }, 0.2333, 0.8168],
    ['across, mid-span', { ...US_FLOOR, ...ACROSS, centreM: 1.8288 }, 0.8289, 0.4421],
    ['along, mid-span', { ...US_FLOOR, ...ALONG, centreM: 1.8288 }, 1.5887, 0.9532],
    ['across at the wall, 2 kN/m²', { ...EN_FLOOR, ...ACROSS, centreM: AT_WALL }, 0.1892, 0.7203],
    ['across at mid-span, 2 kN/m²', { ...EN_FLOOR, ...ACROSS, centreM: 2 }, 0.7299, 0.3871],
    ['along at mid-span, 2 kN/m²', { ...EN_FLOOR, ...ALONG, centreM: 2 }, 1.4286, 0.8427],
    ['end panels at the wall', { ...US_FLOOR, ...ACROSS, centreM: AT_WALL, path: 'end_panels' }, 0.35, 1.2252],
    ['end panels at mid-span', { ...US_FLOOR, ...ACROSS, centreM: 1.8288, path: 'end_panels' }, 1.2433, 0.6632],
  ])('%s', (_name, at, bending, shear) => {
    const found = joistLoad({ massKg: 385, ...at })
    isNear(found.bending, bending, 3e-4)
    isNear(found.shear, shear, 3e-4)
  })

  /** Own worked largest deflections of the first three, same stiffness. Off the middle the largest is up to 2.6 % more than that at mid-span (statics). */
  it.each([
    [ACROSS, AT_WALL, 0.1635],
    [ACROSS, 1.8288, 0.702],
    [ALONG, 1.8288, 1.4475],
  ])('bends it down by the worked share', (lie, centreM, deflection) => {
    isNear(joistLoad({ ...US_FLOOR, ...lie, centreM }).deflection, deflection, centreM === AT_WALL ? 0.026 : 1e-3)
  })

  it('shares a load among joists by the lever rule: 0.625 of 60 cm at 40 cm, and half where both forms meet', () => {
    expect(loadShare(0.6, 0.4)).toBeCloseTo(0.625, 12)
    expect(loadShare(0.8, 0.4)).toBeCloseTo(0.5, 12)
    expect(loadShare(1.2192, 0.4064)).toBeCloseTo(1 / 3, 12)
    expect(loadShare(0.1, 0.4)).toBeCloseTo(0.9375, 12)
  })

  /**
   * By hand: four feet of 100 kg (980.665 N) 0.2 m apart across joists at 0.4 m. Over one joist stands a pair and half of the other: 0.75 of the load, 735.49875 N.
   * Its feet, 1 m apart about mid-span of 4 m, bend it by 367.749375 N × 1.5 m; allowed 2000·0.4·4²/8 = 1600 N m and 1600 N.
   */
  it('puts the feet of a narrow stand on one joist: three quarters of all', () => {
    const feet = { massKg: 100, alongM: 1, acrossM: 0.2, spanM: 4, spacingM: 0.4, livePa: 2000, centreM: 2, path: 'feet' } as const
    for (const longSide of ['along', 'across'] as const) {
      const found = joistLoad({ ...feet, longSide })
      isNear(found.bending, (367.749375 * 1.5) / 1600, 1e-9)
      isNear(found.shear, 367.749375 / 1600, 1e-9)
    }
    // Farther apart than a spacing one pair has a joist for itself: half of all.
    isNear(joistLoad({ ...feet, acrossM: 0.6, longSide: 'along' }).shear, 980.665 / 4 / 1600, 1e-9)
  })

  it('puts no less on a joist through panels than over a base of two joist spacings or more, and doubles with the mass', () => {
    const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(
        metres(0.3, 1.8),
        metres(0.25, 0.8),
        metres(2.2, 5),
        metres(0.3, 0.7),
        metres(0, 1),
        (length, width, spanM, spacingM, place) => {
          fc.pre(length >= 2 * spacingM)
          for (const lie of [
            { alongM: width, acrossM: length, longSide: 'across' as const },
            { alongM: length, acrossM: width, longSide: 'along' as const },
          ]) {
            const centreM = lie.alongM / 2 + place * (spanM - lie.alongM)
            const at = { massKg: 200, livePa: 1500, spanM, spacingM, centreM, ...lie }
            const [full, panels] = LOAD_PATHS.map((path) => joistLoad({ ...at, path }))
            expect(panels!.shear).toBeGreaterThanOrEqual(full!.shear * (1 - 1e-9))
            for (const path of LOAD_PATHS) {
              const [once, twice] = [joistLoad({ ...at, path }), joistLoad({ ...at, path, massKg: 400 })]
              for (const key of ['bending', 'shear', 'deflection'] as const) isNear(twice[key], 2 * once[key], 1e-9)
            }
          }
        },
      ),
    )
  })
})
