import { addDays, type CivilDate } from '../../dates.ts'
import type { Condition } from '../sighting.ts'
import type { Deal } from './deal.ts'

/** What somebody was told of before, at the time it was told. */
export interface ToldDeal {
  productId: string
  storeId: string
  condition: Condition
  priceMinor: number
  seenOn: CivilDate
  from: CivilDate
  until: CivilDate
}

/** A price that falls by less is the same deal: nobody drives to the store for it a second time. Own. */
const WORTH_TELLING = 0.02

/** A sale that is marked down to clearance at the same price is one deal. */
const sortOf = (condition: Condition): 'regular' | 'reduced' | 'used' =>
  condition === 'shelf' ? 'regular' : condition === 'used' ? 'used' : 'reduced'

/**
 * Whether a deal has not been told yet: five members who report one deal are one deal, until its price falls by a further 2 % or more, or until
 * the sale has ended and another begins. `told` is of the same watch, in any order.
 */
export const isNews = (deal: Deal, told: readonly ToldDeal[]): boolean => !told.some((before) => isSame(deal, before))

function isSame(deal: Deal, told: ToldDeal): boolean {
  if (deal.productId !== told.productId || deal.storeId !== told.storeId || sortOf(deal.condition) !== sortOf(told.condition)) return false
  if (deal.priceMinor <= told.priceMinor * (1 - WORTH_TELLING)) return false
  const touches = deal.from <= addDays(told.until, 1) && told.from <= addDays(deal.until, 1)
  const endedSince = deal.brokenOn.some((day) => day > told.seenOn && day < deal.from)
  return touches && !endedSince
}

/** Names a deal among those of a watch: the same facts make the same name, on whichever server they are looked at. */
export const dealKey = ({ productId, storeId, condition, from, priceMinor }: Deal): string =>
  [productId, storeId, sortOf(condition), from, priceMinor].join(' ')
