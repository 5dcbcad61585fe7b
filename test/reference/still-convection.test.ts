import { expect, it } from 'vitest'
import { sideTransmission } from '../../core/sizing/heat-transmission.ts'

/** Dry air as a plate meets it. */
interface Air {
  kelvin: number
  conductivity: number
  viscosity: number
  diffusivity: number
}

/** Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1323: an upright plate in still air, W/m²K. Form and coefficients from memory. */
function churchillChu({ kelvin, conductivity, viscosity, diffusivity }: Air, heightM: number, differenceK: number): number {
  const rayleigh = (9.80665 * differenceK * heightM ** 3) / (kelvin * viscosity * diffusivity)
  const prandtl = viscosity / diffusivity
  const nusselt = (0.825 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2
  return (nusselt * conductivity) / heightM
}

/** Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, example 9.2, from memory: a fire screen 0.71 m high, 232 °C in a room of 23 °C: 7.0 W/m²K. */
it('finds the worked example of a fire screen', () => {
  const film: Air = { kelvin: 400, conductivity: 33.8e-3, viscosity: 26.4e-6, diffusivity: 38.3e-6 }
  expect(churchillChu(film, 0.71, 232 - 23)).toBeCloseTo(7, 1)
})

const STEFAN_BOLTZMANN = 5.670374e-8
/** Air at 22 °C; glass radiates at 0.84. Handbook values, from memory. */
const ROOM: Air = { kelvin: 295.15, conductivity: 25.8e-3, viscosity: 15.3e-6, diffusivity: 21.6e-6 }
const GLASS_EMISSIVITY = 0.84
const radiation = (roomK: number, differenceK: number): number =>
  GLASS_EMISSIVITY * STEFAN_BOLTZMANN * (roomK ** 2 + (roomK + differenceK) ** 2) * (2 * roomK + differenceK)

/** Own: a pane 0.53 m high that is 2, 5 and 10 K warmer than a room of 22 °C: 0.1436, 0.1315 and 0.1215 m²K/W, within 4 % for the air's properties. */
it.each([
  [2, 0.1436],
  [5, 0.1315],
  [10, 0.1215],
])('resists as much %s K above the room as another program found', (differenceK, expected) => {
  const resistance = 1 / (churchillChu(ROOM, 0.53, differenceK) + radiation(ROOM.kelvin, differenceK))
  expect(Math.abs(resistance / expected - 1)).toBeLessThan(0.04)
})

it('brackets the 0.13 m²K/W of ISO 6946 that the sides are reckoned with', () => {
  const inside = (differenceK: number) => 1 / (churchillChu(ROOM, 0.53, differenceK) + radiation(ROOM.kelvin, differenceK))
  // What is left of the sides' resistance after 10 mm of glass at 1 W/mK.
  const taken = 1 / sideTransmission('glass', 10, false) - 0.01
  expect(taken).toBeLessThan(inside(2))
  expect(taken).toBeGreaterThan(inside(10))
})
