import { describe, expect, it } from 'vitest'
import { FREE_FALL, GLASS_MODULUS_PA, glassPlate, type TopEdge } from '../../core/sizing/glass-plate.ts'
import { bendingOf, type Plate } from './levy-plate.ts'

/** Stress and bow in Roark's form: β = 6M/(q₀h²) and α = 12(1 − ν²)·w. */
const roark = (plate: Plate) => {
  const { moment, bow } = bendingOf(plate)
  return { stress: 6 * moment, bow: 12 * (1 - plate.poisson ** 2) * bow }
}

describe('the oracle gives what is printed', () => {
  // Roark's Formulas for Stress and Strain, table 11.4 case 1a, uniform load, four edges simply supported, ν 0.3.
  it.each([
    [1, 0.2874, 0.0444],
    [1.4, 0.453, 0.077],
    [2, 0.6102, 0.111],
    [3, 0.7134, 0.1335],
  ])('of a plate %s times as long as high under a uniform load', (ratio, stress, bow) => {
    const found = roark({ ratio, poisson: 0.3, top: 'held', load: 'uniform' })
    expect(Math.abs(found.stress - stress)).toBeLessThan(5e-4)
    expect(Math.abs(found.bow - bow)).toBeLessThan(5e-4)
  })

  // Timoshenko & Woinowsky-Krieger, article 29: centre of a square under still water, from memory.
  it('of a square under still water: 0.00203 and 0.0239 at its middle', () => {
    const found = bendingOf({ ratio: 1, poisson: 0.3, top: 'held', load: 'hydrostatic' })
    expect(found.bowAtMiddle).toBeCloseTo(0.00203, 5)
    expect(found.momentAtMiddle).toBeCloseTo(0.0239, 4)
  })

  // The same book, article 48: uniform load, three edges held and one free, square, middle of the free edge; from memory.
  it('of a square with a free edge: 0.01286 and 0.112', () => {
    const found = bendingOf({ ratio: 1, poisson: 0.3, top: 'free', load: 'uniform' })
    expect(Math.abs(found.bow - 0.01286)).toBeLessThan(2e-5)
    expect(Math.abs(found.momentAtTop - 0.112)).toBeLessThan(5e-4)
  })

  // Roark, table 11.4 cases 1d and 1e, hydrostatic over the height, from memory, two digits.
  it.each([
    [1, 0.16],
    [1.5, 0.26],
    [2, 0.32],
    [3, 0.37],
    [4, 0.38],
  ])('of a plate %s times as long as high under still water', (ratio, stress) => {
    expect(roark({ ratio, poisson: 0.3, top: 'held', load: 'hydrostatic' }).stress).toBeCloseTo(stress, 2)
  })
})

describe('the engine’s coefficients', () => {
  const engine = (ratio: number, topEdge: TopEdge) => {
    const [depthM, thicknessM, waterDensity] = [0.5, 0.01, 1000]
    const { stressPa, bowM } = glassPlate({ lengthM: ratio * depthM, depthM, thicknessM, topEdge, waterDensity })
    const pressure = waterDensity * FREE_FALL * depthM
    return {
      stress: (stressPa * thicknessM ** 2) / (pressure * depthM ** 2),
      bow: (bowM * GLASS_MODULUS_PA * thicknessM ** 3) / (pressure * depthM ** 4),
    }
  }
  const cases = (['held', 'free'] as const).flatMap((topEdge) =>
    [0.5, 0.667, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 3, 3.5, 4, 5, 6].map((ratio) => [topEdge, ratio] as const),
  )
  it.each(cases)('with the top %s at %s agree with the oracle', (topEdge, ratio) => {
    const oracle = roark({ ratio, poisson: 0.22, top: topEdge, load: 'hydrostatic' })
    expect(Math.abs(engine(ratio, topEdge).stress - oracle.stress)).toBeLessThan(1e-3)
    expect(Math.abs(engine(ratio, topEdge).bow / oracle.bow - 1)).toBeLessThan(0.02)
  })

  it.each(cases.slice(1))('between the rows and beyond them they stay within a fiftieth: top %s, 0.9 × %s', (topEdge, ratio) => {
    const between = Math.max(0.55, ratio * 0.9)
    const oracle = roark({ ratio: between, poisson: 0.22, top: topEdge, load: 'hydrostatic' })
    expect(Math.abs(engine(between, topEdge).stress / oracle.stress - 1)).toBeLessThan(0.02)
  })

  it('of a long pane follow the twist with a free top, and the strip with a held one', () => {
    for (const ratio of [7, 8]) {
      const free = roark({ ratio, poisson: 0.22, top: 'free', load: 'hydrostatic' })
      expect(Math.abs(engine(ratio, 'free').stress / free.stress - 1)).toBeLessThan(0.01)
      expect(Math.abs(engine(ratio, 'free').bow / free.bow - 1)).toBeLessThan(0.05)
      const held = roark({ ratio, poisson: 0.22, top: 'held', load: 'hydrostatic' })
      expect(Math.abs(engine(ratio, 'held').stress / held.stress - 1)).toBeLessThan(0.02)
    }
  })
})
