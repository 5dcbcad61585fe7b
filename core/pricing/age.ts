import { daysBetween, type CivilDate } from '../dates.ts'
import type { Age } from './price-view.ts'

/** Design rule 2: to 60 days a price is current, to 180 it counts and is marked ageing, older is not known. */
export const CURRENT_DAYS = 60
export const COUNTED_DAYS = 180

/** How old a fact is on a day; null where it is too old to count, or not yet seen. @example ageOn('2026-08-01', '2026-10-20') // 'ageing' */
export function ageOn(seenOn: CivilDate, asOf: CivilDate): Age | null {
  const days = daysBetween(seenOn, asOf)
  if (days < 0 || days > COUNTED_DAYS) return null
  return days <= CURRENT_DAYS ? 'current' : 'ageing'
}
