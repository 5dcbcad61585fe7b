import { quantilesOf, steadyShelf } from './regular-changes.ts'
import type { DepthLearned } from './learned.ts'
import { isSame, type ReportDay } from './timeline.ts'

/** Sale reports at one price with no longer gap are one sale (ten members who report one weekend sale). */
const SAME_SALE_DAYS = 14
/** A shelf price further away than this says little of the regular price at the time of a sale. */
const FAR_DAYS = 365

/** Depth of a sale: 1 − price ÷ regular price then, and how much it weighs. */
export interface SaleDepth {
  depth: number
  weight: number
}

/**
 * Depths of a store's sales against the shelf price before and behind: where both are one it counts whole, where they differ or one is
 * missing the nearer one stands for it and counts half. A sale without a shelf price near tells nothing.
 */
export function saleDepths(reports: readonly ReportDay[]): SaleDepth[] {
  const shelf = steadyShelf(reports)
  const depths: SaleDepth[] = []
  let last: ReportDay | undefined
  for (const report of reports) {
    if (!report.onSale) continue
    const again = last && isSame(last.saleMinor, report.saleMinor) && report.day - last.day <= SAME_SALE_DAYS
    last = report
    if (again) continue
    const before = shelf.findLast(({ day }) => day <= report.day)
    const after = shelf.find(({ day }) => day > report.day)
    const near = [before, after]
      .filter((at) => at !== undefined)
      .sort((a, b) => Math.abs(a.day - report.day) - Math.abs(b.day - report.day))[0]
    if (near === undefined || Math.abs(near.day - report.day) > FAR_DAYS) continue
    const sure = before !== undefined && after !== undefined && isSame(before.priceMinor, after.priceMinor)
    const depth = 1 - report.saleMinor / near.priceMinor
    if (depth > 0 && depth < 0.85) depths.push({ depth, weight: sure ? 1 : 0.5 })
  }
  return depths
}

/** Before anything is known, from memory of flyers: a fifth off, products differing by 5 points, sales of a product by 7. */
const FIRST: DepthLearned = { mean: 0.2, meanError: 0.05, betweenSd: 0.05, residuals: [-0.11, -0.07, -0.03, 0, 0.03, 0.07, 0.11] }
const FIRST_WITHIN = 0.07
/** Belief in the first guesses, in sales and in products. */
const FIRST_WEIGHT = 2
const KEPT_RESIDUALS = 40

export interface ProductDepth {
  mean: number
  sd: number
}

/**
 * Depth of a kind's sales in two levels: what products differ by, and what sales of a product differ by (design rule 5). Moments of a
 * one-way layout with random effects; each product's mean is shrunk to the kind's by its own number of sales.
 */
export function learnDepths(byProduct: ReadonlyMap<string, readonly SaleDepth[]>): {
  kind: DepthLearned
  products: Map<string, ProductDepth>
} {
  const groups = [...byProduct].map(([productId, sales]) => ({ productId, ...groupOf(sales), sales }))
  const seen = groups.filter(({ weight }) => weight > 0)
  const within = withinVariance(seen)
  const { mean, between, meanError } = levels(seen, within)
  const products = new Map<string, ProductDepth>()
  const residuals: Array<{ value: number; weight: number }> = []
  for (const { productId, weight, mean: own, sales } of groups) {
    const trust = weight > 0 ? between / (between + within / weight) : 0
    const shrunk = weight > 0 ? trust * own + (1 - trust) * mean : mean
    products.set(productId, { mean: shrunk, sd: Math.sqrt(between * (1 - trust)) })
    // Around its own mean a sample is too narrow by what the mean took of it.
    const widen = sales.length > 1 ? Math.sqrt(sales.length / (sales.length - 1)) : 0
    if (widen > 0) for (const sale of sales) residuals.push({ value: (sale.depth - own) * widen, weight: sale.weight })
  }
  return { kind: { mean, meanError, betweenSd: Math.sqrt(between), residuals: residualsOf(residuals, Math.sqrt(within)) }, products }
}

interface Group {
  weight: number
  mean: number
  squares: number
  count: number
}

function groupOf(sales: readonly SaleDepth[]): Group {
  const weight = sales.reduce((sum, sale) => sum + sale.weight, 0)
  const mean = weight > 0 ? sales.reduce((sum, sale) => sum + sale.weight * sale.depth, 0) / weight : 0
  return { weight, mean, squares: sales.reduce((sum, sale) => sum + sale.weight * (sale.depth - mean) ** 2, 0), count: sales.length }
}

function withinVariance(groups: readonly Group[]): number {
  let squares = FIRST_WEIGHT * FIRST_WITHIN ** 2
  let freedom = FIRST_WEIGHT
  for (const { squares: own, weight, count } of groups) {
    squares += own
    freedom += weight * (1 - 1 / count)
  }
  return squares / freedom
}

/** Mean over products and what they differ by, the one weighing by the other: a dozen rounds settle both. */
function levels(groups: readonly Group[], within: number): { mean: number; between: number; meanError: number } {
  let mean = FIRST.mean
  let between = FIRST.betweenSd ** 2
  let precision = 0
  for (let round = 0; round < 12; round += 1) {
    const first = 1 / FIRST.meanError ** 2 / 4
    precision = first
    let sum = first * FIRST.mean
    for (const group of groups) {
      const weight = 1 / (between + within / group.weight)
      precision += weight
      sum += weight * group.mean
    }
    mean = sum / precision
    let squares = FIRST_WEIGHT * FIRST.betweenSd ** 2
    for (const group of groups) {
      const trust = between / (between + within / group.weight)
      squares += (trust * (group.mean - mean)) ** 2 + between * (1 - trust)
    }
    between = squares / (groups.length + FIRST_WEIGHT)
  }
  return { mean, between, meanError: 1 / Math.sqrt(precision) }
}

function residualsOf(residuals: Array<{ value: number; weight: number }>, withinSd: number): number[] {
  const scale = withinSd / FIRST_WITHIN
  const guessed = FIRST.residuals.map((value) => ({ value: value * scale, weight: 0.5 }))
  const all = [...residuals, ...guessed].sort((a, b) => a.value - b.value)
  return quantilesOf(all, KEPT_RESIDUALS)
}
