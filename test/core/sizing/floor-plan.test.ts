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
