import { expect, it } from 'vitest'
import { lightUtilisation, polygonFactor, rectangleCorners } from '../../core/sizing/light-utilisation.ts'

/** Element to parallel rectangle, A = B = 1: textbook value 0.1385, from memory; own 0.13853. */
const overItsCorner = polygonFactor(rectangleCorners(1, 1), -0.5, -0.5, 1)
it('gives the textbook corner factor', () => {
  expect(Math.abs(overItsCorner - 0.1385)).toBeLessThan(5e-5)
  expect(overItsCorner).toBeCloseTo(0.13853, 5)
})

/** Own: the centre of a square of 2 at height 1 sees four corners of 1. */
it('sums four corners over the centre', () => expect(polygonFactor(rectangleCorners(2, 2), 0, 0, 1)).toBeCloseTo(0.55413, 5))

/**
 * Directly opposed equal rectangles, sides over distance X and Y, in closed form: Howell, A Catalog of Radiation Configuration Factors, C-11, from memory.
 */
function opposedRectangles(x: number, y: number): number {
  const [rootX, rootY] = [Math.sqrt(1 + x * x), Math.sqrt(1 + y * y)]
  const logarithm = Math.log(Math.sqrt(((1 + x * x) * (1 + y * y)) / (1 + x * x + y * y)))
  const arcs = x * rootY * Math.atan(x / rootY) + y * rootX * Math.atan(y / rootX) - x * Math.atan(x) - y * Math.atan(y)
  return (2 / (Math.PI * x * y)) * (logarithm + arcs)
}

/** The same from the definition, ∫∫ cos θ₁ cos θ₂ / (π r²) dA₁ dA₂ / A₁: it depends on the offsets u and v alone, each weighted by how often it occurs. */
function byDoubleArea(x: number, y: number, steps = 400): number {
  let sum = 0
  for (let i = 0; i < steps; i++)
    for (let j = 0; j < steps; j++) {
      const [u, v] = [(x * (i + 0.5)) / steps, (y * (j + 0.5)) / steps]
      sum += ((x - u) * (y - v)) / (1 + u * u + v * v) ** 2
    }
  return (4 * sum) / (Math.PI * steps * steps)
}

/** X = Y = 1: textbook value 0.1998, from memory. X = Y = 2 and 1 by 3: own, by the closed form and from the definition, which agree. */
it.each([
  [1, 1, 0.1998],
  [2, 2, 0.41525],
  [1, 3, undefined],
])('agrees with opposed rectangles of %s by %s', (x, y, value) => {
  const lit = { fixtureLengthMm: x * 1000, fixtureWidthMm: y * 1000, water: rectangleCorners(x * 1000, y * 1000), aboveWaterMm: 1000 }
  expect(Math.abs(byDoubleArea(x, y) - opposedRectangles(x, y))).toBeLessThan(1e-5)
  expect(Math.abs(lightUtilisation(lit) - opposedRectangles(x, y))).toBeLessThan(2e-4)
  if (value !== undefined) expect(Math.abs(opposedRectangles(x, y) - value)).toBeLessThan(5e-5)
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
  const factor = lightUtilisation({ fixtureLengthMm, fixtureWidthMm: 80, water: rectangleCorners(1199.2, 437.2), aboveWaterMm })
  expect(Math.abs(factor - share)).toBeLessThan(2e-3)
})

it('never lets more light on the water than the fixture gives', () => {
  for (const aboveWaterMm of [0, 1, 20, 500]) {
    const factor = lightUtilisation({ fixtureLengthMm: 300, fixtureWidthMm: 80, water: rectangleCorners(900, 440), aboveWaterMm })
    expect(factor).toBeGreaterThan(0)
    expect(factor).toBeLessThanOrEqual(1 + 1e-9)
  }
})
