import type { Kind } from '../../catalog/kinds.ts'
import type { Beta } from './learned.ts'

/** What a product's reports say of one window: how much likelier they are if it took part than if it did not. */
export interface WindowEvidence {
  productId: string
  kind: Kind
  storeId: string
  saleTimeId: string
  /** First day; with store and sale time it names the window. */
  first: number
  ratio: number
  open: boolean
}

/** Two levels (design rule 4): the store runs it, the product takes part given that it runs. */
export interface SaleTimesLearned {
  /** By store, then sale time. */
  stores: Map<string, Map<string, Beta>>
  kinds: Map<string, Beta>
  products: Map<string, Beta>
  /** Chance that the store runs a window that is open today, by `store sale-time`. */
  running: Map<string, number>
}

/** Fallback means, each weighing as much as two windows (design rule 4). */
const RUNS_MEAN = 0.3
const PART_MEAN = 0.15
const WEIGHT = 2
/** Where windows tell little the rounds creep: after a hundred the last moves a mean by less than a thousandth. */
const ROUNDS = 120

/** A window with what each product tells of it: the product's place among all, and the ratio. A region has millions of them. */
interface Window {
  name: string
  storeId: string
  saleTimeId: string
  products: number[]
  ratios: number[]
  open: boolean
  runs: number
}

/** By likelihood over every window inside the record, silent ones included: expectation and maximisation. Evidence is gone through once. */
export function learnSaleTimes(evidence: Iterable<WindowEvidence>): SaleTimesLearned {
  const { windows, products } = gathered(evidence)
  let parts = products.map((of): Count => ({ ...of, yes: PART_MEAN * WEIGHT, all: WEIGHT, told: 0 }))
  let runs = new Map<string, Tally>()
  let means = { runs: RUNS_MEAN, part: new Map<string, number>() }
  for (let round = 0; round < ROUNDS; round += 1) {
    const tallies = new Map<string, Tally>()
    const counts = products.map((of): Count => ({ ...of, yes: 0, all: 0, told: 0 }))
    for (const window of windows) weigh(window, meanOf(runs.get(window.name), means.runs), parts, tallies, counts)
    means = pooledMeans(tallies, counts)
    runs = tallies
    parts = counts.map(({ id, kind, yes, all, told }) => {
      const mean = means.part.get(kind) ?? PART_MEAN
      return { id, kind, yes: yes + WEIGHT * mean, all: all + WEIGHT, told }
    })
  }
  return learned(windows, runs, means, parts)
}

/** One window of a round: whether its store ran it, and which products took part. */
function weigh(window: Window, chance: number, parts: readonly Count[], tallies: Map<string, Tally>, counts: readonly Count[]): void {
  const { name, products, ratios } = window
  const takes = (index: number): number => {
    const own = parts[products[index] as number] as Count
    return own.yes / own.all
  }
  let odds = Math.log(chance / (1 - chance))
  for (let index = 0; index < ratios.length; index += 1) odds += Math.log(1 + takes(index) * ((ratios[index] as number) - 1))
  window.runs = 1 / (1 + Math.exp(-odds))
  const tally = tallies.get(name) ?? { yes: 0, all: 0, told: 0 }
  const told = tally.told + toldOf(window.runs, chance)
  tallies.set(name, { yes: tally.yes + window.runs, all: tally.all + 1, told })
  for (let index = 0; index < ratios.length; index += 1) {
    const ratio = ratios[index] as number
    const part = takes(index)
    const count = counts[products[index] as number] as Count
    const took = (part * ratio) / (1 + part * (ratio - 1))
    count.yes += window.runs * took
    count.all += window.runs
    count.told += window.runs * toldOf(took, part)
  }
}

interface Tally {
  yes: number
  all: number
  /** How many trials' worth was told: one that nobody looked at tells nothing. */
  told: number
}

/** Share of one trial that its evidence settles: what it takes from the doubt there was. */
const toldOf = (after: number, before: number): number => Math.max(0, 1 - (after * (1 - after)) / (before * (1 - before)))

/** A mean that rests on so many trials' worth of evidence. */
const betaOf = (mean: number, told: number): Beta => [mean * (WEIGHT + told), (1 - mean) * (WEIGHT + told)]
interface Product {
  id: string
  kind: string
}
type Count = Product & Tally

const meanOf = (tally: Tally | undefined, pooled: number): number => (tally ? (tally.yes + WEIGHT * pooled) / (tally.all + WEIGHT) : pooled)

function gathered(evidence: Iterable<WindowEvidence>): { windows: Window[]; products: Product[] } {
  const windows = new Map<string, Window>()
  const places = new Map<string, number>()
  const products: Product[] = []
  for (const { productId, kind, storeId, saleTimeId, first, ratio, open } of evidence) {
    const key = `${storeId} ${saleTimeId} ${first}`
    const empty = { name: `${storeId} ${saleTimeId}`, storeId, saleTimeId, products: [], ratios: [], open, runs: RUNS_MEAN }
    const window: Window = windows.get(key) ?? empty
    const place = places.get(productId) ?? products.push({ id: productId, kind }) - 1
    places.set(productId, place)
    window.products.push(place)
    window.ratios.push(ratio)
    windows.set(key, window)
  }
  return { windows: [...windows.values()], products }
}

function pooledMeans(tallies: ReadonlyMap<string, Tally>, counts: readonly Count[]): { runs: number; part: Map<string, number> } {
  const all = { yes: RUNS_MEAN * WEIGHT, all: WEIGHT, told: 0 }
  for (const { yes, all: many } of tallies.values()) {
    all.yes += yes
    all.all += many
  }
  const kinds = new Map<string, Tally>()
  for (const { kind, yes, all: many } of counts) {
    const known = kinds.get(kind) ?? { yes: PART_MEAN * WEIGHT, all: WEIGHT, told: 0 }
    kinds.set(kind, { yes: known.yes + yes, all: known.all + many, told: 0 })
  }
  return { runs: all.yes / all.all, part: new Map([...kinds].map(([kind, { yes, all: many }]) => [kind, yes / many])) }
}

function learned(
  windows: readonly Window[],
  runs: ReadonlyMap<string, Tally>,
  means: { runs: number; part: Map<string, number> },
  parts: readonly Count[],
): SaleTimesLearned {
  const stores = new Map<string, Map<string, Beta>>()
  const running = new Map<string, number>()
  for (const { name, storeId, saleTimeId, open, runs: chance } of windows) {
    const tally = runs.get(name) as Tally
    const store = stores.get(storeId) ?? new Map<string, Beta>()
    store.set(saleTimeId, betaOf(meanOf(tally, means.runs), tally.told))
    stores.set(storeId, store)
    if (open) running.set(name, chance)
  }
  return {
    stores,
    running,
    kinds: new Map([...means.part].map(([kind, mean]) => [kind, betaOf(mean, 0)])),
    products: new Map(parts.map(({ id, yes, all, told }) => [id, betaOf(yes / all, told)])),
  }
}
