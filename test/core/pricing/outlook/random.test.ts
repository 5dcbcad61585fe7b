import { mean, standardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { drawBeta, drawDaysUntil, drawGamma, drawNormal, randomOf, type Random } from '../../../../core/pricing/outlook/random.ts'

const COUNT = 20_000
const sample = (draw: (random: Random) => number, seed = 1): number[] => {
  const random = randomOf(seed, 'sample')
  return Array.from({ length: COUNT }, () => draw(random))
}

/** Mean and standard deviation of the distribution; a sample's mean is held to four of its standard errors, its spread to 4 %. */
describe.each([
  { name: 'a uniform', draw: (random: Random) => random(), mean: 0.5, sd: Math.sqrt(1 / 12) },
  { name: 'a normal', draw: drawNormal, mean: 0, sd: 1 },
  { name: 'a gamma of shape 4', draw: (random: Random) => drawGamma(random, 4), mean: 4, sd: 2 },
  { name: 'a gamma of shape 0.5', draw: (random: Random) => drawGamma(random, 0.5), mean: 0.5, sd: Math.sqrt(0.5) },
  { name: 'a beta of 0.6 and 1.4', draw: (random: Random) => drawBeta(random, 0.6, 1.4), mean: 0.3, sd: Math.sqrt(0.21 / 3) },
  { name: 'days until a chance of 0.02', draw: (random: Random) => drawDaysUntil(random, 0.02), mean: 50, sd: Math.sqrt(0.98) / 0.02 },
])('$name', ({ draw, mean: expected, sd }) => {
  it('has the mean and the spread of its closed form', () => {
    const drawn = sample(draw)
    expect(Math.abs(mean(drawn) - expected)).toBeLessThan((4 * sd) / Math.sqrt(COUNT))
    expect(standardDeviation(drawn) / sd).toBeGreaterThan(0.96)
    expect(standardDeviation(drawn) / sd).toBeLessThan(1.04)
  })
})

describe('a stream', () => {
  it('is the same for the same seed and name, another for another of either', () => {
    const first = (seed: number, name: string): number[] => {
      const random = randomOf(seed, name)
      return [random(), random(), random()]
    }
    expect(first(1, 'a')).toEqual(first(1, 'a'))
    expect(first(2, 'a')).not.toEqual(first(1, 'a'))
    expect(first(1, 'b')).not.toEqual(first(1, 'a'))
    expect(first(1 + 2 ** 32, 'a')).not.toEqual(first(1, 'a'))
  })

  it('of neighbouring seeds has nothing to do with each other', () => {
    const one = sample((random) => random(), 7)
    const next = sample((random) => random(), 8)
    const together = mean(one.map((value, index) => (value - 0.5) * ((next[index] as number) - 0.5))) * 12
    expect(Math.abs(together)).toBeLessThan(4 / Math.sqrt(COUNT))
  })
})
