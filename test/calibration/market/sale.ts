import { logistic, logitOf, normal, poisson, type Random } from '../random.ts'
import type { KindTruth, ProductTruth } from './parameters.ts'

/** Discounts below 3 % are no sale to anybody; beyond 65 % goods are being cleared. */
const LEAST_DEPTH = 0.03
const MOST_DEPTH = 0.65
const STEP = 0.05

/** Depth of a discount for a standard normal draw: what differs between two sales of one product. `factor` deepens sale times. */
export function depthFor({ depth, kind }: ProductTruth, factor: number, normalDraw: number): number {
  const drawn = logistic(logitOf(depth) + kind.depthSpread * normalDraw) * factor
  const stepped = kind.depthInSteps ? Math.max(STEP, Math.round(drawn / STEP) * STEP) : drawn
  return Math.min(MOST_DEPTH, Math.max(LEAST_DEPTH, stepped))
}

/** Days that an ordinary sale lasts, at least 1. */
export function drawLength({ lengthFamily, meanLengthDays: mean }: KindTruth, random: Random): number {
  const days = {
    stages: () => fourStages(random, mean),
    geometric: () => 1 + Math.floor(Math.log(1 - random()) / Math.log(1 - 1 / mean)),
    fixed: () => mean,
    short_or_long: () => (random() < 0.75 ? mean * 0.5 : mean * 2.5),
    even: () => 1 + (2 * mean - 1) * random(),
  }[lengthFamily]()
  return Math.max(1, Math.round(days))
}

/** Days until four stages are over, a Poisson number of which ends each day. */
function fourStages(random: Random, mean: number): number {
  let days = 0
  for (let ended = 0; ended < 4; days += 1) ended += poisson(random, 4 / mean)
  return days
}

/** A price as its tag prints it: whole minor units, or the nearest that ends in 99. */
export const tagPrice = (minor: number, charm: boolean): number =>
  charm && minor > 300 ? Math.round((minor + 1) / 100) * 100 - 1 : Math.max(1, Math.round(minor))

export const drawDepth = (product: ProductTruth, factor: number, random: Random): number => depthFor(product, factor, normal(random))
