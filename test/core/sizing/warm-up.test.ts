import odex from 'odex'
import { describe, expect, it } from 'vitest'
import { equilibriumC } from '../../../core/sizing/equilibrium.ts'
import { heatCapacity } from '../../../core/sizing/heat-capacity.ts'
import { USUAL_LOSS } from '../../../core/sizing/heat-ends.ts'
import { heatLoss, lossW, type HeatLoss } from '../../../core/sizing/heat-loss.ts'
import { tankMass } from '../../../core/sizing/tank-mass.ts'
import { hoursBetween, leastHours, mostHours } from '../../../core/sizing/warm-up.ts'
import { GEOMETRY_A, GEOMETRY_B, MASS_A, TANK_A, TANK_B, isNear } from './reference-tanks.ts'

const inRoom = (cover: 'open' | 'glass', roomC: number) => heatLoss(TANK_A, GEOMETRY_A, cover, USUAL_LOSS, roomC)
const C = heatCapacity(MASS_A, 'glass')
/** Conduction alone: 18.6078 W/K, for the closed form. */
const dry = (roomC: number): HeatLoss => ({ ...inRoom('glass', roomC), vapourWPerPa: 0 })

/** Own, from masses rounded to a tenth; tolerance 1e-4. */
it('holds 1 073 386 J/K', () => isNear(C, 1_073_386, 1e-4))

/** Own: bisection on the evaporation curve, tolerance 0.02 °C; hours 0.5 %. Heater, room, then lid and open. */
it.each([
  [150, 20, 27.59, undefined, 25.4, undefined],
  [300, 20, 35.27, 17.45, 31.62, undefined],
  [150, 22, 29.53, undefined, 27.15, undefined],
  [300, 22, 37.18, 13.0, 33.26, 22.54],
  [150, 24, 31.47, undefined, 28.89, undefined],
])('settles with %s W stuck on in a room of %s °C', (watts, roomC, lidC, lidHours, openC, openHours) => {
  for (const [cover, balance, hours] of [
    ['glass', lidC, lidHours],
    ['open', openC, openHours],
  ] as const) {
    expect(Math.abs(equilibriumC(inRoom(cover, roomC), watts) - balance)).toBeLessThan(0.02)
    const reached = hoursBetween(inRoom(cover, roomC), C, watts, 25, 32)
    if (hours === undefined) expect(reached).toBeUndefined()
    else isNear(reached, hours, 5e-3)
  }
})

/** Own: one of two 150 W heaters failed off in a room of 18 °C. */
it('holds 25.64 °C under a lid and 23.63 °C open on one heater of 150 W', () => {
  expect(Math.abs(equilibriumC(inRoom('glass', 18), 150) - 25.64)).toBeLessThan(0.02)
  expect(Math.abs(equilibriumC(inRoom('open', 18), 150) - 23.63)).toBeLessThan(0.02)
})

/** Own: 60 × 30 × 36 cm, lid, room 22 °C. */
it.each([
  [25, 25.47],
  [50, 29.14],
  [100, 36.41],
])('settles the small tank with %s W', (watts, balance) => {
  expect(Math.abs(equilibriumC(heatLoss(TANK_B, GEOMETRY_B, 'glass', USUAL_LOSS, 22), watts) - balance)).toBeLessThan(0.02)
})

/** Own: the small tank from 25 °C to the danger mark on 100 W, tolerance 0.5 %. */
it('takes the small tank past 32 °C in 9.17 hours with 100 W stuck on', () => {
  const mass = tankMass({ shape: TANK_B, geometry: GEOMETRY_B, grain: 'quartz', water: 'fresh', waterC: 25 })
  const loss = heatLoss(TANK_B, GEOMETRY_B, 'glass', USUAL_LOSS, 22)
  isNear(hoursBetween(loss, heatCapacity(mass, 'glass'), 100, 25, 32), 9.17, 5e-3)
})

/** Own: closed form of the linear balance, tolerance 1e-4. */
it('agrees with the closed form where only conduction counts', () => {
  const loss = dry(18)
  isNear(loss.dryWPerK, 18.6078, 1e-5)
  isNear(C / loss.dryWPerK / 3600, 16.0235, 1e-4)
  isNear(hoursBetween(loss, C, 300, 18, 25), 9.1251, 1e-4)
  isNear(hoursBetween(loss, C, 0, 25, 21), 13.577, 1e-4)
})

it('is bounded by the time without any loss', () => {
  isNear((C * 7) / 300 / 3600, 6.957, 1e-4)
  expect(hoursBetween(dry(18), C, 300, 18, 25)).toBeGreaterThan(6.957)
})

/** Own: ODE, tolerance 2e-3. */
it('takes 9.370 hours under a lid and 11.159 open from 18 to 25 °C with 300 W', () => {
  isNear(hoursBetween(inRoom('glass', 18), C, 300, 18, 25), 9.37, 2e-3)
  isNear(hoursBetween(inRoom('open', 18), C, 300, 18, 25), 11.159, 2e-3)
})

/** Oracle: a general ODE solver (Bulirsch–Stoer) arrives at the same temperature after the hours we name. */
it.each([
  ['glass', 18, 300, 18, 25],
  ['open', 18, 300, 18, 25],
  ['glass', 22, 300, 25, 32],
  ['glass', 18, 0, 25, 21.14],
] as const)('agrees with an ODE solver: %s, room %s °C, %s W, %s to %s °C', (cover, roomC, watts, fromC, toC) => {
  const loss = inRoom(cover, roomC)
  const hours = hoursBetween(loss, C, watts, fromC, toC)
  if (hours === undefined) throw new Error('must be reached')
  const solver = new odex.Solver(1)
  solver.absoluteTolerance = solver.relativeTolerance = 1e-10
  const end = solver.solve((_t, y) => [((watts - lossW(loss, y[0] ?? NaN)) * 3600) / C], 0, [fromC], hours).y[0]
  isNear(end, toC, 1e-6)
})

/** Own: ODE of all heat lost under a lid in a room of 18 °C for 12 and 24 hours; tolerance 2e-3. */
it.each([
  [21.14, 12],
  [19.355, 24],
])('cools to %s °C in %s hours', (toC, hours) => isNear(hoursBetween(inRoom('glass', 18), C, 0, 25, toC), hours, 2e-3))

it('never reaches a temperature beyond the balance', () => {
  expect(hoursBetween(inRoom('glass', 20), C, 150, 25, 32)).toBeUndefined()
  expect(hoursBetween(inRoom('glass', 20), C, 150, 25, 20)).toBeUndefined()
})

/** By hand: 10 W/K and 3.6 MJ/K have a time constant of 100 hours; on 100 W the water settles 10 K above its room of 20 °C. */
describe('the closed form of a loss that is straight', () => {
  const straight = (dryWPerK: number): HeatLoss => ({ ...dry(20), dryWPerK, vapourWPerPa: 0 })
  const J_PER_K = 3.6e6
  const hours = (heatW: number, fromC: number, toC: number) => hoursBetween(straight(10), J_PER_K, heatW, fromC, toC)

  it.each([
    ['warming half of the way', 100, 20, 25, 100 * Math.log(2)],
    ['cooling half of the way', 0, 30, 25, 100 * Math.log(2)],
    ['cooling towards a balance from above', 100, 40, 35, 100 * Math.log(2)],
    ['almost all of the way', 100, 20, 29.994, 100 * Math.log(10 / 0.006)],
    ['no way at all', 100, 23, 23, 0],
  ])('%s', (_what, heatW, fromC, toC, expected) => isNear(hours(heatW, fromC, toC), expected, expected === 0 ? 1 : 1e-6))

  it.each([
    ['so close to the balance that it is as good as there', 100, 20, 29.996],
    ['past the balance', 100, 20, 31],
    ['to the balance itself', 100, 20, 30],
    ['from the balance', 100, 30, 25],
    ['away from it, below', 100, 25, 22],
    ['away from it, above', 100, 35, 38],
  ])('never comes %s', (_what, heatW, fromC, toC) => expect(hours(heatW, fromC, toC)).toBeUndefined())

  it('is reached by one case before another, or by none', () => {
    const cases = (...losses: number[]) => losses.map((dryWPerK) => ({ loss: straight(dryWPerK), capacityJPerK: J_PER_K }))
    // 12.5 W/K: 80 hours, and 8 K above the room.
    isNear(leastHours(cases(12.5, 10), 100, 20, 25), 100 * Math.log(2), 1e-6)
    isNear(mostHours(cases(12.5, 10), 100, 20, 25), 80 * Math.log(8 / 3), 1e-6)
    // 20 W/K: 5 K above the room, never there.
    isNear(leastHours(cases(20, 10), 100, 20, 25), 100 * Math.log(2), 1e-6)
    expect(mostHours(cases(20, 10), 100, 20, 25)).toBeUndefined()
    expect(leastHours(cases(20, 25), 100, 20, 25)).toBeUndefined()
  })
})
