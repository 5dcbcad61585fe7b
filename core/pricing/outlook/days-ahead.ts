import type { KindLearned, Learned, ProductLearned } from './learned.ts'
import type { PairNow, WindowAhead } from './pair-now.ts'
import { gridPoint } from './sale-grid.ts'
import type { StoppingDay } from './stopping.ts'

interface KnownLine {
  pairs: readonly PairNow[]
  kind: KindLearned
  product: ProductLearned
  costOf: (storeId: string, unitMinor: number) => number
  regularMinor: number
}

/** Parts into which depths are cut: a dearer cut moves no price to buy at by half a per cent. */
const DEPTH_CUTS = 9

/** Depths are kept between these: a sale of less is a rounded tag, one of more is doubted (design rule 8). */
export const LEAST_DEPTH = 0.02
export const MOST_DEPTH = 0.85
export const clampDepth = (depth: number): number => Math.min(MOST_DEPTH, Math.max(LEAST_DEPTH, depth))

export const meanOf = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length

/** What the coming days may bring, tomorrow first: the least offer over the stores, on average over what is believed. */
export function daysAhead(learned: Learned, line: KnownLine, horizon: number): StoppingDay[] {
  const atoms = offerAtoms(line)
  const driftLog = dailyDriftLog(line.kind)
  return Array.from({ length: horizon }, (_, index): StoppingDay => {
    const growth = Math.exp(driftLog * (index + 1))
    const chances = line.pairs.map((pair) => chanceOn(learned, line, pair, index + 1))
    return leastOffer(atoms, chances, line.regularMinor * growth, growth)
  })
}

const dailyDriftLog = ({ changes }: KindLearned): number => (changes.shape / changes.days) * meanOf(changes.sizesLog)

/** Chance that a sale begins to be seen at a store on a day ahead, given none was seen before at any of the line's stores. */
function chanceOn(learned: Learned, { product, pairs, kind }: KnownLine, pair: PairNow, day: number): number {
  if (pair.sale && day === 1) return pair.sale.lastDay === null ? 0.7 : pair.sale.lastDay >= 1 ? 1 : 0
  const rates = product.points.length > 0 ? product.points.map((point) => gridPoint(point).ratePerYear) : [Math.exp(kind.logRate.mean)]
  const survival = (days: number): number => meanOf(rates.map((rate) => Math.exp((-rate * days * pairs.length) / 365)))
  const ordinary = 1 - (survival(day) / survival(day - 1)) ** (1 / pairs.length)
  const windows = pair.windows.filter(({ first }) => Math.max(1, first) === day)
  return 1 - windows.reduce((none, window) => none * (1 - windowChance(learned, product, pair, window)), 1 - ordinary)
}

function windowChance(learned: Learned, product: ProductLearned, pair: PairNow, window: WindowAhead): number {
  const runs = window.first <= 0 ? learned.running[`${pair.storeId} ${window.saleTimeId}`] : undefined
  const [runAlpha, runBeta] = runsOf(learned, pair.storeId, window.saleTimeId)
  const [partAlpha, partBeta] = product.part
  return ((runs ?? runAlpha / (runAlpha + runBeta)) * partAlpha) / (partAlpha + partBeta)
}

/** Where nothing was learnt of a store and sale time: mean 0.3, weight 2 (design rule 4). */
export const runsOf = (learned: Learned, storeId: string, saleTimeId: string): readonly [number, number] =>
  learned.stores[storeId]?.[saleTimeId] ?? [0.6, 1.4]

interface Atom {
  pair: number
  price: number
  weight: number
}

/** Prices that a sale may have at each store, least first. */
function offerAtoms({ pairs, kind, product, costOf }: KnownLine): Atom[] {
  const { residuals } = kind.depth
  const cut = Array.from({ length: DEPTH_CUTS }, (_, index) => residuals[Math.floor(((index + 0.5) / DEPTH_CUTS) * residuals.length)] ?? 0)
  return pairs
    .flatMap(({ storeId, regularMinor }, pair) =>
      cut.map((residual) => ({
        pair,
        price: costOf(storeId, regularMinor * (1 - clampDepth(product.depth.mean + residual))),
        weight: 1 / DEPTH_CUTS,
      })),
    )
    .sort((a, b) => a.price - b.price)
}

/** The least of what several stores offer that day, each with its own chance: prices in rising order, each the least where no lower one is offered. */
function leastOffer(atoms: readonly Atom[], chances: readonly number[], regular: number, growth: number): StoppingDay {
  const left = chances.map(() => 1)
  let none = 1
  const offers: Array<{ price: number; weight: number }> = []
  for (const { pair, price, weight } of atoms) {
    const here = left[pair] as number
    const gone = (chances[pair] as number) * weight
    if (gone <= 0) continue
    const after = Math.max(0, here - gone)
    const noneAfter = here > 0 ? (none * after) / here : 0
    if (none > noneAfter) offers.push({ price: Math.min(price * growth, regular), weight: none - noneAfter })
    none = noneAfter
    left[pair] = after
  }
  const chance = 1 - none
  return { regular, chance, offers: offers.map(({ price, weight }) => ({ price, weight: weight / chance })) }
}
