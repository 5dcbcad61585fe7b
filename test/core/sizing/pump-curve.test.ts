import { describe, expect, it } from 'vitest'
import type { FilterSpec } from '../../../core/catalog/spec.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { group, one, reportOf } from './sample-build.ts'

const WORKED: FilterSpec = {
  type: 'canister',
  ratedFlowLph: 1500,
  maxHeadM: 2,
  midHeadM: 1.5,
  midFlowLph: 750,
  hoseMm: 16,
  hoseLengthMm: 3000,
  fittings: 'usual',
}
function curveOf(spec: Partial<FilterSpec> = {}, room: Partial<Conditions> = {}) {
  const { pumpCurve } = reportOf({ filters: [one('Pellick', { ...WORKED, ...spec })] }, room).figures
  if (!pumpCurve) throw new Error('a canister whose head and hose are stated has a curve')
  return pumpCurve
}

describe('a pump’s curve as it is drawn', () => {
  const curve = curveOf()

  /** By hand: 2·(1 − (Q/1500)²). */
  it('runs in 24 steps from the highest head to the greatest flow', () => {
    expect(curve.pump.length).toBe(25)
    expect([0, 6, 12, 18, 24].map((step) => curve.pump[step])).toEqual([
      { flowLph: 0, headM: 2 },
      { flowLph: 375, headM: 1.875 },
      { flowLph: 750, headM: 1.5 },
      { flowLph: 1125, headM: 0.875 },
      { flowLph: 1500, headM: 0 },
    ])
  })

  /** Own: media take 0.26 of the highest head at the printed flow when rinsed and 1.04 when loaded, by the square of the flow: 0.39 m apart at 750 L/h. */
  it('has lines of clean and of loaded media above it that end at the highest head', () => {
    const at = (line: typeof curve.clean, lph: number) => line.find(({ flowLph }) => flowLph === lph)?.headM ?? NaN
    expect(at(curve.loaded, 750) - at(curve.clean, 750)).toBeCloseTo(0.39, 2)
    expect(curve.clean[0]).toEqual({ flowLph: 0, headM: 0 })
    expect(curve.loaded.length).toBeLessThan(curve.clean.length)
    expect(curve.clean.length).toBeLessThan(25)
    // A wide hose takes next to nothing: 0.52 m of clean media at 1500 L/h, and 2.08 of loaded ones, which is beyond the pump.
    const wide = curveOf({ hoseMm: 60 })
    expect(wide.clean.length).toBe(25)
    expect(at(wide.clean, 1500)).toBeCloseTo(0.52, 1)
    expect(wide.loaded.length).toBe(24)
  })

  it('meets them where it has the head that they take', () => {
    for (const { flowLph, headM } of [curve.cleanAt, curve.loadedAt]) expect(headM).toBeCloseTo(2 * (1 - (flowLph / 1500) ** 2), 2)
    // Own, by another solver.
    expect(Math.abs(curve.cleanAt.flowLph - 963)).toBeLessThanOrEqual(2)
    expect(Math.abs(curve.loadedAt.flowLph - 835)).toBeLessThanOrEqual(2)
  })

  it('stands at the middle of what nobody stated, and tells its ends', () => {
    // A bend of 1 to 2: 2·(1 − 0.5^1.5) at half of the flow.
    const open = curveOf({ midHeadM: undefined, midFlowLph: undefined })
    expect(open.pump[12]?.headM).toBeCloseTo(1.293, 3)
    expect(open.cleanLph.low).toBeLessThan(open.cleanAt.flowLph)
    expect(open.cleanLph.high).toBeGreaterThan(open.cleanAt.flowLph)
    expect(open.loadedLph.low).toBeLessThan(open.loadedAt.flowLph)
    expect(open.loadedLph.high).toBeGreaterThan(open.loadedAt.flowLph)
    for (const lph of [open.cleanLph.low, open.loadedLph.high]) expect(Number.isInteger(lph)).toBe(true)
  })

  it('has the marks of the animals, and no ceiling where they have none', () => {
    // 4 and 10 times an hour through 237.71 L.
    expect(curve).toMatchObject({ filter: 'Pellick', floorLph: 951, ceilingLph: 2377 })
    expect(curveOf({}, { livestock: { ...group('small-tropical'), flowCeilingPerHour: null } }).ceilingLph).toBeNull()
  })
})
