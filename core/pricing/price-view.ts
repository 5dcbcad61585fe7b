import type { CivilDate } from '../dates.ts'
import type { Condition } from './sighting.ts'

/** How old the newest fact is: to 60 days current, to 180 ageing (design rule 2). Older is no price at all. */
export type Age = 'current' | 'ageing'

/** What the record says of one product at one store on a day, new goods only. Amounts in minor units as that store prints them. */
export interface PriceView {
  productId: string
  storeId: string
  /** Absent: not known. */
  regular?: { priceMinor: number; seenOn: CivilDate; age: Age; from: 'shelf' | 'printed' | 'list'; sightingIds: string[] }
  /** What it costs on the day asked for. */
  today?: {
    priceMinor: number
    condition: Exclude<Condition, 'used'>
    seenOn: CivilDate
    /** Last day this price is taken to hold; null for a regular price. */
    holdsUntil: CivilDate | null
    /** True when the last day was printed, false when it is the rule's 7 or 5 days. */
    lastDayStated: boolean
    age: Age
    /** Distinct members behind it: 1 is said as "one report"; 0 is the store's own list. */
    reporters: number
    sightingIds: string[]
  }
  /** There is no `today` because the product was found gone from the store: the first day on which it was. */
  goneOn?: CivilDate
  /** Lowest accepted price of the last 365 days. */
  best?: { priceMinor: number; seenOn: CivilDate; sightingId: string }
  /** Name of the other club whose members saw it, where ours have not. */
  otherClub?: string
}
