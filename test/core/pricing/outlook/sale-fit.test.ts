import { describe, expect, it } from 'vitest'
import { axisMoments, fitKind, likelihoodsOf, posterior, standIns, type ProductSteps } from '../../../../core/pricing/outlook/sale-fit.ts'
import { GRID_SIZE, gridPoint } from '../../../../core/pricing/outlook/sale-grid.ts'
import { saleSteps } from '../../../../core/pricing/outlook/sale-steps.ts'
import type { ReportDay } from '../../../../core/pricing/outlook/timeline.ts'
import { reportsOf } from './a-sale-process.ts'

const PRODUCTS = 200
const DAYS = 730

const records = (ratePerYear: number, regularReportsPerYear: number, reportOnSaleDay: number): ReportDay[][] =>
  Array.from({ length: PRODUCTS }, (_, index) =>
    reportsOf({ ratePerYear, saleDays: 7, days: DAYS, regularReportsPerYear, reportOnSaleDay }, 5, `${ratePerYear} ${index}`),
  )

/** Spells seen over the days known: a report is good for the month behind it. */
function countedRate(all: readonly ReportDay[][]): number {
  let spells = 0
  let days = 0
  for (const reports of all) {
    let last = -100
    reports.forEach(({ day, onSale }, index) => {
      if (onSale && day - last > 7) spells += 1
      if (onSale) last = day
      days += Math.min(30, (reports[index + 1]?.day ?? DAYS) - day)
    })
  }
  return spells / (days / 365)
}

function likelihoods(all: readonly ReportDay[][]): ReturnType<typeof likelihoodsOf> {
  const products = all.flatMap((reports, index): ProductSteps[] => {
    const steps = saleSteps(reports, { windows: [], unwatched: [] }, DAYS - 1)
    return steps ? [{ productId: `p${index}`, stores: [{ storeId: 's', steps }] }] : []
  })
  return likelihoodsOf(products, () => () => 0)
}

/** Sales a year, on average over products and what is believed of each. */
function modelRate(all: readonly ReportDay[][]): { rate: number; error: number } {
  const products = likelihoods(all)
  const kind = fitKind(products)
  const rates = products.map((product) => posterior(product, kind).reduce((sum, weight, at) => sum + weight * gridPoint(at).ratePerYear, 0))
  const rate = rates.reduce((a, b) => a + b, 0) / rates.length
  return { rate, error: rate * kind.rate.error }
}

/**
 * The bias table: sales a year as counted from reports that come because there is a sale, and by the two-state model. Own generator: 200
 * products over two years, sales of 7 days. The model's four stages are not a fixed length, so that it is held to within a fifth besides
 * two standard errors; where hardly a sale is seen (12 reports a year, 5 % a day) to within a third, which is what is left of the record.
 */
describe('how often there is a sale', () => {
  it.each([
    { truth: 1, shelf: 2, onSale: 0.3, within: 0.2 },
    { truth: 3, shelf: 2, onSale: 0.3, within: 0.2 },
    { truth: 6, shelf: 2, onSale: 0.3, within: 0.2 },
    { truth: 1, shelf: 52, onSale: 0.3, within: 0.2 },
    { truth: 3, shelf: 52, onSale: 0.3, within: 0.2 },
    { truth: 3, shelf: 12, onSale: 0.05, within: 0.33 },
  ])('$truth a year, shelf seen $shelf times a year, sales $onSale a day: the model finds it', ({ truth, shelf, onSale, within }) => {
    const { rate, error } = modelRate(records(truth, shelf, onSale))
    expect(error).toBeLessThan(0.1 * truth)
    expect(Math.abs(rate - truth)).toBeLessThan(within * truth + 2 * error)
  })

  it('counting reads rare sales far too often where they bring the reports, and frequent ones too seldom where few report', () => {
    expect(countedRate(records(1, 2, 0.3))).toBeGreaterThan(2.5)
    expect(countedRate(records(3, 2, 0.3))).toBeGreaterThan(1.5 * 3)
    expect(countedRate(records(3, 12, 0.05))).toBeLessThan(0.6 * 3)
    expect(countedRate(records(6, 12, 0.05))).toBeLessThan(0.5 * 6)
  })
})

describe('what is believed of a product', () => {
  const [product] = likelihoods([
    reportsOf({ ratePerYear: 4, saleDays: 7, days: DAYS, regularReportsPerYear: 12, reportOnSaleDay: 0.3 }, 9, 'one'),
  ])
  if (product === undefined) throw new Error('nothing was reported')
  const kind = fitKind([product])

  it('adds up to 1', () => {
    const belief = posterior(product, kind)
    expect(belief.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12)
    expect(belief.length).toBe(GRID_SIZE)
  })

  it('is the kind’s where nothing was reported', () => {
    const nothing = { ...product, likelihood: new Float64Array(GRID_SIZE).fill(1) }
    const { rate } = axisMoments(posterior(nothing, kind), product.regularChance)
    expect(Math.abs(rate.mean - kind.rate.mean)).toBeLessThan(0.15)
  })

  it('is stood for by places that spread as it does', () => {
    const belief = posterior(product, kind)
    const mean = belief.reduce((sum, weight, at) => sum + weight * gridPoint(at).ratePerYear, 0)
    const stood = standIns(belief, 400).map((at) => gridPoint(at).ratePerYear)
    expect(stood.reduce((a, b) => a + b, 0) / stood.length / mean).toBeCloseTo(1, 1)
  })
})
