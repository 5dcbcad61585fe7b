import type { CivilDate } from '../dates.ts'
import type { Condition } from './sighting.ts'
import type { Age } from './price-view.ts'

/** Goods and delivery as the stores print them: total = goods + delivery + tax − tax that printed prices already hold. */
export interface Sum {
  goodsMinor: number
  deliveryMinor: number
  /** All tax, whether added to printed prices or held in them. */
  taxMinor: number
  /** The part of `taxMinor` that printed prices already hold; absent is 0. */
  taxIncludedMinor?: number
  totalMinor: number
}
/** A tier is a sum or it is incomplete and says which lines have no price: never a total with a hole in it. */
export type Tier =
  | ({ complete: true } & Sum)
  | { complete: false; missing: Array<{ lineId: string; name: string; why: 'no_price' | 'cannot_be_delivered' | 'archived' }> }

/** One line's amounts, quantity included, as the store prints them (tax in or out as the store does). */
export interface LineCost {
  lineId: string
  productId: string
  quantity: number
  storeId: string | null
  fullMinor: number | null
  todayMinor: number | null
  bestSeenMinor: number | null
  unitTodayMinor: number | null
  unitFullMinor: number | null
  condition: Condition | null
  seenOn: CivilDate | null
  holdsUntil: CivilDate | null
  lastDayStated: boolean
  age: Age | null
  reporters: number
  sightingIds: string[]
  best: { storeId: string; priceMinor: number; seenOn: CivilDate; sightingId: string } | null
}

export interface Receipt extends Sum {
  storeId: string
  taxBasisPoints: number
}

export interface BuildCost {
  lines: LineCost[]
  /** Today's, one a store. */
  receipts: Receipt[]
  full: Tier
  today: Tier
  bestSeen: Tier
}
