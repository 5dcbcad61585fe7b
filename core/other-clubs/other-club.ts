/** Another club whose prices are read here, and how that goes. */
export interface OtherClub {
  id: string
  /** Of its feed; https. */
  address: string
  /** As it calls itself; its address until it was read. */
  name: string
  /** When it was last read well, and last tried; null: not yet. ISO 8601 UTC. */
  readAt: string | null
  triedAt: string | null
  /** Why the last try brought nothing, in words; null where it went well. */
  fault: string | null
  prices: number
  /** Of those: of products in our catalog, told by their trade item number. */
  ofOurProducts: number
  /** Of those again: at stores of ours. */
  used: number
  /** Offers that could not be read. */
  leftOut: number
  stores: OtherClubStore[]
}

/** A store as the other club calls it, and which of ours it is. */
export interface OtherClubStore {
  key: string
  name: string
  town: string | null
  country: string
  /** Null: none of ours, or nobody has said yet. */
  storeId: string | null
  prices: number
}

/** A price of another club on a product's page. */
export interface OtherClubRow {
  clubName: string
  storeName: string
  /** Ours that it stands for; null: none. */
  storeId: string | null
  condition: 'shelf' | 'sale' | 'clearance' | 'used'
  priceMinor: number
  currency: string
  seenOn: string
  lastDay: string | null
}

/** More clubs than anyone follows, and few enough that a day's reading is an hour's work at worst. */
export const MOST_OTHER_CLUBS = 20
