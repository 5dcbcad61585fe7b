import type { Kind } from '../../catalog/kinds.ts'
import type { SpecTest } from '../../catalog/spec-filter.ts'
import type { CivilDate } from '../../dates.ts'
import type { BuildLetter } from '../../quote/draft.ts'

/** What a watch asks of the goods: new at a regular or a sale price; new on clearance; used. */
export const WATCHED_CONDITIONS = ['new', 'clearance', 'used'] as const
export type WatchedCondition = (typeof WATCHED_CONDITIONS)[number]

/** Any product of a kind whose stated spec meets every test; with `fits` only those that the build in that place of the quote takes. */
export interface WatchedRequirement {
  kind: Kind
  tests: SpecTest[]
  fits: { quoteId: string; letter: BuildLetter } | null
}

/** Somebody wants to be told when a product, or any that meets a requirement, is at or under a price. Exactly one of the two is there. */
export interface Watch {
  id: string
  productId: string | null
  requirement: WatchedRequirement | null
  /** With tax, in `currency`; null: the price to buy at by `byDay`, worked out anew each day. */
  limitMinor: number | null
  currency: string
  /** By when it is wanted: on the day after, the watch ends by itself. Null: until it is ended. */
  byDay: CivilDate | null
  conditions: WatchedCondition[]
  /** Only at stores of this region; null: anywhere. */
  regionId: string | null
  /** Only at these; empty: at any. */
  storeIds: string[]
  createdAt: string
  endedAt: string | null
  version: number
}
