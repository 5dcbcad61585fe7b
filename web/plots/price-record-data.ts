import type { CivilDate } from '../../core/dates.ts'

/** A stretch of days at one price. `to` is the first day after it. */
export interface PriceRun {
  from: CivilDate
  to: CivilDate
  priceMinor: number
  kind: 'regular' | 'sale'
  /** Of a sale: the shelf price then, where it is known. */
  regularMinor: number | null
}
/** One counted sighting. */
export interface PriceMark {
  on: CivilDate
  priceMinor: number
  kind: 'shelf' | 'sale'
}
export interface StoreLine {
  storeId: string
  name: string
  /** In order of time; days nobody knows a price for are left out. */
  runs: PriceRun[]
  marks: PriceMark[]
}

/** What a price record plot shows: new goods only, as each store prints them. */
export interface PriceRecordData {
  productName: string
  currency: string
  asOf: CivilDate
  stores: StoreLine[]
  countedSightings: number
  reporters: number
}
