import { expect, it } from 'vitest'
import { cornerFactor, lightUtilisation } from '../../core/sizing/light-utilisation.ts'

/** Element to parallel rectangle, A = B = 1: textbook value 0.1385, from memory; own 0.13853. */
it('gives the textbook corner factor', () => expect(Math.abs(cornerFactor(1, 1) - 0.1385)).toBeLessThan(5e-5))

/** Own: the centre of a square of 2 at height 1 sees four corners of 1. */
it('sums four corners over the centre', () => expect(4 * cornerFactor(1, 1)).toBeCloseTo(0.55413, 5))

/**
 * Equal parallel squares (Howell, A Catalog of Radiation Configuration Factors, C-11/C-13): X = Y = 1 is 0.1998 (textbook, from memory);
 * X = Y = 2 is 0.4153 (published example of a thermal library citing Howell).
 */
it.each([
  [1, 0.1998],
  [2, 0.4153],
])('agrees with equal parallel squares of side %s', (side, published) => {
  const mm = side * 1000
  const factor = lightUtilisation({ fixtureLengthMm: mm, fixtureWidthMm: mm, waterLengthMm: mm, waterWidthMm: mm, aboveWaterMm: 1000 })
  expect(Math.abs(factor - published)).toBeLessThan(2e-4)
})

/** Own, averaged by fine sums; tolerance 2e-3. */
it.each([
  [1150, 50, 0.9532],
  [1150, 150, 0.7582],
  [1150, 300, 0.497],
  [600, 50, 0.9723],
  [600, 150, 0.8081],
  [600, 300, 0.5476],
])('lets a fixture of %s mm at %s mm light the 75 gallon tank', (fixtureLengthMm, aboveWaterMm, share) => {
  const factor = lightUtilisation({ fixtureLengthMm, fixtureWidthMm: 80, waterLengthMm: 1199.2, waterWidthMm: 437.2, aboveWaterMm })
  expect(Math.abs(factor - share)).toBeLessThan(2e-3)
})

it('never lets more light on the water than the fixture gives', () => {
  for (const aboveWaterMm of [0, 1, 20, 500]) {
    const factor = lightUtilisation({ fixtureLengthMm: 300, fixtureWidthMm: 80, waterLengthMm: 900, waterWidthMm: 440, aboveWaterMm })
    expect(factor).toBeGreaterThan(0)
    expect(factor).toBeLessThanOrEqual(1 + 1e-9)
  }
})
