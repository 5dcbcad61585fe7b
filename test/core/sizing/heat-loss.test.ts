import fc from 'fast-check'
import { expect, it } from 'vitest'
import { evaporationShare, HIGH_LOSS, isLoose, LOW_LOSS, USUAL_LOSS, withLidOn } from '../../../core/sizing/heat-ends.ts'
import { evaporationLPerDay, heatLoss, inRoom as movedTo, lossByRoom, lossW, roomAt, vapourLossW } from '../../../core/sizing/heat-loss.ts'
import { GEOMETRY_A, TANK_A, isNear } from './reference-tanks.ts'

const inRoom = (cover: 'open' | 'glass', roomC: number, end = USUAL_LOSS) => heatLoss(TANK_A, GEOMETRY_A, cover, end, roomC)

/** Own: independent computation of the 75 gallon tank at 50 % humidity, F 0.5, lid share 0.15; tolerance 1e-3. */
it.each([
  ['open', 25, 20, 59.08, 8.75, 26.21, 46.66, 140.7, 1.651],
  ['glass', 25, 20, 59.08, 8.75, 25.21, 7.0, 100.04, 0.248],
  ['open', 25, 18, 82.71, 12.25, 36.7, 49.86, 181.53, 1.764],
  ['glass', 25, 18, 82.71, 12.25, 35.29, 7.48, 137.73, 0.265],
  ['open', 26, 22, 47.26, 7.0, 20.97, 47.61, 122.85, 1.686],
  ['glass', 25, 22, 35.45, 5.25, 15.12, 6.46, 62.29, 0.229],
] as const)('balances the %s tank of %s °C in a room of %s °C', (cover, waterC, roomC, side, bottom, top, vapour, total, litres) => {
  const loss = inRoom(cover, roomC)
  isNear(loss.sideWPerK * (waterC - roomC), side, 1e-3)
  isNear(loss.bottomWPerK * (waterC - roomC), bottom, 1e-3)
  isNear(loss.topWPerK * (waterC - roomC), top, 1e-3)
  isNear(vapourLossW(loss, waterC), vapour, 1e-3)
  isNear(lossW(loss, waterC), total, 1e-3)
  isNear(lossByRoom(loss, USUAL_LOSS.humidity, waterC)(roomAt(roomC)), total, 1e-3)
  isNear(evaporationLPerDay(loss, waterC), litres, 2e-3)
})

/** Own: ASHRAE’s form per square metre at F 0.5; tolerance 5e-4. */
it.each([
  [25, 20, 88.99],
  [26, 22, 90.81],
  [25, 22, 82.18],
])('evaporates from an open surface of %s °C in a room of %s °C', (waterC, roomC, wattsPerM2) => {
  const topM2 = (GEOMETRY_A.insideLengthMm * GEOMETRY_A.insideWidthMm) / 1e6
  isNear(vapourLossW(inRoom('open', roomC), waterC) / topM2, wattsPerM2, 5e-4)
})

/** Own: water as warm as the room still loses heat to its vapour: 70.5 W/m² at 25/25 °C and 50 %. */
it('loses heat by evaporation even in a room as warm as the water', () => {
  const topM2 = (GEOMETRY_A.insideLengthMm * GEOMETRY_A.insideWidthMm) / 1e6
  isNear(lossW(inRoom('open', 25), 25) / topM2, 70.5, 1e-3)
})

/** Own: the high-loss end of the open tank at 25/18 °C is 223 W, not 182. */
it('reckons the winter end of the open tank at 223 W', () => isNear(lossW(inRoom('open', 18, HIGH_LOSS), 25), 223, 3e-3))

it('never lets the high-loss end fall below the low-loss end', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('open', 'glass', 'plastic', 'mesh'),
      fc.double({ min: 5, max: 30, noNaN: true }),
      fc.double({ min: 0, max: 20, noNaN: true }),
      (cover, roomC, warmer) => {
        const high = heatLoss(TANK_A, GEOMETRY_A, cover, HIGH_LOSS, roomC)
        const low = heatLoss(TANK_A, GEOMETRY_A, cover, LOW_LOSS, roomC)
        expect(lossW(high, roomC + warmer)).toBeGreaterThanOrEqual(lossW(low, roomC + warmer))
      },
    ),
  )
})

it('needs more heat in a colder room', () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 24, noNaN: true }), fc.double({ min: 0.1, max: 10, noNaN: true }), (roomC, warmer) => {
      expect(lossW(inRoom('open', roomC, HIGH_LOSS), 25)).toBeGreaterThan(lossW(inRoom('open', roomC + warmer, HIGH_LOSS), 25))
    }),
  )
})

/**
 * Own, by hand, of the insulated low-loss end: 7.1429 W/m²K become 1 ÷ (0.13 + 0.010 + 0.005) = 6.8966; the back of 1.2192 × 0.4934 m falls out of
 * 1.65427 m², leaving 1.05271 m²: 7.2601 W/K. Through the bottom nothing goes.
 */
it('lets nothing through back and bottom at the low-loss end, and counts the water film', () => {
  const low = heatLoss(TANK_A, GEOMETRY_A, 'glass', LOW_LOSS, 24)
  isNear(low.sideWPerK, 7.2601, 1e-4)
  expect(low.bottomWPerK).toBe(0)
  isNear(low.topWPerK, 5.041, 1e-4)
  expect(low.dryWPerK).toBeCloseTo(low.sideWPerK + low.topWPerK, 12)
})

it('moves a tank to another room with its losses as they are', () => {
  const moved = movedTo(inRoom('open', 18), 0.5, 20)
  isNear(lossW(moved, 25), 140.7, 1e-3)
  // Half of 2338.80 Pa.
  isNear(moved.roomVapourPa, 1169.4, 1e-5)
})

it('gives nothing back where the air is damper than the water gives off', () => {
  // 50 % of 9594 Pa at 45 °C is more than 3169 Pa: the tank gains by conduction alone, 18.809 W/K × 20 K open.
  const hot = inRoom('open', 45)
  expect(vapourLossW(hot, 25)).toBe(0)
  isNear(lossW(hot, 25), -(11.816 + 1.75 + 5.243) * 20, 1e-3)
  isNear(lossByRoom(hot, USUAL_LOSS.humidity, 25)(roomAt(45)), -(11.816 + 1.75 + 5.243) * 20, 1e-3)
})

it('knows which tops are as good as open, and what a lid lets out', () => {
  const covers = ['open', 'mesh', 'glass', 'plastic'] as const
  expect(covers.map(isLoose)).toEqual([true, true, false, false])
  expect(covers.map(withLidOn)).toEqual(['glass', 'glass', 'glass', 'plastic'])
  expect(covers.map((cover) => evaporationShare(HIGH_LOSS, cover))).toEqual([1, 1, 0.2, 0.2])
})
