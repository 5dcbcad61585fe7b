import type { KindLearned, Learned, ProductLearned } from './learned.ts'
import { STAGES, gridTable } from './gap-tables.ts'
import { statedNow, type PairNow } from './pair-now.ts'
import { gridPoint } from './sale-grid.ts'
import type { StoppingDay } from './stopping.ts'
import { takesPartChance } from './takes-part.ts'

interface KnownLine {
  pairs: readonly PairNow[]
  kind: KindLearned
  product: ProductLearned
  costOf: (storeId: string, unitMinor: number) => number
  regularMinor: number
}

/** Parts into which depths are cut: a finer cut moves no price to buy at by half a per cent. */
const DEPTH_CUTS = 9

/** Depths are kept between these: a sale of less is a rounded tag, one of more is doubted (design rule 8). */
const LEAST_DEPTH = 0.02
const MOST_DEPTH = 0.85
export const clampDepth = (depth: number): number => Math.min(MOST_DEPTH, Math.max(LEAST_DEPTH, depth))

const meanOf = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length

/**
 * What the coming days may bring, tomorrow first: the least offer over the stores, on average over what is believed. For somebody who was there
 * today (`seenToday`) no sale runs that she did not see; the one that she saw she may have today.
 */
export function daysAhead(learned: Learned, line: KnownLine, horizon: number, seenToday: boolean): StoppingDay[] {
  const atoms = offerAtoms(line, false)
  const tomorrow = offerAtoms(line, true)
  const driftLog = dailyDriftLog(line.kind)
  const ordinary = ordinaryChances(line, horizon)
  return Array.from({ length: horizon }, (_, index): StoppingDay => {
    const growth = Math.exp(driftLog * (index + 1))
    const chances = line.pairs.map((pair) => chanceOn(learned, line, pair, index + 1, ordinary[index] as number, seenToday))
    return leastOffer(index === 0 && !seenToday ? tomorrow : atoms, chances, line.regularMinor * growth, growth)
  })
}

const dailyDriftLog = ({ changes }: KindLearned): number => (changes.shape / changes.days) * meanOf(changes.sizesLog)

/** Daily chance that an ordinary sale begins at a store, given that none began before at any of the line's stores: tomorrow first. */
function ordinaryChances({ product, kind, pairs }: KnownLine, horizon: number): number[] {
  const rates = product.points.length > 0 ? product.points.map((point) => gridPoint(point).ratePerYear) : [Math.exp(kind.logRate.mean)]
  const survival = Array.from({ length: horizon + 1 }, (_, days) =>
    meanOf(rates.map((rate) => Math.exp((-rate * days * pairs.length) / 365))),
  )
  return survival.slice(1).map((left, index) => 1 - (left / (survival[index] as number)) ** (1 / pairs.length))
}

function chanceOn(learned: Learned, { product }: KnownLine, pair: PairNow, day: number, ordinary: number, seenToday: boolean): number {
  const windows = pair.coming.filter(({ first }) => first === day)
  const none = windows.reduce(
    (left, { saleTimeId }) => left * (1 - takesPartChance(learned, product, pair.storeId, saleTimeId, false)),
    1 - ordinary,
  )
  return 1 - (day === 1 && !seenToday ? 1 - stillOnSale(pair) : 1) * none
}

/** Chance that a sale of today, reported or not, runs tomorrow. */
function stillOnSale({ sale, believed, open }: PairNow): number {
  const stated = statedNow(sale)
  if (stated === 'runs') return (sale?.lastDay ?? 0) >= 1 ? 1 : 0
  if (stated === 'over') return 0
  const windowGoesOn = open.some(({ last }) => last >= 1)
  return meanOf(
    [...believed].map(([point, { state, inWindow }]) => {
      const table = gridTable(point)
      let stays = windowGoesOn ? inWindow : 0
      for (let from = 1; from <= STAGES; from += 1) stays += (state[from] as number) * (1 - (table[from * (STAGES + 1)] as number))
      return stays
    }),
  )
}

interface Atom {
  pair: number
  price: number
  weight: number
}

/** Prices that a sale may have at each store, least first; tomorrow a sale that was reported has its own. */
function offerAtoms({ pairs, kind, product, costOf }: KnownLine, tomorrow: boolean): Atom[] {
  const { residuals } = kind.depth
  const cut = Array.from({ length: DEPTH_CUTS }, (_, index) => residuals[Math.floor(((index + 0.5) / DEPTH_CUTS) * residuals.length)] ?? 0)
  return pairs
    .flatMap(({ storeId, regularMinor, sale }, pair): Atom[] =>
      tomorrow && sale
        ? [{ pair, price: costOf(storeId, sale.priceMinor), weight: 1 }]
        : cut.map((residual) => ({
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
    if (gone <= 0 || here <= 0) continue
    const after = Math.max(0, here - gone)
    const noneAfter = (none * after) / here
    if (none > noneAfter) offers.push({ price: Math.min(price * growth, regular), weight: none - noneAfter })
    none = noneAfter
    left[pair] = after
  }
  const chance = 1 - none
  return { regular, chance, offers: offers.map(({ price, weight }) => ({ price, weight: weight / chance })) }
}
