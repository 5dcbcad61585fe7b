import { describe, expect, it } from 'vitest'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { INCH } from './reference-tanks.ts'
import { one, reportOf } from './sample-build.ts'

const JOISTS: Partial<Conditions> = { floor: 'timber_upper', joistSpanMm: 144 * INCH, joistSpacingMm: 16 * INCH, floorUse: 'other' }
const ON_FEET = { stand: one('Thornby', { heightMm: 762, base: 'feet' as const }) }
const reportIn = (conditions: Partial<Conditions>) => reportOf({}, conditions)

describe('the plan of the floor', () => {
  it('is of the very case that the finding tells', () => {
    const report = reportIn({ ...JOISTS, joistLie: 'bearing_wall' })
    const told = report.findings.find(({ check }) => check === 'floor_load')
    const plan = report.figures.floorPlan
    expect(plan).toMatchObject({ spanMm: 3658, spacingMm: 406, lie: 'bearing_wall', lieStated: true, loadPercent: told?.value?.value })
  })
  /** Own worked values before the duration factor of 0.90: shear of end panels at the wall 1.2252, bending of a full base along mid-span 1.5887; tolerance 1 %. */
  it('has the worked loads, where they stand and what bears them', () => {
    const wall = reportIn({ ...JOISTS, joistLie: 'bearing_wall' }).figures.floorPlan
    expect(wall).toMatchObject({
      alongMm: 460,
      acrossMm: 1220,
      centreMm: 280,
      massKg: 385,
      path: 'end_panels',
      pathStated: true,
      governs: 'shear',
    })
    expect(Math.abs((wall?.loadPercent ?? NaN) / (122.52 / 0.9) - 1)).toBeLessThan(0.01)
    const full = reportOf({ stand: one('Thornby', { massKg: 28.1, base: 'full' as const }) }, { ...JOISTS, joistLie: 'along' }).figures
      .floorPlan
    expect(full).toMatchObject({ alongMm: 1219, acrossMm: 457, centreMm: 1829, massKg: 385, path: 'full', governs: 'bending' })
    expect(full?.loadPercent).toBe(177)
    expect(full).not.toHaveProperty('answeredCentreMm')
  })
  it('says where nobody stated how the load comes down', () => {
    const plan = reportOf({ stand: one('Thornby', { topLengthMm: 1300, topWidthMm: 500, massKg: 30 }) }, JOISTS).figures.floorPlan
    expect(plan).toMatchObject({ pathStated: false, alongMm: 1300, acrossMm: 500, massKg: 387 })
    expect(reportOf({ stand: null }, JOISTS).figures.floorPlan).toMatchObject({ pathStated: false, massKg: 357 })
  })
  it('has no other place to draw where the worst is the one that was answered', () => {
    // End panels across the joists bend most at mid-span.
    const plan = reportIn({ ...JOISTS, joistLie: 'across' }).figures.floorPlan
    expect(plan).toMatchObject({ centreMm: 1829, governs: 'bending' })
    expect(plan).not.toHaveProperty('answeredCentreMm')
  })
  it('stands a plan that is no rectangle as one of its area and its proportions', () => {
    // Geometry: a hexagon on half its length is 3/4 of the box around it, so √0.75 = 0.866 of either side; a circle π/4, so 0.886.
    const spec = {
      lengthMm: 600,
      widthMm: 520,
      heightMm: 500,
      glassMm: 10,
      bottomMm: 10,
      material: 'glass' as const,
      style: 'rimmed' as const,
    }
    const sides = (shape: 'hexagon' | 'cylinder', stand: NonNullable<Parameters<typeof reportOf>[0]>['stand'] = null) => {
      const tank = one('Wendlemere', { ...spec, shape, widthMm: shape === 'cylinder' ? 600 : 520 })
      const plan = reportOf({ tank, stand }, { ...JOISTS, joistLie: 'along' }).figures.floorPlan
      return [plan?.alongMm, plan?.acrossMm]
    }
    expect(sides('hexagon')).toEqual([520, 450])
    expect(sides('cylinder')).toEqual([532, 532])
    // What the stand says of its top comes before the tank's plan: a rectangle as it is, a hexagon by the same share.
    expect(sides('hexagon', one('Thornby', { topLengthMm: 620, topWidthMm: 540 }))).toEqual([620, 540])
    expect(sides('hexagon', one('Thornby', { topLengthMm: 620, topWidthMm: 540, shape: 'hexagon' }))).toEqual([537, 468])
    // A stand that states no top has the tank's.
    expect(sides('hexagon', one('Thornby', { massKg: 20 }))).toEqual([520, 450])
  })
  it('leaves 50 mm behind the stand at the wall', () => {
    const plan = reportIn({ ...JOISTS, joistLie: 'bearing_wall' }).figures.floorPlan
    expect((plan?.centreMm ?? 0) - (plan?.alongMm ?? 0) / 2).toBeCloseTo(50, -1)
  })
  it('keeps the verdict of the worst place and says where it was answered to stand', () => {
    const across = reportOf(ON_FEET, { ...JOISTS, joistLie: 'across' })
    const plan = across.figures.floorPlan
    // Statics: two loads a width apart bend a joist less at mid-span than one would, while close to a support they shear it as much.
    expect(plan).toMatchObject({ lie: 'across', governs: 'shear', answeredCentreMm: 1829 })
    expect(plan?.centreMm).toBeLessThan(400)
    expect(across.findings.find(({ check }) => check === 'floor_load')?.value?.value).toBe(plan?.loadPercent)
    for (const conditions of [{ ...JOISTS, joistLie: 'bearing_wall' as const }, JOISTS])
      expect(reportOf(ON_FEET, conditions).figures.floorPlan).not.toHaveProperty('answeredCentreMm')
  })
  it('draws the worst where nobody said how it lies, and says so', () => {
    const worst = reportIn(JOISTS).figures.floorPlan
    const shares = (['across', 'along'] as const).map((joistLie) => reportIn({ ...JOISTS, joistLie }).figures.floorPlan?.loadPercent ?? 0)
    expect(worst?.lieStated).toBe(false)
    expect(worst?.loadPercent).toBe(Math.max(...shares))
  })
  it.each<Partial<Conditions>>([{ ...JOISTS, joistSpanMm: undefined }, { ...JOISTS, floor: 'unknown' }, { floor: 'ground_slab' }])(
    'is not drawn where the joists are not known: %o',
    (conditions) => expect(reportIn(conditions).figures.floorPlan).toBeUndefined(),
  )
})
