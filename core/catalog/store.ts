/** How a store charges for bringing goods. Amounts in minor units of the install's currency, tax as the store prints it. */
export type DeliveryRule =
  | { kind: 'pickup_only' }
  | { kind: 'flat'; feeMinor: number; oversizeMinor: number }
  | { kind: 'free_over'; feeMinor: number; freeOverMinor: number; oversizeMinor: number }

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
  pricesIncludeTax: boolean
  deliveryTaxed: boolean
  delivery: DeliveryRule
  returnDays: number | null
  note: string | null
  archived: boolean
  version: number
}
