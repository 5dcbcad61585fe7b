import { sayDate, type CivilDate } from '../../dates.ts'
import { sayMoney } from '../../money.ts'
import type { Condition } from '../sighting.ts'

/** What somebody is told of one deal. The amount is with tax. */
export interface ToldOfDeal {
  productName: string
  storeName: string
  condition: Condition
  totalMinor: number
  totalCurrency: string
  /** Of the store's own price list: nobody saw it, and `seenOn` is the day from which it is in it. */
  listed: boolean
  seenOn: CivilDate
  /** Stated on the tag; null: nobody said. */
  lastDay: CivilDate | null
}

const APART: Partial<Record<Condition, string>> = { clearance: ', clearance', used: ', used' }

/**
 * The two lines of a deal: what it is and costs, and where.
 *
 * @example sayDeal({ productName: 'Rimless 60', condition: 'used', totalMinor: 12900, … }, 2026) // { what: 'Rimless 60, used: $129.00', where: 'Harbour Aquatics, seen Nov 26' }
 */
export function sayDeal(deal: ToldOfDeal, thisYear: number): { what: string; where: string } {
  const { productName, storeName, condition, totalMinor, totalCurrency, listed, seenOn, lastDay } = deal
  const since = `${listed ? 'in its price list from' : 'seen'} ${sayDate(seenOn, thisYear)}`
  const when = lastDay === null ? since : `until ${sayDate(lastDay, thisYear)}`
  return { what: `${productName}${APART[condition] ?? ''}: ${sayMoney(totalMinor, totalCurrency)}`, where: `${storeName}, ${when}` }
}
