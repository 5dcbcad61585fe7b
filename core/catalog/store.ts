import type { Kind } from './kinds.ts'

/** How a store charges for bringing goods. Amounts in minor units of the store's currency, tax as the store prints it. */
export type DeliveryRule =
  | { kind: 'pickup_only' }
  | { kind: 'flat'; feeMinor: number; oversizeMinor: number }
  | { kind: 'free_over'; feeMinor: number; freeOverMinor: number; oversizeMinor: number }

/** A rate of tax that a store takes on some goods in place of its usual one. Of two that name a product's kind, the earlier counts. */
export interface StoreRate {
  name: string
  /** As `taxBasisPoints`. */
  basisPoints: number
  kinds: Kind[]
  /** Products that take it whatever their kind. */
  productIds: string[]
}

export interface Store {
  id: string
  name: string
  /** Where a member stands, or where a parcel comes from. */
  kind: 'local' | 'online'
  town: string | null
  country: string
  subdivision: string | null
  timeZone: string
  /** Tax in hundredths of a per cent, with at most two decimals: 600 is 6 %, 887.5 is 8.875 %. */
  taxBasisPoints: number
  /** What the usual rate is called; absent or null: it has no name. */
  taxName?: string | null
  /** Rates of some goods; absent: all take the usual one. */
  otherRates?: StoreRate[]
  pricesIncludeTax: boolean
  deliveryTaxed: boolean
  /** Name of the rate that taxed delivery takes; absent or null: the usual one. */
  deliveryRate?: string | null
  delivery: DeliveryRule
  returnDays: number | null
  /** Warranty on what is bought here, where a product has none of its own. */
  warrantyMonths?: number | null
  /** ISO 4217, of its prices and fees; absent or null: the install's. */
  currency?: string | null
  /** True for the store whose install this is: its price list is what a quote is made of. */
  own?: boolean
  note: string | null
  archived: boolean
  version: number
}
