import type { Kind } from '../../catalog/kinds.ts'
import type { CivilDate } from '../../dates.ts'
import type { Condition } from '../sighting.ts'

export const NOTICE_ANSWERS = ['still_there', 'gone'] as const
export type NoticeAnswer = (typeof NOTICE_ANSWERS)[number]

/**
 * What an answer did to the record: "still there" was posted, confirmed, or said of today already; "gone" ended a sale, left nothing known of today, took out a used
 * piece, or came when the record held another price; the store's own list is the store's to change.
 */
export const DONE = ['posted', 'confirmed', 'said', 'ended', 'emptied', 'sold', 'passed', 'listed'] as const
export type Done = (typeof DONE)[number]

/** One deal that a person was told of, once. */
export interface Notice {
  id: string
  watchId: string
  productId: string
  productName: string
  kind: Kind
  storeId: string
  storeName: string
  condition: Condition
  /** As the store prints it, in `currency`. */
  priceMinor: number
  currency: string
  /** One piece with tax, in the currency of the install on the day it was told. */
  totalMinor: number
  totalCurrency: string
  /** Null where it is of the store's own list: nobody saw it. */
  sightingId: string | null
  /** That sighting was withdrawn since, by whoever reported it or by a manager: nothing is to be answered any more. */
  withdrawn: boolean
  seenOn: CivilDate
  /** Last day that the price is taken to hold; of a regular price no day is known. */
  until: CivilDate | null
  lastDayStated: boolean
  toldAt: string
  seenAt: string | null
  answer: NoticeAnswer | null
  answeredAt: string | null
}
