import { expect, it } from 'vitest'
import { pureWaterDensity, seaWaterDensity } from '../../../core/water/density.ts'

/** Published: Fofonoff & Millard, UNESCO Tech. Papers in Marine Science 44 (1983) p. 19. */
it.each([
  [0, 5, 999.96675],
  [0, 25, 997.04796],
  [35, 25, 1023.34306],
])('agrees with UNESCO 44 at salinity %s and %s °C', (salinity, celsius, published) => {
  expect(Math.abs(seaWaterDensity(salinity, celsius) - published)).toBeLessThan(1e-5)
})

/** CRC Handbook, standard density of water; from memory. Kell lies 0.003 low. */
it.each([
  [0, 999.8426],
  [4, 999.975],
  [10, 999.7026],
  [20, 998.2071],
  [25, 997.0479],
  [30, 995.6502],
  [40, 992.2187],
])('agrees with the handbook at %s °C', (celsius, handbook) => {
  expect(Math.abs(pureWaterDensity(celsius) - handbook)).toBeLessThan(0.006)
})

/** Own: computed independently from the published coefficients. */
it.each([
  [20, 998.2041],
  [25, 997.0449],
])('computes Kell’s equation at %s °C', (celsius, own) => {
  expect(Math.abs(pureWaterDensity(celsius) - own)).toBeLessThan(1e-4)
})

/** Own: EOS-80 computed independently, tolerance 1e-3. */
it.each([
  [24, 1023.6431],
  [26, 1023.0353],
])('computes sea water of salinity 35 at %s °C', (celsius, own) => {
  expect(Math.abs(seaWaterDensity(35, celsius) - own)).toBeLessThan(1e-3)
})

/** Own: specific gravity of sea water of salinity 35 at 25 °C over pure water at 25 °C. */
it('gives sea water a specific gravity of 1.0264 at 25/25 °C', () => {
  expect(seaWaterDensity(35, 25) / seaWaterDensity(0, 25)).toBeCloseTo(1.0264, 4)
})
