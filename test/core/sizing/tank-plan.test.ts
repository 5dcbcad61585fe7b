import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { TankForm } from '../../../core/catalog/tank-shape.ts'
import { panelsOf, planFigures, type Side } from '../../../core/sizing/plan-outline.ts'
import { footprintM2, plansOf } from '../../../core/sizing/tank-forms.ts'
import { tankGeometry, type TankShape } from '../../../core/sizing/tank-geometry.ts'
import { backMm, insideBox, leavesInside, planFault, tankOutline, tankPlan, type TankPlan } from '../../../core/sizing/tank-plan.ts'
import { HALF_DISC, HEXAGON, QUARTER_DISC, segment, TRIANGLE } from '../../reference/centroids.ts'
import { isNear } from './reference-tanks.ts'

const side = (x: number, y: number, sagittaMm = 0): Side => ({ from: { x, y }, sagittaMm })

describe('a plan of straight sides and arcs', () => {
  it('has the area and centroid of half a disc', () => {
    const { areaMm2, centre } = planFigures([side(-1, 0), side(1, 0, 1)])
    isNear(areaMm2, HALF_DISC.area, 1e-12)
    isNear(centre.y, HALF_DISC.fromDiameter, 1e-12)
    expect(centre.x).toBeCloseTo(0, 12)
  })

  it('has those of a triangle', () => {
    const { areaMm2, centre } = planFigures([side(0, 0), side(1, 0), side(0.5, 1)])
    isNear(areaMm2, TRIANGLE.area, 1e-12)
    isNear(centre.y, TRIANGLE.fromBase, 1e-12)
  })

  it.each([0.2, 0.7, 1.2, Math.PI / 2])('has those of a segment of half the angle %s', (alpha) => {
    const [half, sagitta] = [Math.sin(alpha), 1 - Math.cos(alpha)]
    const { areaMm2, centre, roundMm } = planFigures([side(-half, 0), side(half, 0, sagitta)])
    isNear(areaMm2, segment(alpha).area, 1e-10)
    isNear(centre.y, segment(alpha).fromCentre - Math.cos(alpha), 1e-9)
    isNear(roundMm, 2 * half + 2 * alpha, 1e-12)
  })
})

describe('the plan of a tank', () => {
  it('of a quarter round is a quarter of a disc', () => {
    const { areaMm2, centre, leverMm } = tankPlan({ lengthMm: 1000, widthMm: 1000, form: 'corner_round' }, 0)
    isNear(areaMm2, QUARTER_DISC.area * 1e6, 1e-12)
    isNear(centre.x, QUARTER_DISC.fromEitherRadius * 1000, 1e-9)
    isNear(centre.y, QUARTER_DISC.fromEitherRadius * 1000, 1e-9)
    isNear(leverMm, 1000 - Math.SQRT2 * QUARTER_DISC.fromEitherRadius * 1000, 1e-9)
  })

  it('of a regular hexagon has its area, its round and equal sides', () => {
    const plan = { lengthMm: HEXAGON.overCorners * 300, widthMm: HEXAGON.overFlats * 300, form: 'hexagon' } as const
    const { areaMm2, roundMm, leverMm } = tankPlan(plan, 0)
    isNear(areaMm2, HEXAGON.area * 300 ** 2, 1e-12)
    isNear(roundMm, HEXAGON.round * 300, 1e-12)
    isNear(leverMm, (HEXAGON.overFlats / 2) * 300, 1e-12)
    for (const { lengthMm, curved } of panelsOf(tankOutline(plan, 0))) {
      isNear(lengthMm, 300, 1e-12)
      expect(curved).toBe(false)
    }
  })

  it('of a regular hexagon stays regular inside its panes', () => {
    const plan = { lengthMm: 600, widthMm: Math.sqrt(3) * 300, form: 'hexagon' } as const
    // A pane of t takes t·2/√3 off each side of a regular hexagon.
    isNear(tankPlan(plan, 12).areaMm2, HEXAGON.area * (300 - (12 * 2) / Math.sqrt(3)) ** 2, 1e-12)
  })

  it('of a cylinder is a disc', () => {
    const { areaMm2, roundMm, leverMm } = tankPlan({ lengthMm: 520, widthMm: 520, form: 'cylinder' }, 10)
    isNear(areaMm2, Math.PI * 250 ** 2, 1e-12)
    isNear(roundMm, 2 * Math.PI * 250, 1e-12)
    isNear(leverMm, 250, 1e-12)
  })

  it('of a bow-front is a rectangle and a segment of a circle', () => {
    const [l, w, bow] = [900, 400, 90]
    const radius = (l ** 2 / 4 + bow ** 2) / (2 * bow)
    const alpha = Math.asin(l / 2 / radius)
    isNear(
      tankPlan({ lengthMm: l, widthMm: w, form: 'bow_front', bowMm: bow }, 0).areaMm2,
      l * (w - bow) + segment(alpha).area * radius ** 2,
      1e-9,
    )
  })

  it('of a cut corner is its box without the corner cut off', () => {
    isNear(
      tankPlan({ lengthMm: 700, widthMm: 600, form: 'corner_cut', endMm: 250 }, 0).areaMm2,
      700 * 600 - ((700 - 250) * (600 - 250)) / 2,
      1e-12,
    )
  })
})

/** Own: inside diameter 0.50 m, and inside side 0.30 m, each 0.60 m high; tolerance 1e-6. */
it.each([
  ['a cylinder', { lengthMm: 520, widthMm: 520, form: 'cylinder' as const }, 117.8097],
  ['a hexagon', { lengthMm: 600 + 40 / Math.sqrt(3), widthMm: 300 * Math.sqrt(3) + 20, form: 'hexagon' as const }, 140.2961],
])('reckons the volume of %s', (_what, plan, litres) => {
  const result = tankGeometry(
    { ...plan, heightMm: 610, glassMm: 10, bottomMm: 10, material: 'glass' },
    { waterBelowRimMm: 30, substrateDepthMm: 0 },
  )
  isNear(result.ok ? result.value.grossVolumeL : undefined, litres, 1e-6)
})

const FORMS = ['rectangular', 'bow_front', 'cylinder', 'hexagon', 'corner_cut', 'corner_round'] as const satisfies readonly TankForm[]

const anyPlan: fc.Arbitrary<TankPlan> = fc
  .record({
    form: fc.constantFrom(...FORMS),
    lengthMm: fc.double({ min: 300, max: 2000, noNaN: true }),
    proportion: fc.double({ min: 0.4, max: 1, noNaN: true }),
    share: fc.double({ min: 0.25, max: 0.5, noNaN: true }),
  })
  .map(({ form, lengthMm, proportion, share }) => {
    const widthMm = form === 'cylinder' || form === 'corner_round' ? lengthMm : lengthMm * proportion
    return { form, lengthMm, widthMm, bowMm: Math.min(widthMm * share, lengthMm * 0.45), endMm: widthMm * share }
  })

const tankOf = (plan: TankPlan): TankShape => ({ ...plan, heightMm: 500, glassMm: 8, bottomMm: 10, material: 'glass' })
const geometryOf = (shape: TankShape, k = 1) => {
  const result = tankGeometry(shape, { waterBelowRimMm: 30 * k, substrateDepthMm: 40 * k })
  if (!result.ok) throw new Error(`must be accepted: ${result.refusal.code}`)
  return result.value
}
const grown = (shape: TankShape, k: number): TankShape => ({
  ...shape,
  lengthMm: shape.lengthMm * k,
  widthMm: shape.widthMm * k,
  heightMm: shape.heightMm * k,
  glassMm: shape.glassMm * k,
  bottomMm: shape.bottomMm * k,
  bowMm: (shape.bowMm ?? 0) * k,
  endMm: (shape.endMm ?? 0) * k,
})

describe('any shape', () => {
  it('scales areas with the square and volumes with the cube of the lengths', () => {
    fc.assert(
      fc.property(anyPlan, fc.double({ min: 0.5, max: 3, noNaN: true }), (plan, k) => {
        const [small, large] = [geometryOf(tankOf(plan)), geometryOf(grown(tankOf(plan), k), k)]
        isNear(large.insidePlanMm2, small.insidePlanMm2 * k ** 2, 1e-8)
        isNear(large.outsideRoundMm, small.outsideRoundMm * k, 1e-9)
        for (const figure of ['outsideVolumeL', 'grossVolumeL', 'waterVolumeL', 'shellVolumeL'] as const)
          isNear(large[figure], small[figure] * k ** 3, 1e-7)
      }),
    )
  })

  it('holds less than the box around it, and less the thicker its panes are', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const shape = tankOf(plan)
        const { outsideVolumeL, grossVolumeL } = geometryOf(shape)
        const box = (plan.lengthMm * plan.widthMm * shape.heightMm) / 1e6
        if (plan.form === 'rectangular') isNear(outsideVolumeL, box, 1e-12)
        else expect(outsideVolumeL).toBeLessThan(box)
        expect(geometryOf({ ...shape, glassMm: 12 }).grossVolumeL).toBeLessThan(grossVolumeL)
      }),
    )
  })

  it('has panes that weigh about their round by their height where they are thin', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const shape = { ...tankOf(plan), glassMm: 0.01, bottomMm: 0.01 }
        const { shellVolumeL, outsideRoundMm, outsidePlanMm2, grossVolumeL, outsideVolumeL } = geometryOf(shape)
        isNear(shellVolumeL, ((outsideRoundMm * 500 + outsidePlanMm2) * 0.01) / 1e6, 1e-3)
        isNear(grossVolumeL, outsideVolumeL, 1e-3)
      }),
    )
  })

  it('keeps its centre inside, and within reach of the nearest side', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { centre, leverMm } = tankPlan(plan, 0)
        expect(centre.x).toBeGreaterThan(0)
        expect(centre.x).toBeLessThan(plan.lengthMm)
        expect(centre.y).toBeGreaterThan(0)
        expect(centre.y).toBeLessThan(plan.widthMm)
        expect(leverMm).toBeGreaterThan(0)
        expect(leverMm).toBeLessThanOrEqual((Math.min(plan.lengthMm, plan.widthMm) / 2) * 1.000001)
      }),
    )
  })

  it('turns no more of itself to the wall than there is', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        expect(backMm(plan)).toBeLessThan(tankPlan(plan, 0).roundMm)
      }),
    )
  })

  it('keeps its inside within its outside', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { lengthMm, widthMm } = insideBox(plan, 8)
        expect(lengthMm).toBeLessThanOrEqual(plan.lengthMm - 16 + 1e-6)
        expect(widthMm).toBeLessThanOrEqual(plan.widthMm - 16 + 1e-6)
        expect(leavesInside(plan, 8)).toBe(true)
      }),
    )
  })
})

it('is a plain box where no shape is stated, to the last bit', () => {
  const box = { lengthMm: 1219.2, widthMm: 457.2 }
  expect(tankPlan(box, 10)).toMatchObject({ areaMm2: 1199.2 * 437.2, roundMm: 2 * (1199.2 + 437.2) })
  expect(tankPlan({ ...box, form: 'rectangular' }, 10)).toEqual(tankPlan(box, 10))
  // To the nearer side it is half of the width.
  expect(tankPlan(box, 0).leverMm).toBe(228.6)
  expect(tankOutline({ lengthMm: 900, widthMm: 400 }, 10)).toEqual([side(10, 10), side(890, 10), side(890, 390), side(10, 390)])
})

it.each([
  ['a cylinder that is not round', { lengthMm: 600, widthMm: 500, form: 'cylinder' as const }, 'not_round'],
  ['a quarter round with unequal backs', { lengthMm: 600, widthMm: 500, form: 'corner_round' as const }, 'not_round'],
  ['a bow of half the length', { lengthMm: 600, widthMm: 500, form: 'bow_front' as const, bowMm: 301 }, 'bow_too_deep'],
  ['ends as deep as the backs', { lengthMm: 600, widthMm: 500, form: 'corner_cut' as const, endMm: 460 }, 'ends_too_deep'],
])('refuses %s', (_what, plan, code) => {
  expect(planFault(plan)?.code).toBe(code)
  const result = tankGeometry(tankOf(plan), { waterBelowRimMm: 30, substrateDepthMm: 40 })
  expect(result.ok ? null : result.refusal.code).toBe(code)
})

/** Own: makers round to half an inch, 13 mm; a bow is half the length at most and nine tenths of the depth, ends nine tenths of the shorter back. */
describe('a plan at the edge of what there is', () => {
  const fault = (plan: TankPlan) => planFault(plan)
  it('is round within half an inch', () => {
    for (const form of ['cylinder', 'corner_round'] as const) {
      expect(fault({ lengthMm: 500, widthMm: 513, form })).toBeNull()
      expect(fault({ lengthMm: 513, widthMm: 500, form })).toBeNull()
      expect(fault({ lengthMm: 500, widthMm: 514, form })).toEqual({ code: 'not_round' })
    }
    expect(fault({ lengthMm: 500, widthMm: 300, form: 'hexagon' })).toBeNull()
  })
  it('has a bow that leaves its ends', () => {
    const bow = (bowMm: number | undefined, widthMm: number) => fault({ lengthMm: 601, widthMm, form: 'bow_front', bowMm })
    expect(bow(300, 500)).toBeNull()
    expect(bow(301, 500)).toEqual({ code: 'bow_too_deep', mostMm: 300 })
    expect(bow(180, 200)).toBeNull()
    expect(bow(181, 200)).toEqual({ code: 'bow_too_deep', mostMm: 180 })
    expect(bow(undefined, 500)).toBeNull()
    expect(fault({ lengthMm: 601, widthMm: 200, form: 'corner_cut', bowMm: 300 })).toBeNull()
  })
  it('has ends that leave a front', () => {
    const ends = (endMm: number | undefined) => fault({ lengthMm: 600, widthMm: 500, form: 'corner_cut', endMm })
    expect(ends(450)).toBeNull()
    expect(ends(451)).toEqual({ code: 'ends_too_deep', mostMm: 450 })
    expect(ends(undefined)).toBeNull()
    expect(fault({ lengthMm: 600, widthMm: 500, form: 'bow_front', endMm: 451 })).toBeNull()
    expect(fault({ lengthMm: 600, widthMm: 500, endMm: 451, bowMm: 451 })).toBeNull()
  })
  it('leaves an inside up to half of the shorter side', () => {
    for (const box of [
      { lengthMm: 600, widthMm: 300 },
      { lengthMm: 300, widthMm: 600 },
    ]) {
      expect(leavesInside(box, 149)).toBe(true)
      expect(leavesInside(box, 150)).toBe(false)
      expect(leavesInside({ ...box, form: 'rectangular' }, 150)).toBe(false)
    }
    expect(leavesInside({ lengthMm: 600, widthMm: 600, form: 'cylinder' }, 299)).toBe(true)
    for (const glassMm of [300, 301]) expect(leavesInside({ lengthMm: 600, widthMm: 600, form: 'cylinder' }, glassMm)).toBe(false)
  })
})

/** By hand: a quarter of π·500; half of a hexagon's length; both backs of a corner. */
it.each<[TankPlan, number]>([
  [{ lengthMm: 500, widthMm: 500, form: 'cylinder' }, 392.699],
  [{ lengthMm: 600, widthMm: 520, form: 'hexagon' }, 300],
  [{ lengthMm: 700, widthMm: 600, form: 'corner_cut' }, 1300],
  [{ lengthMm: 600, widthMm: 600, form: 'corner_round' }, 1200],
  [{ lengthMm: 900, widthMm: 400, form: 'bow_front' }, 900],
  [{ lengthMm: 900, widthMm: 400 }, 900],
])('%j turns %s mm to the wall', (plan, mm) => expect(backMm(plan)).toBeCloseTo(mm, 3))

/**
 * By hand, panes of 10 mm. A hexagon of 600 × 519.615 mm is regular: 20/√3 mm shorter over its corners on each side. A quarter round of 600 mm: inside its arc of 590 mm from
 * 10 mm beside the centre, √(590² − 10²) − 10.
 */
it.each<[TankPlan, number, number]>([
  [{ lengthMm: 900, widthMm: 400 }, 880, 380],
  [{ lengthMm: 500, widthMm: 500, form: 'cylinder' }, 480, 480],
  [{ lengthMm: 900, widthMm: 400, form: 'bow_front', bowMm: 90 }, 880, 380],
  [{ lengthMm: 700, widthMm: 600, form: 'corner_cut', endMm: 200 }, 680, 580],
  [{ lengthMm: 600, widthMm: Math.sqrt(3) * 300, form: 'hexagon' }, 600 - 40 / Math.sqrt(3), Math.sqrt(3) * 300 - 20],
  [{ lengthMm: 600, widthMm: 600, form: 'corner_round' }, 579.915, 579.915],
])('%j is %s × %s mm inside', (plan, lengthMm, widthMm) => {
  const found = insideBox(plan, 10)
  expect(found.lengthMm).toBeCloseTo(lengthMm, 3)
  expect(found.widthMm).toBeCloseTo(widthMm, 3)
})

describe('the inside of a plan, by hand', () => {
  it('of a bow-front has the same centre of its arc and a pane less of its radius', () => {
    // 800 mm long, 400 deep, bow 200: radius 500 about a point 300 mm before the ends; inside 490 mm of it over 780 mm, ends at 200 − 300 + √(490² − 390²).
    const ends = -100 + Math.sqrt(490 ** 2 - 390 ** 2)
    const alpha = Math.asin(390 / 490)
    isNear(
      tankPlan({ lengthMm: 800, widthMm: 400, form: 'bow_front', bowMm: 200 }, 10).areaMm2,
      780 * (ends - 10) + segment(alpha).area * 490 ** 2,
      1e-9,
    )
  })
  it('of a cut corner has every side a pane further in', () => {
    // 600 mm square, ends of 200: the front runs at 45°, x + y = 800 outside and 14.142 mm less inside; 10 to 590 mm less the triangle cut off.
    const cut = 590 + 590 - (800 - 10 * Math.SQRT2)
    isNear(tankPlan({ lengthMm: 600, widthMm: 600, form: 'corner_cut', endMm: 200 }, 10).areaMm2, 580 ** 2 - cut ** 2 / 2, 1e-12)
    // 700 × 500 mm, ends of 200: the front falls by 300 over 500, moved in by a pane square to itself.
    const slant = Math.hypot(300, 500)
    const reach = 300 * 700 + 500 * 200 - 10 * slant
    const [right, lower] = [(reach - 300 * 690) / 500, (reach - 500 * 490) / 300]
    isNear(
      tankPlan({ lengthMm: 700, widthMm: 500, form: 'corner_cut', endMm: 200 }, 10).areaMm2,
      680 * 480 - ((690 - lower) * (490 - right)) / 2,
      1e-12,
    )
  })
  it('of a quarter round is a quarter of a disc, less strips of a pane along its backs', () => {
    // ∫ from 10 to √(r² − 10²) of √(r² − x²) − 10, r 590: r²/2 · (β − α) with sin α = 10/590 and cos β the same, less the strip.
    const [r, t] = [590, 10]
    const alpha = Math.asin(t / r)
    const reach = Math.sqrt(r ** 2 - t ** 2)
    const area = (r ** 2 / 2) * (Math.PI / 2 - 2 * alpha) + (reach * t - t * reach) / 2 - t * (reach - t)
    isNear(tankPlan({ lengthMm: 600, widthMm: 600, form: 'corner_round' }, 10).areaMm2, area, 1e-9)
  })
})

it('refuses panes that leave nothing of the slanted sides', () => {
  const shape = { ...tankOf({ lengthMm: 120, widthMm: 1000, form: 'hexagon' }), glassMm: 35 }
  expect(tankGeometry(shape, { waterBelowRimMm: 30, substrateDepthMm: 40 })).toMatchObject({ ok: false, refusal: { code: 'no_inside' } })
})

describe('what the maker left out of the shape', () => {
  it('is the bow of a bow-front, between its ends', () => {
    const { plans, unstated } = plansOf({ lengthMm: 900, widthMm: 400, shape: 'bow_front' })
    expect(unstated).toEqual(['bow of the front'])
    expect(plans.map(({ bowMm }) => bowMm)).toEqual([45, 180])
    const { low, high } = footprintM2({ lengthMm: 900, widthMm: 400, shape: 'bow_front' })
    const { low: stated } = footprintM2({ lengthMm: 900, widthMm: 400, shape: 'bow_front', bowMm: 90 })
    expect(low).toBeLessThan(stated)
    expect(high).toBeGreaterThan(stated)
  })

  it('is the depth of a corner tank’s ends', () => {
    expect(plansOf({ lengthMm: 600, widthMm: 600, shape: 'corner_cut' }).unstated).toEqual(['depth of the ends'])
    expect(plansOf({ lengthMm: 600, widthMm: 600, shape: 'corner_cut', endMm: 200 }).unstated).toEqual([])
  })

  it.each(['cylinder', 'hexagon', 'corner_round'] as const)('is nothing for a %s', (shape) => {
    expect(plansOf({ lengthMm: 600, widthMm: 600, shape }).unstated).toEqual([])
  })
})
