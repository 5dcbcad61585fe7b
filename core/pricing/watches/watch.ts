import type { Kind } from '../../catalog/kinds.ts'
import type { CivilDate } from '../../dates.ts'
import type { BuildLetter } from '../../quote/draft.ts'

/** What a watch asks of the goods: new at a regular or a sale price; new on clearance; used. */
export const WATCHED_CONDITIONS = ['new', 'clearance', 'used'] as const
export type WatchedCondition = (typeof WATCHED_CONDITIONS)[number]

/** Any product of a kind whose stated spec meets a filter; with `fits` only those that the build in that place of the quote takes. */
export interface WatchedRequirement {
  kind: Kind
  /** As a search for products has it: "powerW:200..,adjustable:yes". Empty: any of the kind. */
  spec: string
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

/** What a person says of a watch; the rest is the server's. */
export type WatchTerms = Pick<Watch, 'limitMinor' | 'byDay' | 'conditions' | 'regionId' | 'storeIds'>
export type NewWatch = WatchTerms & Pick<Watch, 'id' | 'productId' | 'requirement'>

/** More than these are read by nobody, and each is looked at whenever a price of its product is posted. */
export const MOST_WATCHES = 200

/** A watch as its owner reads it. */
export interface WatchView extends Watch {
  /** Null where it is of a requirement. */
  productName: string | null
  /** Kind of the product or of the requirement. */
  kind: Kind
  /** Number of the quote whose build it is to fit; null where it has none, none is named, or its owner advises no longer. */
  quoteNumber: string | null
  /** It ended because its region was taken out, and its owner has not taken it off the list yet. */
  regionGone: boolean
  /** How many deals it has told of. */
  told: number
}
