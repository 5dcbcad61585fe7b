import type { Kind } from '../../catalog/kinds.ts'
import type { CivilDate } from '../../dates.ts'
import type { ReporterVotes } from '../trust.ts'
import type { Unwatched } from './unwatched.ts'

/** Parameters of a beta distribution. */
export type Beta = readonly [alpha: number, beta: number]

/** How regular prices of a kind change. */
export interface ChangesLearned {
  /** Daily chance of a change: gamma with this shape, over so many days of exposure. */
  shape: number
  days: number
  /** Sizes seen, as logarithms of new ÷ old, least first. */
  sizesLog: number[]
  /** Standard error of their mean. */
  meanError: number
  /** Share of the regular prices printed on sale tags that were none. */
  falsePrinted: number
}

/** How deep sales of a kind are: 1 − price ÷ regular price then. */
export interface DepthLearned {
  mean: number
  /** Standard error of the kind's mean, and how far products differ from it. */
  meanError: number
  betweenSd: number
  /** What single sales differ by from their product's mean, least first. */
  residuals: number[]
}

export interface KindLearned {
  /** How often sales begin: mean and spread of ln(sales a year) over the kind's products, and the mean's standard error. */
  logRate: { mean: number; sd: number; error: number }
  changes: ChangesLearned
  depth: DepthLearned
  /** Chance that a product takes part in a sale time that its store runs. */
  part: Beta
  /** Sale reports behind all this, a day and place counted once. */
  saleDays: number
}

export interface ProductLearned {
  kind: Kind
  /** Draws from what is believed of its sales: places in the grid of `sale-grid.ts`. */
  points: number[]
  /** How much of what is believed of its sales a year is its kind's, 0 to 1: the share of the kind's spread that its own record left. */
  kindShare: number
  depth: { mean: number; sd: number }
  part: Beta
  /** Days with a report, and of these days with a sale, over all stores. */
  reportDays: number
  saleDays: number
}

/**
 * What the record taught on a day: plain JSON, the same bytes from the same record. Kept as the dated snapshot that a summary names.
 */
export interface Learned {
  asOf: CivilDate
  /** By kind; `any` for a kind that has no record of its own. */
  kinds: Record<string, KindLearned>
  products: Record<string, ProductLearned>
  /** Chance that a store runs a sale time, by store and sale time. */
  stores: Record<string, Record<string, Beta>>
  /** Stretches in which nobody looked at a store, as day numbers. */
  unwatched: Record<string, readonly Unwatched[]>
  /** Where a window is open on the day: chance that the store runs it now, by `store sale-time`. */
  running: Record<string, number>
  /** What others said of each reporter's sightings, which weighs reports of one day that disagree (design rule 8). */
  trust: Readonly<Record<string, ReporterVotes>>
}

/** What a snapshot keeps in one row; products and reporters have rows of their own, since a screen asks for few. */
export type LearnedHead = Omit<Learned, 'products' | 'trust'>
