import { describe, expect, it } from 'vitest'
import { lightUtilisation, polygonFactor, rectangleCorners } from '../../core/sizing/light-utilisation.ts'
import { cornersFrom } from '../../core/sizing/plan-outline.ts'
import { tankOutline } from '../../core/sizing/tank-plan.ts'

/** A disc of 250 mm of radius, as the plan of a cylinder gives it: two arcs of sixteen chords, whose area is 0.64 % short. */
const R = 250
const DISC = cornersFrom(tankOutline({ lengthMm: 2 * R, widthMm: 2 * R, form: 'cylinder' }, 0), { x: R, y: R })
const near = (actual: number, wanted: number, tolerance: number) => expect(Math.abs(actual / wanted - 1)).toBeLessThan(tolerance)

/** Closed forms: Howell, A Catalog of Radiation Configuration Factors, B-12, B-13 and C-41, from memory; the tolerance is that of the chords. */
describe('the factor of a disc by its outline', () => {
  it.each([50, 100, 250, 500, 1500])('from an element under its middle at %s mm is r²/(r² + h²)', (h) =>
    near(polygonFactor(DISC, 0, 0, h), R ** 2 / (R ** 2 + h ** 2), 7e-3),
  )

  it.each([
    [100, 200],
    [240, 200],
    [250, 400],
    [400, 150],
    [900, 600],
  ])('from an element %s mm off its middle at %s mm', (offset, h) => {
    const [H, disc] = [h / offset, R / offset]
    const z = 1 + H ** 2 + disc ** 2
    near(polygonFactor(DISC, offset, 0, h), (1 - (1 + H ** 2 - disc ** 2) / Math.sqrt(z ** 2 - 4 * disc ** 2)) / 2, 1.5e-2)
  })

  it.each([
    [250, 250],
    [250, 100],
    [100, 300],
  ])('from a disc of %s mm on the same axis at %s mm', (r1, h) => {
    const [a, b] = [r1 / h, R / h]
    const x = 1 + (1 + b ** 2) / a ** 2
    const wanted = (x - Math.sqrt(x ** 2 - 4 * (b / a) ** 2)) / 2
    const rings = 200
    let sum = 0
    for (let ring = 0; ring < rings; ring++) sum += polygonFactor(DISC, r1 * Math.sqrt((ring + 0.5) / rings), 0, h)
    near(sum / rings, wanted, 1e-2)
  })

  it('is the same from every direction, and of a side that runs the other way round', () => {
    for (const turn of [0.3, 1.1, 2.5])
      near(polygonFactor(DISC, 150 * Math.cos(turn), 150 * Math.sin(turn), 200), polygonFactor(DISC, 150, 0, 200), 4e-3)
    expect(polygonFactor([...DISC].reverse(), 40, 60, 200)).toBeCloseTo(polygonFactor(DISC, 40, 60, 200), 12)
  })
})

describe('a fixture over a round tank', () => {
  it('of next to no size sends it r²/(r² + h²)', () =>
    near(lightUtilisation({ fixtureLengthMm: 1, fixtureWidthMm: 1, water: DISC, aboveWaterMm: 120 }), R ** 2 / (R ** 2 + 120 ** 2), 7e-3))

  it('sends it less than the box around it and more than the box inside it', () => {
    for (const aboveWaterMm of [20, 100, 300]) {
      const share = (water: typeof DISC) => lightUtilisation({ fixtureLengthMm: 400, fixtureWidthMm: 80, water, aboveWaterMm })
      expect(share(DISC)).toBeLessThan(share(rectangleCorners(2 * R, 2 * R)))
      expect(share(DISC)).toBeGreaterThan(share(rectangleCorners(Math.SQRT2 * R, Math.SQRT2 * R)))
    }
  })

  it('sends an outline that is alike in no quarter what it sends its mirror image', () => {
    const corner = cornersFrom(tankOutline({ lengthMm: 700, widthMm: 600, form: 'corner_cut', endMm: 200 }, 0), { x: 310, y: 270 })
    const share = (water: typeof DISC) => lightUtilisation({ fixtureLengthMm: 500, fixtureWidthMm: 100, water, aboveWaterMm: 90 })
    expect(share(corner.map(({ x, y }) => ({ x: -x, y })))).toBeCloseTo(share(corner), 9)
    expect(share(corner.map(({ x, y }) => ({ x, y: -y })))).toBeCloseTo(share(corner), 9)
  })
})
