import psychrolib from 'psychrolib'
import { beforeAll, expect, it } from 'vitest'
import { saturationPressurePa, saturationSlopePaPerK } from '../../../core/water/vapour-pressure.ts'

beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI))

/** Own, from Hyland & Wexler’s equation as ASHRAE prints it. */
it.each([
  [5, 872.49],
  [20, 2338.8],
  [25, 3169.22],
  [30, 4246.03],
  [40, 7383.46],
])('gives the Hyland–Wexler pressure at %s °C', (celsius, expected) => {
  expect(Math.abs(saturationPressurePa(celsius) / expected - 1)).toBeLessThan(1e-5)
})

/** CRC Handbook, from memory; formulas differ by up to 0.3 %. */
it.each([
  [20, 2338.8],
  [25, 3169],
  [30, 4245.5],
])('agrees with the handbook at %s °C', (celsius, handbook) => {
  expect(Math.abs(saturationPressurePa(celsius) / handbook - 1)).toBeLessThan(3e-3)
})

it.each([0.02, 7.5, 18, 22.2, 31, 45])('agrees with an independent psychrometric library at %s °C', (celsius) => {
  expect(Math.abs(saturationPressurePa(celsius) - psychrolib.GetSatVapPres(celsius))).toBeLessThan(0.01)
})

/** Central difference over a hundredth of a kelvin in the same library. */
it.each([5, 18, 25, 31, 45])('rises as fast as in that library at %s °C', (celsius) => {
  const slope = (psychrolib.GetSatVapPres(celsius + 0.005) - psychrolib.GetSatVapPres(celsius - 0.005)) / 0.01
  expect(Math.abs(saturationSlopePaPerK(celsius, psychrolib.GetSatVapPres(celsius)) / slope - 1)).toBeLessThan(1e-4)
})
