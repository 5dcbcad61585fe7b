import { describe, expect, it } from 'vitest'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { INCH } from './reference-tanks.ts'
import { reportOf } from './sample-build.ts'

const JOISTS: Partial<Conditions> = { floor: 'timber_upper', joistSpanMm: 144 * INCH, joistSpacingMm: 16 * INCH, floorUse: 'other' }
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
