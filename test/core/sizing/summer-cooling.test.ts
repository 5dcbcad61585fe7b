import { expect, it } from 'vitest'
import { USUAL_LOSS } from '../../../core/sizing/heat-ends.ts'
import { heatLoss, lossW, vapourLossW } from '../../../core/sizing/heat-loss.ts'
import { coolingNeededW, fanned } from '../../../core/sizing/summer-cooling.ts'
import { GEOMETRY_A, isNear, TANK_A } from './reference-tanks.ts'

const open = heatLoss(TANK_A, GEOMETRY_A, 'open', USUAL_LOSS, 20)

/** ASHRAE HVAC Applications: 0.089 + 0.0782·V. At 1 m/s 1.8787 times as much vapour, by hand; the still surface loses 46.66 W (own worked value). */
it('takes 1.88 times the vapour with a metre a second of air', () => {
  isNear(vapourLossW(open, 25), 46.66, 1e-3)
  isNear(vapourLossW(fanned(open), 25), 46.66 * 1.87865, 1e-3)
  expect(vapourLossW(fanned(open, 0), 25)).toBe(vapourLossW(open, 25))
})

it('needs as much cooling as the losses leave, and none where they leave none', () => {
  expect(coolingNeededW(open, lossW(open, 25) + 40, 25)).toBeCloseTo(40, 9)
  expect(coolingNeededW(open, 10, 25)).toBe(0)
})
