import type { Need } from '../../../core/quote/need.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { sayBig } from './need-words.ts'

/** As the validator of a draft has it. */
const LONGEST_TITLE = 120

/**
 * A title from what was asked, for a quote that nobody gave one. Never the customer's name: that is kept apart, so that it can be erased.
 *
 * @example titleOf({ ...need, lengthMm: 914.4, place: 'living room' }, US) // 'A tank about 36 in long, living room'
 */
export function titleOf(need: Need, reader: ReaderUnits): string {
  const size = need.commonSizeId !== null ? `, ${sayBig(need, reader)}` : need.lengthMm === null ? '' : ` ${sayBig(need, reader)} long`
  const place = need.place.trim() === '' ? '' : `, ${need.place.trim()}`
  return `A tank${size}${place}`.slice(0, LONGEST_TITLE).trim()
}
