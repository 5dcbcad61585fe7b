import type { CivilDate } from '../../dates.ts'

/** One line that is to be bought. */
export interface AskedLine {
  productId: string
  /** Whole, at least 1. */
  quantity: number
  /** Stores the customer will use; of these only the ones with a known price count. */
  storeIds: readonly string[]
  /** What one unit at a price comes to with tax and the line's own delivery, in minor units; as it stands where left out. Must rise with the price. */
  priceOf?: (storeId: string, unitMinor: number) => number
}

/** What somebody wants to know: these lines, bought by a day. */
export interface Ask {
  lines: readonly AskedLine[]
  /** Last day on which it may be bought, inclusive. */
  until: CivilDate
  /** What a day of waiting is worth to the customer for the whole purchase, minor units, at least 0. */
  waitingCostPerDayMinor: number
  /** *Wait* is said of a line only where it is expected to save more than this, minor units; 0 where left out. */
  leastSavingMinor?: number
  /** How many futures are drawn; 400 tell a tenth to about a hundredth of its place. */
  draws: number
  /** The same seed gives the same figures. */
  seed: number
}

/** What a store asks on a day for one unit, seen by the shopper. */
export interface SeenOffer {
  productId: string
  storeId: string
  priceMinor: number
  /** Regular price there that day; the same as the price where nothing is on sale. */
  regularMinor: number
}
export interface SeenDay {
  day: CivilDate
  offers: readonly SeenOffer[]
}
