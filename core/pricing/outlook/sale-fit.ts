import { echoChance } from './echoes.ts'
import { gridTables } from './gap-tables.ts'
import { GRID_LENGTHS, GRID_RATES, GRID_SILENCES, GRID_SIZE } from './sale-grid.ts'
import { filterSales, partsOf, reportingLikelihood, type TakesPart } from './sale-filter.ts'
import type { SaleSteps } from './sale-steps.ts'

/** A product's record at all its stores; start chance, reporting and length belong to the product (design rule 3). */
export interface ProductSteps {
  productId: string
  stores: ReadonlyArray<{ storeId: string; steps: SaleSteps }>
}

/** Mean and spread of a parameter's logarithm over the products of a kind, and the mean's standard error. */
export interface Spread {
  mean: number
  sd: number
  error: number
}

/** What a kind's products have in common: sales a year, how many times likelier a report is on a sale day, days of a sale. */
export interface KindPrior {
  rate: Spread
  report: Spread
  length: Spread
}

/** Likelihood of a product's record at every place of the grid, the greatest being 1, and the chance of a report on a regular day. */
export interface ProductLikelihood {
  productId: string
  regularChance: number
  likelihood: Float64Array
}

/** Before anything is known, from memory of flyers: three sales a year of a week, eight times as often reported as a regular price. Weak: one product outweighs it. */
const FIRST: KindPrior = {
  rate: { mean: Math.log(3), sd: 0.8, error: 0.8 },
  report: { mean: Math.log(8), sd: 1, error: 1 },
  length: { mean: Math.log(8), sd: 0.4, error: 0.4 },
}
/** So many products' worth of belief in the spread of `FIRST`, and of its square in the mean. */
const SPREAD_WEIGHT = 2
const MEAN_WEIGHT = 0.5
/** Rounds of fitting; the means of a kind stand to three digits after a dozen. */
const ROUNDS = 15
/** A product without report days enough takes this many days' worth of its kind's reporting. */
const REPORT_DAYS = 60

/** Likelihoods of a kind's products, gone through twice. `takesPart` tells the chance that a product takes part in a window at a store; `known` ones are kept. */
export function likelihoodsOf(
  products: Iterable<ProductSteps>,
  takesPart: (productId: string, storeId: string) => TakesPart,
  known: ReadonlyMap<string, ProductLikelihood> = new Map(),
): ProductLikelihood[] {
  const reporting = reportingOf(products)
  const likelihoods: ProductLikelihood[] = []
  for (const { productId, stores } of products) {
    const own = { regularChance: reporting.regularChances[likelihoods.length] as number, echo: reporting.echo }
    likelihoods.push(known.get(productId) ?? likelihoodOf({ productId, stores }, (storeId) => takesPart(productId, storeId), own))
  }
  return likelihoods
}

function likelihoodOf(
  { productId, stores }: ProductSteps,
  takesPart: (storeId: string) => TakesPart,
  reporting: { regularChance: number; echo: number },
): ProductLikelihood {
  const logs = new Float64Array(GRID_SIZE)
  for (const { storeId, steps } of stores) {
    const parts = partsOf(steps, takesPart(storeId))
    for (let place = 0; place < GRID_SIZE; place += 1) {
      const tables = gridTables(place)
      const { logLikelihood } = filterSales(steps, tables, parts)
      logs[place] = (logs[place] as number) + logLikelihood + reportingLikelihood(steps, reporting, tables.silence)
    }
  }
  const most = logs.reduce((a, b) => Math.max(a, b), -Infinity)
  for (const [place, log] of logs.entries()) logs[place] = Math.exp(log - most)
  return { productId, regularChance: reporting.regularChance, likelihood: logs }
}

/** Chance of a report on a regular day of each product, echoes and the days for them left out; and that of an echo. */
function reportingOf(products: Iterable<ProductSteps>): { regularChances: number[]; echo: number } {
  const counts = Array.from(products, ({ stores }) => ({
    reports: sumOf(stores, ({ steps }) => steps.regularDays - steps.echoes.regular),
    days: Math.max(
      0,
      sumOf(stores, ({ steps }) => steps.days - steps.saleDays - steps.echoes.regularDays),
    ),
    echoes: stores.map(({ steps }) => steps.echoes),
  }))
  const pooled = (1 + sumOf(counts, ({ reports }) => reports)) / (100 + sumOf(counts, ({ days }) => days))
  const regularChances = counts.map(({ reports, days }) => (reports + REPORT_DAYS * pooled) / (days + REPORT_DAYS))
  const echo = echoChance(counts.map(({ echoes }, index) => ({ echoes, regularChance: regularChances[index] as number })))
  return { regularChances, echo }
}

const sumOf = <Value>(values: readonly Value[], of: (value: Value) => number): number => values.reduce((sum, value) => sum + of(value), 0)

/** Share of a normal in logarithms around each place of a rising axis: its density times the place's spacing. */
function axisWeights(places: readonly number[], { mean, sd }: Spread): number[] {
  const logs = places.map(Math.log)
  const weights = logs.map((log, index) => {
    const low = index > 0 ? (log + (logs[index - 1] as number)) / 2 : log - ((logs[1] as number) - log) / 2
    const high = index < logs.length - 1 ? (log + (logs[index + 1] as number)) / 2 : log + (log - (logs[index - 1] as number)) / 2
    return Math.max(1e-12, Math.exp(-0.5 * ((log - mean) / sd) ** 2) * Math.abs(high - low))
  })
  const sum = weights.reduce((a, b) => a + b, 0)
  return weights.map((weight) => weight / sum)
}

/** What is believed of a product at every place of the grid, adding up to 1; written over what stood in `belief`. */
export function posterior(
  { likelihood, regularChance }: ProductLikelihood,
  prior: KindPrior,
  belief = new Float64Array(GRID_SIZE),
): Float64Array {
  const rates = axisWeights(GRID_RATES, prior.rate)
  const lengths = axisWeights(GRID_LENGTHS, prior.length)
  const reports = axisWeights(reportRatios(regularChance), prior.report)
  let sum = 0
  let index = 0
  for (const rate of rates)
    for (const report of reports)
      for (const length of lengths) {
        const weight = (likelihood[index] as number) * rate * report * length
        belief[index] = weight
        sum += weight
        index += 1
      }
  for (let place = 0; place < GRID_SIZE; place += 1) belief[place] = (belief[place] as number) / sum
  return belief
}

/** Chance of a report on a sale day ÷ the same on a regular day. What makes a product known makes both more frequent, so that kinds agree on it. */
const reportRatios = (regularChance: number): number[] =>
  GRID_SILENCES.map((silence) => (1 - silence * (1 - regularChance)) / regularChance)

/** What a kind's products have in common, by empirical Bayes: means and spreads that make the products' beliefs and themselves agree. */
export function fitKind(products: readonly ProductLikelihood[], first: KindPrior = FIRST): KindPrior {
  let prior = first
  // One for all products of all rounds: a region has hundreds of thousands.
  const belief = new Float64Array(GRID_SIZE)
  const columns = { rate: columnsFor(products.length), report: columnsFor(products.length), length: columnsFor(products.length) }
  for (let round = 0; round < ROUNDS; round += 1) {
    products.forEach((product, index) => {
      const axes = axisMoments(posterior(product, prior, belief), product.regularChance)
      for (const name of AXES) {
        columns[name].means[index] = axes[name].mean
        columns[name].variances[index] = axes[name].variance
      }
    })
    const of = (name: keyof KindPrior): Spread => refit(columns[name], prior[name], first[name])
    prior = { rate: of('rate'), report: of('report'), length: of('length') }
  }
  return prior
}

const AXES = ['rate', 'report', 'length'] as const satisfies ReadonlyArray<keyof KindPrior>

/** Moments of many products under one parameter, by their place: as objects they would be thrown away each round by the hundred thousand. */
interface MomentColumns {
  means: Float64Array
  variances: Float64Array
}

const columnsFor = (count: number): MomentColumns => ({ means: new Float64Array(count), variances: new Float64Array(count) })

interface Moments {
  mean: number
  variance: number
}

/** Mean and variance of the logarithm of each parameter under a belief. */
export function axisMoments(belief: Float64Array, regularChance: number): Record<keyof KindPrior, Moments> {
  const rates = new Float64Array(GRID_RATES.length)
  const silences = new Float64Array(GRID_SILENCES.length)
  const lengths = new Float64Array(GRID_LENGTHS.length)
  let index = 0
  for (let rate = 0; rate < rates.length; rate += 1)
    for (let silence = 0; silence < silences.length; silence += 1)
      for (let length = 0; length < lengths.length; length += 1) {
        const weight = belief[index] as number
        rates[rate] = (rates[rate] as number) + weight
        silences[silence] = (silences[silence] as number) + weight
        lengths[length] = (lengths[length] as number) + weight
        index += 1
      }
  return {
    rate: momentsOf(rates, GRID_RATES),
    report: momentsOf(silences, reportRatios(regularChance)),
    length: momentsOf(lengths, GRID_LENGTHS),
  }
}

function momentsOf(weights: Float64Array, places: readonly number[]): Moments {
  let mean = 0
  let square = 0
  weights.forEach((weight, index) => {
    const log = Math.log(places[index] as number)
    mean += weight * log
    square += weight * log * log
  })
  return { mean, variance: Math.max(0, square - mean * mean) }
}

function refit({ means, variances }: MomentColumns, now: Spread, first: Spread): Spread {
  const count = means.length
  const mean = (means.reduce((sum, own) => sum + own, 0) + MEAN_WEIGHT * first.mean) / (count + MEAN_WEIGHT)
  const spread = means.reduce((sum, own, index) => sum + ((own - mean) ** 2 + (variances[index] as number)), 0)
  const sd = Math.sqrt((spread + SPREAD_WEIGHT * (first.sd / 2) ** 2) / (count + SPREAD_WEIGHT))
  // What a product tells of the kind's mean is its own share of the evidence: where its belief is the kind's, nothing.
  const told = variances.reduce((sum, variance) => sum + Math.max(0, 1 - variance / now.sd ** 2), 0)
  return { mean, sd, error: now.sd / Math.sqrt(told + MEAN_WEIGHT) }
}

/** Places of the grid that stand for a belief, each for the same share of it, in rising order: rates are spread as the belief spreads them. */
export function standIns(belief: Float64Array, count: number): number[] {
  const places: number[] = []
  let reached = 0
  belief.forEach((weight, index) => {
    reached += weight
    while (places.length < count && (places.length + 0.5) / count <= reached) places.push(index)
  })
  while (places.length < count) places.push(belief.length - 1)
  return places
}
