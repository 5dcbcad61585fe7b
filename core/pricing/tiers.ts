import type { CivilDate } from '../dates.ts'
import type { Condition } from './sighting.ts'
import type { NoOffer } from './line-offer.ts'
import type { Age } from './price-view.ts'

/** Goods and delivery as the stores print them: total = goods − discount + delivery + services + tax − tax that printed prices already hold. */
export interface Sum {
  goodsMinor: number
  /** Taken off the goods; absent is 0. */
  discountMinor?: number
  deliveryMinor: number
  /** The install's own services, at its own price with tax in it; absent is 0. */
  servicesMinor?: number
  /** All tax, whether added to printed prices or held in them. */
  taxMinor: number
  /** The part of `taxMinor` that printed prices already hold; absent is 0. */
  taxIncludedMinor?: number
  totalMinor: number
}
/** A tier is a sum or it is incomplete and says which lines have no price: never a total with a hole in it. */
export type Tier = ({ complete: true } & Sum) | { complete: false; missing: Array<{ lineId: string; name: string; why: NoOffer }> }

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
  /** Name of the other club that told the price; absent: our own record or list. */
  otherClub?: string
  sightingIds: string[]
  /** Days in which the store takes it back; null: not stated. */
  returnDays?: number | null
  /** The product's own, else the store's; null: not stated. */
  warrantyMonths?: number | null
  best: { storeId: string; priceMinor: number; seenOn: CivilDate; sightingId: string } | null
}

/** Tax of one rate on one receipt, rounded once. */
export interface ReceiptTax {
  name: string | null
  basisPoints: number
  /** Goods less discount, and delivery where it takes this rate, as printed. */
  taxableMinor: number
  taxMinor: number
}

export interface Receipt extends Sum {
  storeId: string
  /** The store's usual rate. */
  taxBasisPoints: number
  /** Rate by rate, where the store has several; absent where `taxMinor` is all of the usual rate. */
  taxes?: ReceiptTax[]
}

export interface BuildCost {
  lines: LineCost[]
  /** Today's, one a store. */
  receipts: Receipt[]
  full: Tier
  today: Tier
  bestSeen: Tier
}
