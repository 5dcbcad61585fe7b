import { describe, expect, it } from 'vitest'
import { pureWaterDensity, seaWaterDensity } from '../../../core/water/density.ts'
import { atmospheresAt, oxygenSaturation } from '../../../core/water/dissolved-oxygen.ts'
import { oxygenTransfer, schmidtOfOxygen, stirredTransfer, transferUnderWind } from '../../../core/water/gas-transfer.ts'
import { waterViscosity } from '../../../core/water/viscosity.ts'

describe('oxygen that water holds', () => {
  /** Published: EN 25814 (ISO 5814), two decimals, and APHA Standard Methods, three; the second from memory. */
  it.each([
    [0, 14.6, 14.621],
    [15, 10.1, 10.084],
    [20, 9.09, 9.092],
    [25, 8.26, 8.263],
    [30, 7.56, 7.559],
  ])('at %s °C in fresh water', (celsius, standard, handbook) => {
    expect(Math.abs(oxygenSaturation(celsius) - standard)).toBeLessThan(0.025)
    expect(Math.abs(oxygenSaturation(celsius) - handbook)).toBeLessThan(0.0015)
  })

  /** Own: the published coefficients, computed independently. */
  it.each([
    [0, 11.446, 12.416],
    [15, 8.135, 8.546],
    [20, 7.396, 7.697],
    [25, 6.772, 6.985],
    [30, 6.237, 6.376],
  ])('at %s °C in sea water, and at 0.85 atm', (celsius, sea, high) => {
    expect(oxygenSaturation(celsius, 35)).toBeCloseTo(sea, 3)
    expect(Math.abs(oxygenSaturation(celsius, 0, 0.85) - high)).toBeLessThan(0.0015)
  })

  /** Own: the same published equation for other pressures, by a second program. */
  it.each([
    [2, 0, 0.5, 6.869859],
    [2, 35, 1.1, 11.969993],
    [20, 0, 0.5, 4.440424],
    [20, 35, 0.5, 3.611978],
    [38, 0, 0.5, 3.079157],
    [38, 0, 1.1, 7.327716],
  ])('at %s °C and a salinity of %s under %s atm', (celsius, salinity, atm, expected) =>
    expect(Math.abs(oxygenSaturation(celsius, salinity, atm) - expected)).toBeLessThan(2e-6),
  )

  /** ICAO standard atmosphere, from memory. */
  it('falls with the height above the sea: 0.8243 atm at 1600 m', () => {
    expect(atmospheresAt(1600)).toBeCloseTo(0.8243, 4)
    expect(atmospheresAt(0)).toBe(1)
    expect(oxygenSaturation(20, 0, atmospheresAt(1600))).toBeLessThan(oxygenSaturation(20))
  })
})

describe('oxygen above the sea', () => {
  /** Published: Mortimer's factors of height, Mitt. Int. Ver. Limnol. 22 (1981): 1.13 at 1000 m, 1.20 at 1500 m, 1.28 at 2000 m; from memory. */
  it.each([
    [1000, 1.13],
    [1500, 1.2],
    [2000, 1.28],
  ])('is less at %s m by the factor that limnologists use', (metres, factor) => {
    expect(Math.abs(oxygenSaturation(20) / oxygenSaturation(20, 0, atmospheresAt(metres)) / factor - 1)).toBeLessThan(0.01)
  })
})

describe('what passes the surface', () => {
  /** Wanninkhof (1992), from memory: 530 in fresh water and 589 in sea water at 20 °C. */
  it('has the Schmidt numbers that are printed', () => {
    expect(Math.round(schmidtOfOxygen(20, 'fresh'))).toBe(530)
    expect(Math.round(schmidtOfOxygen(20, 'salt'))).toBe(589)
    // By hand from the printed cubic: 1800.6 − 3002.5 + 2363.6 − 743.9 and 1953.4 − 3200 + 2494.9 − 782.7 at 25 °C.
    expect(schmidtOfOxygen(25, 'fresh')).toBeCloseTo(417.85, 2)
    expect(schmidtOfOxygen(25, 'salt')).toBeCloseTo(465.6, 2)
  })

  /** Cole & Caraco (1998), from memory: 2.07 cm/h in still air; at 5 m/s 5.4 by hand. */
  it('grows with wind and warmth', () => {
    expect(transferUnderWind(0)).toBe(2.07)
    expect(transferUnderWind(5)).toBeCloseTo(2.07 + 0.215 * 15.4258, 3)
    // 2.07 × √(600/417.7), by hand.
    expect(oxygenTransfer(2.07, 25, 'fresh')).toBeCloseTo(2.481, 2)
    expect(oxygenTransfer(2.07, 28, 'fresh')).toBeGreaterThan(oxygenTransfer(2.07, 20, 'fresh'))
  })
})

describe('a stirred surface', () => {
  /** CRC Handbook: 1.0016 mPa s at 20 °C, 0.8900 at 25 °C, 0.7972 at 30 °C; from memory. */
  it.each([
    [20, 1.0016e-3],
    [25, 0.89e-3],
    [30, 0.7972e-3],
  ])('has the handbook’s viscosity under it at %s °C', (celsius, handbook) => {
    expect(Math.abs(waterViscosity(celsius) / handbook - 1)).toBeLessThan(3e-3)
  })

  /** ITTC recommended procedure 7.5-02-01-03: 1.1892e-6 m²/s in sea water of 15 °C, 1.1386e-6 in fresh; UNESCO density; from memory. */
  it('has sea water thicker than fresh by the towing tanks’ table', () => {
    const kinematic = (salinity: number) => waterViscosity(15, salinity) / seaWaterDensity(salinity, 15)
    expect(Math.abs(kinematic(35.16) / 1.1892e-6 - 1)).toBeLessThan(6e-3)
    expect(Math.abs(kinematic(0) / 1.1386e-6 - 1)).toBeLessThan(6e-3)
  })

  /** Own: what salt adds by the published coefficients, by a second program, in a brine of 120 g/kg where each of them counts. */
  it.each([
    [10, 1.312372],
    [20, 1.324073],
    [60, 1.361637],
    [90, 1.380105],
  ])('has brine of %s °C thicker than fresh water by the factor %s', (celsius, factor) =>
    expect(Math.abs(waterViscosity(celsius, 120) / waterViscosity(celsius) - factor)).toBeLessThan(1e-6),
  )

  /** Published coefficients of the same form over many waters: 0.419 (Zappa et al. 2007) and 0.43 (Vachon et al. 2010), from memory. */
  it.each([0.419, 0.43])('takes up a gas within a tenth of the coefficient %s that was measured', (coefficient) => {
    const kinematic = waterViscosity(20) / pureWaterDensity(20)
    const measured = (coefficient * (1e-4 * kinematic) ** 0.25 * 360_000) / Math.sqrt(schmidtOfOxygen(20, 'fresh'))
    expect(Math.abs(stirredTransfer(1e-4, 20, 'fresh') / measured - 1)).toBeLessThan(0.1)
  })

  /** By hand: 0.4 × (1e-5 × 8.93e-7)^¼ ÷ √417.7 is 3.38e-5 m/s, 12.2 cm/h. */
  it('is renewed by small eddies', () => {
    expect(stirredTransfer(1e-5, 25, 'fresh')).toBeCloseTo(12.2, 1)
    expect(stirredTransfer(16e-5, 25, 'fresh')).toBeCloseTo(2 * stirredTransfer(1e-5, 25, 'fresh'), 9)
  })
})
