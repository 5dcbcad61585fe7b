import type { CivilDate } from '../dates.ts'
import { ageOn } from './age.ts'
import { effectiveCondition } from './effective-condition.ts'
import { isAccepted, type SeenPrice } from './sighting.ts'

/** A price that was seen, and the first day on which somebody found it gone. */
type Found = Pick<SeenPrice, 'seenOn' | 'goneOn'>

/** Only what counted as a price by then can have been found gone. */
const goneDay = ({ seenOn, goneOn }: Found): CivilDate | null => (goneOn && ageOn(seenOn, goneOn) !== null ? goneOn : null)

/** Whether nobody had seen it there on a day or later without its being found gone by then. */
const isLast = (record: readonly Found[], day: CivilDate): boolean =>
  !record.some((one) => one.seenOn >= day && (goneDay(one) ?? '9999') > day)

/**
 * First day from which what some sightings tell of is gone; null where nobody found it so, or something of the record was seen there on that day or later.
 *
 * Errors: none. The order of the sightings does not matter, nor does the day asked about: whoever asks about an earlier one compares.
 *
 * @example foundGone([{ seenOn: '2026-11-20', goneOn: '2026-11-25' }]) // '2026-11-25'
 */
export function foundGone(told: readonly Found[], record: readonly Found[] = told): CivilDate | null {
  const days = told.flatMap((one) => goneDay(one) ?? []).sort()
  return days.find((day) => isLast(record, day)) ?? null
}

/**
 * First day from which a product is gone from a store: somebody found no piece at its shelf price, and no new one of any price was seen there since. An older shelf price is no proof that
 * it is sold again.
 *
 * Sightings of one product and store, up to the day asked about.
 */
export function productGone(sightings: readonly SeenPrice[], asOf: CivilDate): CivilDate | null {
  if (!sightings.some(({ goneOn }) => goneOn)) return null
  const seen = sightings.filter((one) => one.seenOn <= asOf && one.condition !== 'used' && isAccepted(one))
  return foundGone(
    seen.filter((one) => effectiveCondition(one) === 'shelf'),
    seen,
  )
}

/** Whether something was gone by a day. @example isGone('2026-11-25', '2026-11-24') // false */
export const isGone = (goneOn: CivilDate | null | undefined, asOf: CivilDate): boolean => goneOn != null && goneOn <= asOf
