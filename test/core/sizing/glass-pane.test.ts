import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { TankSpec } from '../../../core/catalog/spec.ts'
import { isCommonSize, LASTING_STRENGTH_PA, LEAST_FACTOR, TRADE_FACTOR, TRADE_STRENGTH_PA } from '../../../core/sizing/glass-pane.ts'
import { glassPlate, thicknessFor, type TopEdge } from '../../../core/sizing/glass-plate.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { findingOf, one, reportOf } from './sample-build.ts'
import { INCH, isNear } from './reference-tanks.ts'
import { figuresOf, told } from './told.ts'

/** Own worked values with a modulus of 71.7 GPa, a handbook's; bows scale with it to EN 572's 70. Tolerance 2e-3. */
const MODULUS = 71.7 / 70
const WATER = 997.05
const long = (thicknessM: number, topEdge: TopEdge) => ({ lengthM: 1.2192, depthM: 0.4834, thicknessM, topEdge, waterDensity: WATER })

describe('a pane under water', () => {
  it.each([
    ['held', 0.01, 3.85, 0.238],
    ['free', 0.01, 6.183, 2.601],
    ['free', 0.012, 4.294, 1.505],
  ] as const)('48 in long with the top %s, %s m thick', (topEdge, thicknessM, stressMpa, bowMm) => {
    const found = glassPlate(long(thicknessM, topEdge))
    isNear(found.bottomPressurePa, 4726.6, 2e-5)
    isNear(found.stressPa / 1e6, stressMpa, 2e-3)
    isNear((found.bowM * 1000) / MODULUS, bowMm, 3e-3)
  })

  it('60 cm long, 6 mm, free top: 3.984 N/mm² and 0.703 mm', () => {
    const found = glassPlate({ lengthM: 0.6, depthM: 0.324, thicknessM: 0.006, topEdge: 'free', waterDensity: WATER })
    isNear(found.stressPa / 1e6, 3.984, 4e-3)
    isNear((found.bowM * 1000) / MODULUS, 0.703, 2e-2)
  })

  it.each([
    ['held', LASTING_STRENGTH_PA, 7.29],
    ['held', TRADE_STRENGTH_PA / TRADE_FACTOR, 8.73],
    ['free', LASTING_STRENGTH_PA, 9.23],
    ['free', TRADE_STRENGTH_PA / TRADE_FACTOR, 11.06],
  ] as const)('wants, with the top %s at %s Pa, %s mm', (topEdge, stressPa, wantedMm) => {
    const { thicknessM: _, ...pane } = long(0.01, topEdge)
    isNear(thicknessFor(pane, stressPa) * 1000, wantedMm, 2e-3)
  })

  it('bends more the longer, deeper and thinner it is, and never less with a free top', () => {
    const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(metres(0.2, 3), metres(0.15, 1), metres(0.003, 0.03), metres(1, 1.5), (lengthM, depthM, thicknessM, more) => {
        const stress = (change: object, topEdge: TopEdge = 'free') =>
          glassPlate({ lengthM, depthM, thicknessM, topEdge, waterDensity: 1000, ...change }).stressPa
        for (const topEdge of ['free', 'held'] as const) {
          expect(stress({ lengthM: lengthM * more }, topEdge)).toBeGreaterThanOrEqual(stress({}, topEdge) * 0.999)
          expect(stress({ depthM: depthM * more }, topEdge)).toBeGreaterThanOrEqual(stress({}, topEdge) * 0.999)
          expect(stress({ thicknessM: thicknessM * more }, topEdge)).toBeLessThanOrEqual(stress({}, topEdge))
        }
        expect(stress({}, 'free')).toBeGreaterThanOrEqual(stress({}, 'held'))
      }),
    )
  })
})

describe('the finding', () => {
  const spec = {
    lengthMm: 48 * INCH,
    widthMm: 18 * INCH,
    heightMm: 21 * INCH,
    glassMm: 10,
    bottomMm: 10,
    material: 'glass',
    style: 'rimmed',
  } as const
  const found = (change: Partial<TankSpec>, owned = true) =>
    findingOf('glass_pane', { tank: { ...one('an old tank', { ...spec, ...change }), owned } })

  it('is made for a second-hand tank and for an odd size, and for no other', () => {
    expect(isCommonSize(spec)).toBe(true)
    expect(reportOf({ tank: one('new', spec) }).findings.some(({ check }) => check === 'glass_pane')).toBe(false)
    expect(sayPhrase(found({}).reason, METRIC)).toContain('second-hand')
    expect(sayPhrase(found({ widthMm: 700 }, false).reason, METRIC)).toContain('no size that is built every day')
  })

  it('accepts 10 mm with a rim, warns without one, and refuses 8 mm without one', () => {
    expect(found({})).toMatchObject({ verdict: 'fits', action: null })
    expect(found({ style: 'rimless' }).verdict).toBe('marginal')
    expect(found({ style: 'rimless', glassMm: 8 })).toMatchObject({ verdict: 'does_not_fit' })
  })

  it('tells the factor and the thickness that the trade would take', () => {
    // Filled to the rim the water is 523.4 mm deep: stress by the plate, own.
    const { stressPa } = glassPlate({ lengthM: 1.2192, depthM: 0.5234, thicknessM: 0.01, topEdge: 'free', waterDensity: WATER })
    const rimless = found({ style: 'rimless' })
    expect(rimless.value?.value).toBeCloseTo(TRADE_STRENGTH_PA / stressPa, 1)
    expect(rimless.limit).toMatchObject({ low: { value: LEAST_FACTOR } })
    expect(sayPhrase(rimless.reason, METRIC)).toContain('the trade would take 12 mm')
  })

  it('is not known without a thickness, a material, on acrylic, or where the rim decides', () => {
    expect(found({ glassMm: undefined }).missing).toEqual(['glass thickness'])
    expect(found({ material: undefined }).missing).toEqual(['tank material'])
    expect(found({ material: 'acrylic' })).toMatchObject({ verdict: 'not_known', missing: ['word of the maker'] })
    expect(found({ style: undefined })).toMatchObject({ verdict: 'not_known', missing: ['whether a rim or braces hold the top'] })
    expect(found({ style: undefined, glassMm: 15 })).toMatchObject({ verdict: 'fits', assumed: ['whether a rim or braces hold the top'] })
  })

  it('says how deep, how long, how held, and what the trade would take', () => {
    // Filled to the rim, 533.4 − 10 mm of water press on 1219.2 mm. By the plate above the trade takes 9.68 mm held and 11.94 mm free: own.
    const pane = 'The tank is second-hand. Filled to the rim, 52.3 cm of water press on a front pane 121.9 cm long,'
    const [held, free] = ['held by its rim or braces', 'with nothing to hold its upper edge']
    const maker = 'Ask its maker or a tank builder before it is filled.'
    expect(told(found({}))).toEqual({
      verdict: 'fits',
      reason: `${pane} ${held}: it is 10 mm, and the trade would take 10 mm.`,
      action: null,
      assumed: [],
      missing: [],
    })
    expect(figuresOf(found({}))).toMatchObject({ value: 4.1, low: 2.7, margin: 1.4 })
    expect(told(found({ style: 'braced', glassMm: 8.5 }))).toMatchObject({
      verdict: 'marginal',
      reason: `${pane} ${held}: it is 8.5 mm, and the trade would take 10 mm.`,
      action: maker,
    })
    expect(told(found({ style: 'rimless' }))).toMatchObject({
      verdict: 'marginal',
      reason: `${pane} ${free}: it is 10 mm, and the trade would take 12 mm.`,
      action: maker,
      assumed: [],
    })
    expect(told(found({ style: 'rimless', glassMm: 8 }))).toMatchObject({
      reason: `${pane} ${free}: it is 8 mm, and the trade would take 12 mm. It would bow by more than half its thickness.`,
      action: 'Do not fill it. Ask its maker or a tank builder; glass of 12 mm or more is usual.',
    })
    expect(told(found({ style: undefined }))).toMatchObject({
      verdict: 'not_known',
      action: "Enter the tank's style, and ask its maker or a tank builder before it is filled.",
      assumed: [],
    })
    expect(found({}).source.tag).toBe('own')
  })

  it('asks for what is missing by name', () => {
    expect(told(found({ glassMm: undefined })).action).toBe('Measure the glass at its upper edge and enter the thickness.')
    expect(told(found({ material: undefined })).action).toBe('Enter whether the tank is glass or acrylic.')
    expect(told(found({ material: 'acrylic' })).action).toBe('Ask its maker, and look for bowed or crazed panels before water goes in.')
  })

  it('tells of a bow that passes half the thickness, and of none that does not', () => {
    // Between the rows at 2.25 and 2.5 the free pane of 2.329 has 0.590: 0.590 × 5118 Pa × 0.5234⁴ m⁴ ÷ (70 GPa × t³) is 4.44 mm at 9 mm, 4.59 mm at 8.9 mm.
    const bows = (glassMm: number) => told(found({ style: 'rimless', glassMm })).reason.includes('more than half its thickness')
    expect([bows(9), bows(8.9)]).toEqual([false, true])
  })

  it('is judged at the deepest water that the bottom allows', () => {
    // A bottom that nobody stated is as thick as the sides or a third more: 523.4 or 520 mm of water.
    expect(told(found({ bottomMm: undefined })).reason).toContain('52.3 cm of water')
  })

  it('has its least factor from the two strengths', () => {
    expect(Math.ceil((TRADE_STRENGTH_PA / LASTING_STRENGTH_PA) * 10) / 10).toBe(LEAST_FACTOR)
  })

  it('always carries its caution', () => {
    for (const change of [{}, { glassMm: undefined }, { style: 'rimless' as const }])
      expect(found(change).caution).toContain('The maker or a tank builder decides')
  })
})

describe('panes of a tank that is no box', () => {
  const base: TankSpec = { lengthMm: 600, widthMm: 520, heightMm: 500, glassMm: 10, bottomMm: 10, material: 'glass', style: 'rimmed' }
  const found = (change: Partial<TankSpec>) =>
    findingOf('glass_pane', { tank: { ...one('an old tank', { ...base, ...change }), owned: true } })

  it('of a hexagon are judged by its longest flat side, half the tank’s length', () => {
    const { verdict, reason } = found({ shape: 'hexagon' })
    expect(verdict).toBe('fits')
    // Slanted side: √(150² + 260²) = 300.17 mm.
    expect(sayPhrase(reason, METRIC)).toContain('on its longest flat pane, 30 cm long')
    expect(found({ shape: 'hexagon', glassMm: 3 }).verdict).toBe('does_not_fit')
  })

  it.each(['cylinder', 'bow_front', 'corner_round'] as const)('are not known where they are curved: %s', (shape) => {
    const { verdict, missing, reason } = found({ shape, widthMm: 600, bowMm: 80 })
    expect(verdict).toBe('not_known')
    expect(missing).toEqual(['word of the maker'])
    expect(sayPhrase(reason, METRIC)).toMatch(/curved glass carries the water as a shell/)
  })

  it('do not fit where a flat one beside the curve is too thin already', () => {
    expect(found({ shape: 'bow_front', bowMm: 80, glassMm: 3 }).verdict).toBe('does_not_fit')
    expect(found({ shape: 'cylinder', widthMm: 600, glassMm: 3 }).verdict).toBe('not_known')
  })

  it.each(['lengthMm', 'widthMm', 'heightMm'] as const)('are of a common size up to two centimetres off in %s', (side) => {
    // 5.5 gallons, 16 × 8 × 10 in: no other common size is near it.
    const box = { lengthMm: 406, widthMm: 203, heightMm: 254 }
    const by = (mm: number) => isCommonSize({ ...box, [side]: box[side] + mm })
    expect([by(-21), by(-20), by(20), by(21)]).toEqual([false, true, true, false])
  })

  it('are no common size, whatever the box around them', () => {
    const box = { lengthMm: 1219, widthMm: 457, heightMm: 533 }
    expect(isCommonSize(box)).toBe(true)
    expect(isCommonSize({ ...box, shape: 'rectangular' })).toBe(true)
    expect(isCommonSize({ ...box, shape: 'bow_front' })).toBe(false)
  })
})
