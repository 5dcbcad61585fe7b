import fc from 'fast-check'
import { expect, it } from 'vitest'
import { CORD_SLACK_MM, dripLoop } from '../../../core/sizing/drip-loop.ts'

/** Own: mirror principle, verified by minimising over the low point; tolerance 1e-6. */
it.each([
  [600, 1350, 300, 200, 1386.542, 552.0, 1397.112],
  [900, 1300, 1100, 1000, 984.886, 675.0, 1048.683],
])('leads a cord %s mm sideways from %s to %s mm', (distanceMm, exitHeightMm, outletHeightMm, low, shortest, x, hanging) => {
  const loop = dripLoop({ distanceMm, exitHeightMm, outletHeightMm })
  expect(loop?.lowPointMm).toBe(low)
  expect(loop?.shortestMm).toBeCloseTo(shortest, 3)
  expect(loop?.lowPointFromTankMm).toBeCloseTo(x, 6)
  expect(loop?.hangingMm).toBeCloseTo(hanging, 3)
  expect(loop?.neededMm).toBeCloseTo(hanging + CORD_SLACK_MM, 3)
})

it('has no room for a loop under an outlet less than 100 mm above the floor', () => {
  expect(dripLoop({ distanceMm: 600, exitHeightMm: 1350, outletHeightMm: 99 })).toBeNull()
  expect(dripLoop({ distanceMm: 600, exitHeightMm: 1350, outletHeightMm: 100 })).not.toBeNull()
})

it('hangs below both ends and is never shorter than the straight line', () => {
  const mm = fc.integer({ min: 100, max: 2500 })
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 10_000 }), mm, mm, (distanceMm, exitHeightMm, outletHeightMm) => {
      const loop = dripLoop({ distanceMm, exitHeightMm, outletHeightMm })
      if (!loop) throw new Error('there is room')
      expect(loop.lowPointMm).toBeLessThan(Math.min(exitHeightMm, outletHeightMm))
      expect(loop.shortestMm).toBeGreaterThan(Math.hypot(distanceMm, exitHeightMm - outletHeightMm))
      expect(loop.hangingMm).toBeGreaterThanOrEqual(loop.shortestMm - 1e-9)
      expect(loop.hangingMm).toBeLessThanOrEqual(distanceMm + exitHeightMm + outletHeightMm - 2 * loop.lowPointMm + 1e-9)
    }),
  )
})
