import { expect, it } from 'vitest'
import { equilibriumC } from '../../../core/sizing/equilibrium.ts'
import { USUAL_LOSS } from '../../../core/sizing/heat-ends.ts'
import { heatLoss, lossW } from '../../../core/sizing/heat-loss.ts'
import { GEOMETRY_A, TANK_A } from './reference-tanks.ts'

const inRoom = (cover: 'open' | 'glass', roomC: number) => heatLoss(TANK_A, GEOMETRY_A, cover, USUAL_LOSS, roomC)

/** The coldest room in which so much heat holds 25 °C. */
function coldestRoomC(cover: 'open' | 'glass', watts: number): number {
  let [low, high] = [-10, 25]
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2
    if (lossW(inRoom(cover, middle), 25) > watts) low = middle
    else high = middle
  }
  return high
}

/** 3, 4 and 5 W for each of 75 US gallons are common practice; the rooms are own, by another program, to 0.02 K. */
it.each([
  [225, 13.36, 15.85],
  [300, 9.36, 12.11],
  [375, 5.36, 8.31],
])('%s W hold 25 °C in a room of %s °C under a lid, and of %s °C without', (watts, lidded, open) => {
  expect(Math.abs(coldestRoomC('glass', watts) - lidded)).toBeLessThan(0.02)
  expect(Math.abs(coldestRoomC('open', watts) - open)).toBeLessThan(0.02)
})

/** Own: 300 W stuck on over an open tank in a room of 22 °C end at 33.26 °C; a loss made straight at 25 °C says 33.64 °C. */
it('is solved along the curve of evaporation, which a straight line at the target overshoots', () => {
  const loss = inRoom('open', 22)
  const slope = (lossW(loss, 25.01) - lossW(loss, 24.99)) / 0.02
  const straight = 25 + (300 - lossW(loss, 25)) / slope
  expect(Math.abs(equilibriumC(loss, 300) - 33.26)).toBeLessThan(0.02)
  expect(Math.abs(straight - 33.64)).toBeLessThan(0.03)
})
