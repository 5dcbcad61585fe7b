import { cumulativeStdNormalProbability, probit, quantileSorted, sampleStandardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { normal, poisson, randomOf } from '../random.ts'
import { ratioByMarket, upper95 } from './by-market.ts'
import { uniformDistance } from './kolmogorov-smirnov.ts'
import { isCovered, pinballLoss, quantileLoss, quantileOf } from './quantile.ts'
import { reliabilityBins, reliabilityGaps } from './reliability.ts'
import { randomisedTransform } from './transform.ts'

const grid = (n: number): number[] => Array.from({ length: n }, (_, index) => (index + 0.5) / n)

describe('the distance from uniform', () => {
  it('is half a step for the middles of equal parts', () => {
    expect(uniformDistance(grid(200))).toBeCloseTo(1 / 400, 12)
  })

  it('is a quarter for squares, whose distribution is the root', () => {
    expect(uniformDistance(grid(4000).map((u) => u * u))).toBeCloseTo(0.25, 3)
  })

  it('is 2 Φ(1/4) − 1 for a normal forecast half a deviation too low', () => {
    const places = grid(4000).map((u) => cumulativeStdNormalProbability(probit(u) + 0.5))
    expect(uniformDistance(places)).toBeCloseTo(2 * cumulativeStdNormalProbability(0.25) - 1, 2)
  })

  it('is not a number for nothing', () => {
    expect(uniformDistance([])).toBeNaN()
  })
})

describe('the randomised transform', () => {
  it('is the chance itself where every draw is the outcome', () => {
    expect(randomisedTransform([7, 7, 7], 7, 0.37)).toBeCloseTo(0.37, 12)
  })

  it('counts draws below, and takes amounts within half a minor unit as the same', () => {
    expect(randomisedTransform([1, 2, 2.4, 3], 2, 0)).toBe(0.2)
    expect(randomisedTransform([1, 2, 2.4, 3], 2, 1)).toBeCloseTo(0.8, 12)
  })

  it('is uniform where outcome and draws are of one lumpy distribution, and is not where the outcome leans', () => {
    const random = randomOf('transform')
    const place = (mean: number): number =>
      randomisedTransform(
        Array.from({ length: 50 }, () => poisson(random, 1.5)),
        poisson(random, mean),
        random(),
      )
    expect(uniformDistance(Array.from({ length: 4000 }, () => place(1.5)))).toBeLessThan(1.63 / Math.sqrt(4000))
    expect(uniformDistance(Array.from({ length: 4000 }, () => place(2)))).toBeGreaterThan(0.1)
  })
})

describe('quantiles and their loss', () => {
  it.each([0.1, 0.25, 0.5, 0.9])('take the place %s where a general library takes it without interpolating', (share) => {
    const random = randomOf('quantile')
    const sorted = Float64Array.from({ length: 41 }, () => normal(random)).sort()
    expect(quantileOf(sorted, share)).toBe(quantileSorted([...sorted], share))
  })

  it('cover four fifths of outcomes of their own distribution', () => {
    const draws = Float64Array.from(grid(400).map(probit))
    const covered = grid(5000).filter((u) =>
      isCovered(
        draws.map((x) => 1e6 * x),
        1e6 * probit(u),
      ),
    )
    expect(covered.length / 5000).toBeCloseTo(0.8, 2)
  })

  it('come to τ (1 − τ) / 2 a unit for a uniform outcome and its own quantile', () => {
    const outcomes = grid(20_000)
    const mean = outcomes.reduce((sum, outcome) => sum + quantileLoss(0.3, outcome, 0.3), 0) / outcomes.length
    expect(mean).toBeCloseTo((0.3 * 0.7) / 2, 4)
  })

  it('are least for the forecast that is the truth', () => {
    const outcomes = grid(999).map(probit)
    const loss = (shift: number, scale: number): number => {
      const draws = Float64Array.from(grid(500), (u) => shift + scale * probit(u))
      return outcomes.reduce((sum, outcome) => sum + pinballLoss(draws, outcome), 0)
    }
    for (const [shift, scale] of [[0.3, 1], [-0.3, 1], [0, 1.5], [0, 0.5]] as const) expect(loss(shift, scale)).toBeGreaterThan(loss(0, 1)) // prettier-ignore
  })
})

describe('reliability', () => {
  const told = (lean: number) => {
    const random = randomOf('reliability')
    return Array.from({ length: 20_000 }, () => {
      const chance = random()
      return { chance, came: random() < Math.min(1, chance + lean) }
    })
  }

  it('finds no more than chance in chances that are true', () => {
    const { mean, most } = reliabilityGaps(reliabilityBins(told(0)))
    // Of a bin of 500 the standard error is at most 0.0224; its mean absolute value is 0.8 of that.
    expect(mean).toBeLessThan(0.02)
    expect(most).toBeLessThan(4 * 0.0224)
  })

  it('finds a lean of 0.1', () => {
    expect(reliabilityGaps(reliabilityBins(told(0.1))).mean).toBeCloseTo(0.1 - 0.005, 2)
  })

  it('puts what is left over into the last bin', () => {
    expect(reliabilityBins(told(0).slice(0, 1203)).map(({ cases }) => cases)).toEqual([500, 703])
  })
})

describe('a ratio by market', () => {
  it('has the standard error of a mean where all markets are as large', () => {
    const random = randomOf('ratio')
    const values = Array.from({ length: 40 }, () => normal(random))
    const { value, standardError } = ratioByMarket(values.map((above) => ({ above, below: 1, cases: 1 })))
    expect(value).toBeCloseTo(values.reduce((sum, each) => sum + each, 0) / 40, 12)
    expect(standardError).toBeCloseTo(sampleStandardDeviation(values) / Math.sqrt(40), 12)
  })

  it('takes cases of one market as one: ten times the same cases are no surer', () => {
    const random = randomOf('clusters')
    const values = Array.from({ length: 40 }, () => normal(random))
    const once = ratioByMarket(values.map((above) => ({ above, below: 1, cases: 1 })))
    const tenfold = ratioByMarket(values.map((above) => ({ above: 10 * above, below: 10, cases: 10 })))
    expect(tenfold.standardError).toBeCloseTo(once.standardError, 12)
  })

  it('has an upper bound 1.96 standard errors up', () => {
    expect(upper95({ value: 1, standardError: 0.5, markets: 2, cases: 2 })).toBeCloseTo(1 + 0.5 * probit(0.975), 2)
  })
})
