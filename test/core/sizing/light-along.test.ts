import { describe, expect, it } from 'vitest'
import { lightAlong, rowOf } from '../../../core/sizing/light-along.ts'
import { lightAtBed } from '../../../core/sizing/light-at-bed.ts'
import { fixtureFactor, lightUtilisation, rectangleCorners } from '../../../core/sizing/light-utilisation.ts'
import { situationOf } from '../../../core/sizing/situation.ts'
import type { LightSpec, TankSpec } from '../../../core/catalog/spec.ts'
import { isNear } from './reference-tanks.ts'
import { conditions, gear, one, reportOf } from './sample-build.ts'

const along = (spec: LightSpec, count = 1) => {
  const { lightAlong: found } = reportOf({ lights: [one('Halden', { luminousFluxLm: 3000, widthMm: 80, ...spec }, count)] }).figures
  if (!found) throw new Error('a stated light has a row')
  return found
}

describe('a light that can be dimmed', () => {
  const strong = { lengthMm: 1150, luminousFluxLm: 12_000 }
  it('carries the share to which the check dims it, and points of the undimmed light', () => {
    const { findings, figures } = reportOf({ lights: [one('Halden', { ...strong, dimmable: true })] })
    const { dimmedTo = 1 } = figures.lightAlong ?? {}
    const said = findings.find(({ check }) => check === 'light_level')?.reason
    expect(dimmedTo).toBeLessThan(1)
    expect(JSON.stringify(said)).toContain('Dimmed to about')
    // The check turns the dimmer until the bright end meets the upper mark of the plants, or the dark end the lower one if that is more.
    const { low, high } = figures.lightAtBedUmol ?? { low: 1, high: 1 }
    expect(dimmedTo).toBeCloseTo(Math.max(60 / high, 30 / low), 3)
    expect(figures.lightAlong?.points).toEqual(along(strong).points)
  })
  it('has none where it is not dimmed', () => {
    expect(along(strong)).not.toHaveProperty('dimmedTo')
    expect(along({ lengthMm: 1150, luminousFluxLm: 1500, dimmable: true })).not.toHaveProperty('dimmedTo')
  })
})

describe('a patch under a fixture', () => {
  /** Inverse-square and cosine law of a small Lambertian source (any photometry text): A·cos⁴θ/(π·h²). */
  it.each([
    [0, 0],
    [300, 0],
    [0, 500],
    [1000, 400],
  ])('sees a small one by the inverse square and the cosines, %s and %s mm off', (alongMm, acrossMm) => {
    const h = 1000
    const cosine = h / Math.hypot(h, alongMm, acrossMm)
    isNear(
      fixtureFactor({ fixtureLengthMm: 10, fixtureWidthMm: 10, alongMm, acrossMm, belowMm: h }),
      (100 * cosine ** 4) / (Math.PI * h * h),
      1e-4,
    )
  })

  /** Reciprocity, A₁F₁₂ = A₂F₂₁: what a bed sees of the fixture, over the bed, is what the fixture sends to the bed. Fine sum, tolerance 1e-3. */
  it('sees of the fixture what the fixture sends it', () => {
    const [fixture, bed, belowMm] = [{ length: 900, width: 100 }, { length: 1200, width: 450 }, 300]
    const n = 60
    let sum = 0
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        sum += fixtureFactor({
          fixtureLengthMm: fixture.length,
          fixtureWidthMm: fixture.width,
          alongMm: bed.length * ((i + 0.5) / n - 0.5),
          acrossMm: bed.width * ((j + 0.5) / n - 0.5),
          belowMm,
        })
    const sent = lightUtilisation({
      fixtureLengthMm: fixture.length,
      fixtureWidthMm: fixture.width,
      water: rectangleCorners(bed.length, bed.width),
      aboveWaterMm: belowMm,
    })
    isNear(((sum / (n * n)) * bed.length * bed.width) / (fixture.length * fixture.width), sent, 1e-3)
  })
})

describe('light from end to end', () => {
  it('runs from pane to pane, the same from either end and brightest in the middle', () => {
    const { points } = along({ lengthMm: 600 })
    expect(points[0]?.alongMm).toBe(0)
    expect(points.at(-1)?.alongMm).toBe(1199)
    const low = points.map(({ lowUmol }) => lowUmol)
    expect(low).toEqual([...low].reverse())
    expect(low.slice(0, 7)).toEqual(low.slice(0, 7).sort((a, b) => a - b))
    for (const { lowUmol, highUmol } of points) expect(highUmol).toBeGreaterThan(lowUmol)
  })

  it('leaves the ends darker under a shorter fixture', () => {
    const shares = [1200, 900, 600, 300].map((lengthMm) => along({ lengthMm }).endsShare)
    expect(shares).toEqual([...shares].sort((a, b) => b - a))
    expect(new Set(shares).size).toBe(4)
    for (const share of shares) {
      expect(share).toBeGreaterThan(0)
      expect(share).toBeLessThan(1)
    }
  })

  it('lights the front better from a wide fixture', () =>
    expect(along({ lengthMm: 1150, widthMm: 300 }).frontShare).toBeGreaterThan(along({ lengthMm: 1150, widthMm: 40 }).frontShare))

  it('takes two in line for one of their length, and long ones for a row spread over the depth', () => {
    expect(rowOf({ lengthMm: 600, widthMm: 80 }, 2, { lengthMm: 1219, widthMm: 457 })).toEqual({ lengthMm: 1200, widthMm: 80 })
    expect(rowOf({ lengthMm: 1000 }, 2, { lengthMm: 1219, widthMm: 457 })).toEqual({ lengthMm: 1000, widthMm: 308.5 })
    // Three quarters of the tank is long enough to stand side by side.
    expect(rowOf({ lengthMm: 900, widthMm: 80 }, 2, { lengthMm: 1200, widthMm: 400 })).toEqual({ lengthMm: 900, widthMm: 280 })
    expect(along({ lengthMm: 600 }, 2).endsShare).toBe(along({ lengthMm: 1200 }).endsShare)
  })

  /** Own: a mean over the bed, by a fine sum of the middle row of a tank so narrow that the row stands for the whole; tolerance 2 %. */
  it('has the mean that the light level tells', () => {
    const subject = {
      gear: gear({
        tank: one('Narrow', { lengthMm: 900, widthMm: 120, heightMm: 400, glassMm: 6, bottomMm: 6, material: 'glass' as const }),
        lights: [one('Halden', { lengthMm: 600, widthMm: 108, luminousFluxLm: 1000 })],
      }),
      conditions: conditions(),
    }
    const situation = situationOf(subject)
    if (!situation.ok) throw new Error(situation.refusal.code)
    const light = lightAtBed(situation.value)
    const points = light && lightAlong(situation.value, light)?.points
    if (!light || !points) throw new Error('the light is stated')
    const trapezoid = points.reduce((sum, { lowUmol }, i) => sum + lowUmol * (i === 0 || i === points.length - 1 ? 0.5 : 1), 0)
    isNear(trapezoid / (points.length - 1), light.dim.low, 2e-2)
  })

  it('is more even at the dark end, for which the light hangs higher', () => {
    const { points, endsShare, frontShare } = along({ lengthMm: 300, luminousFluxLm: 90_000 })
    const evenness = (key: 'lowUmol' | 'highUmol') => (points[0]?.[key] ?? NaN) / (points[6]?.[key] ?? NaN)
    expect(evenness('lowUmol')).toBeGreaterThan(evenness('highUmol') * 1.05)
    expect(endsShare).toBeCloseTo(evenness('lowUmol'), 2)
    expect(frontShare).toBeGreaterThan(endsShare)
    expect(frontShare).toBeLessThan(1)
  })

  it('is not drawn where nobody stated the flux', () => {
    expect(reportOf({ lights: [one('Halden', { lengthMm: 1150, powerW: 30 })] }).figures.lightAlong).toBeUndefined()
    expect(reportOf({ lights: [] }).figures.lightAlong).toBeUndefined()
  })
})

describe('light along a tank that is no rectangle', () => {
  const alongIn = (tank: Partial<TankSpec>, spec: LightSpec) => {
    const subject = {
      gear: gear({
        tank: one('Plan', { lengthMm: 500, widthMm: 500, heightMm: 460, glassMm: 10, bottomMm: 10, material: 'glass' as const, ...tank }),
        lights: [one('Halden', { luminousFluxLm: 3000, ...spec })],
      }),
      conditions: conditions(),
    }
    const situation = situationOf(subject)
    if (!situation.ok) throw new Error(situation.refusal.code)
    const light = lightAtBed(situation.value)
    const found = light && lightAlong(situation.value, light)
    if (!found) throw new Error('the light is stated')
    return found
  }

  /**
   * A lamp of next to no size over a disc of r, by hand: what falls straight on the bed at x goes by the inverse square and the cosines, b⁴/(b² + x²)², and of
   * what enters r²/(r² + b²) ÷ r²/(r² + a²) falls straight (Howell B-12, from memory); the rest is spread evenly. At the dark end the lamp hangs a = 100 mm
   * above the water, and b is a and the 360 mm to the bed over 1.333.
   */
  it('over a cylinder goes by the closed forms of a disc', () => {
    const [r, a, b] = [240, 100, 100 + 360 / 1.333]
    const enters = r ** 2 / (r ** 2 + a ** 2)
    const straight = r ** 2 / (r ** 2 + b ** 2) / enters
    const at = (x: number) => ((r ** 2 / enters) * b ** 2) / (b ** 2 + x ** 2) ** 2 + 1 - straight
    const { points, endsShare, frontShare } = alongIn({ shape: 'cylinder' }, { lengthMm: 2, widthMm: 2 })
    expect(points.at(-1)?.alongMm).toBe(480)
    expect(Math.abs(endsShare - at(r) / at(0))).toBeLessThan(0.015)
    expect(Math.abs(frontShare - endsShare)).toBeLessThan(0.011)
  })

  it('is sampled from pane to pane through the middle of the plan', () => {
    const hexagon = alongIn({ shape: 'hexagon', lengthMm: 600, widthMm: 520 }, { lengthMm: 400 })
    // A side of 300 mm, moved in by 10 mm: 2 × 10 ÷ sin 60° less from corner to corner.
    expect(Math.abs((hexagon.points.at(-1)?.alongMm ?? NaN) - (600 - 20 / Math.sin(Math.PI / 3)))).toBeLessThan(1.5)
    for (const shape of ['corner_cut', 'corner_round', 'bow_front'] as const) {
      const { points, endsShare, frontShare } = alongIn({ shape, ...(shape === 'corner_cut' ? { endMm: 200 } : shape === 'bow_front' ? { bowMm: 80 } : {}) }, { lengthMm: 300 }) // prettier-ignore
      const last = points.at(-1)?.alongMm ?? NaN
      expect(last).toBeGreaterThan(300)
      expect(last).toBeLessThanOrEqual(480)
      for (const { lowUmol, highUmol } of points) expect(lowUmol > 0 && highUmol >= lowUmol).toBe(true)
      for (const share of [endsShare, frontShare]) expect(share > 0 && share < 1).toBe(true)
    }
  })
})
