import psychrolib from 'psychrolib'
import { beforeAll, describe, expect, it } from 'vitest'
import { saturationPressurePa } from '../../core/water/vapour-pressure.ts'

beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI))

/** FAO Irrigation and Drainage Paper 56, eq. 11; from memory. */
const fao = (celsius: number): number => 610.8 * Math.exp((17.27 * celsius) / (celsius + 237.3))
/** Magnus' form by Alduchov & Eskridge (1996); from memory. */
const magnus = (celsius: number): number => 610.94 * Math.exp((17.625 * celsius) / (celsius + 243.04))

/** Wagner & Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783, IAPWS SR1-86; coefficients from memory. */
function iapws(celsius: number): number {
  const [criticalK, criticalPa] = [647.096, 22.064e6]
  const kelvin = celsius + 273.15
  const x = 1 - kelvin / criticalK
  const sum =
    -7.85951783 * x + 1.84408259 * x ** 1.5 - 11.7866497 * x ** 3 + 22.6807411 * x ** 3.5 - 15.9618719 * x ** 4 + 1.80122502 * x ** 7.5
  return criticalPa * Math.exp((criticalK / kelvin) * sum)
}

const off = (value: number, expected: number): number => Math.abs(value / expected - 1)

/** Own, each formula reckoned once by another program: tolerance 1e-5 within a formula. */
const TABLE = [
  [5, 872.31, 871.56, 872.53],
  [20, 2338.28, 2333.44, 2339.19],
  [25, 3167.78, 3161.74, 3169.82],
  [30, 4243.07, 4236.65, 4246.92],
  [40, 7375.61, 7374.72, 7385.11],
] as const

describe.each(TABLE)('water of %s °C', (celsius, byFao, byMagnus, byIapws) => {
  it('has in three other formulas the pressure that another program found', () => {
    expect(off(fao(celsius), byFao)).toBeLessThan(1e-5)
    expect(off(magnus(celsius), byMagnus)).toBeLessThan(1e-5)
    expect(off(iapws(celsius), byIapws)).toBeLessThan(1e-5)
  })

  it('has in ours and in an independent library the same within 0.3 per cent of each of them', () => {
    for (const other of [fao(celsius), magnus(celsius), iapws(celsius)]) {
      expect(off(saturationPressurePa(celsius), other)).toBeLessThan(3e-3)
      expect(off(psychrolib.GetSatVapPres(celsius), other)).toBeLessThan(3e-3)
    }
  })
})

/** FAO-56 table 2.3, from memory, to its three decimals of a kilopascal. */
it.each([
  [20, 2.338],
  [25, 3.168],
  [30, 4.243],
])('at %s °C agrees with the table of irrigation engineers', (celsius, kPa) => {
  expect(Math.round(fao(celsius)) / 1000).toBeCloseTo(kPa, 3)
  expect(off(saturationPressurePa(celsius) / 1000, kPa)).toBeLessThan(1e-3)
})

/** Steam tables of IAPWS-95 at 25 and 100 °C, kPa: 3.1699 and 101.42; from memory. */
it.each([
  [25, 3169.9],
  [100, 101420],
])('at %s °C agrees with the steam tables', (celsius, pascals) => {
  expect(off(iapws(celsius), pascals)).toBeLessThan(1e-4)
  expect(off(saturationPressurePa(celsius), pascals)).toBeLessThan(2e-3)
})
