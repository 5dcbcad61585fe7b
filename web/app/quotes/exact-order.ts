import { livestockGroup } from '../../../core/catalog/livestock.ts'
import type { Install } from '../../../core/install.ts'
import type { Need } from '../../../core/quote/need.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { sayQuantity } from '../../../core/units/say.ts'
import type { ExactKey } from './exact-fields.ts'

const NAMES = {
  coldestRoomC: 'coldest', warmestRoomC: 'warmest', lowestC: 'lowest', targetC: 'target', dangerC: 'danger mark',
} as const satisfies Partial<Record<ExactKey, string>> // prettier-ignore
type Mark = keyof typeof NAMES

/** Pairs of temperatures with the colder one first; between target and danger there must be a difference. The server holds a draft to the same. */
const PAIRS: ReadonlyArray<{ low: Mark; high: Mark; mayMeet: boolean }> = [
  { low: 'coldestRoomC', high: 'warmestRoomC', mayMeet: true },
  { low: 'lowestC', high: 'targetC', mayMeet: true },
  { low: 'targetC', high: 'dangerC', mayMeet: false },
]

/**
 * What is wrong with a temperature beside those it is paired with, in the reader's units; null where it is in order. A mark that nobody stated is the
 * group's; a room that nobody stated gives way.
 *
 * @example orderFault(need, 'coldestRoomC', 30, METRIC) // 'Coldest is 30 °C, above the warmest, 26 °C. Enter at most 26 °C, or change the warmest.'
 */
export function orderFault(
  need: Need,
  key: ExactKey,
  value: number,
  reader: ReaderUnits,
  place: Pick<Install, 'livestock'> = {},
): string | null {
  const group = livestockGroup(need.livestockId, place)
  const marks = group ? { lowestC: group.lowestC, targetC: group.targetC, dangerC: group.dangerC } : {}
  const stated: Partial<Record<Mark, number | undefined>> = { ...marks, ...need.exact }
  for (const { low, high, mayMeet } of PAIRS) {
    if (key !== low && key !== high) continue
    const other = key === low ? high : low
    const limit = stated[other]
    const gap = limit === undefined ? 0 : key === low ? limit - value : value - limit
    if (limit === undefined || gap > 0 || (gap === 0 && mayMeet)) continue
    return sayFault({ key, other, value, limit, isLow: key === low, mayMeet, reader })
  }
  return null
}

interface Wrong {
  key: Mark
  other: Mark
  value: number
  limit: number
  isLow: boolean
  mayMeet: boolean
  reader: ReaderUnits
}

function sayFault({ key, other, value, limit, isLow, mayMeet, reader }: Wrong): string {
  const say = (celsius: number): string => sayQuantity({ value: celsius, unit: 'degC', digits: 1 }, reader).replace(/[.,]0(?=\D)/, '')
  const [is, allowed] = isLow ? ['above', mayMeet ? 'at most' : 'less than'] : ['below', mayMeet ? 'at least' : 'more than']
  const name = NAMES[key].charAt(0).toUpperCase() + NAMES[key].slice(1)
  const stands = value === limit ? 'the same as' : is
  return `${name} is ${say(value)}, ${stands} the ${NAMES[other]}, ${say(limit)}. Enter ${allowed} ${say(limit)}, or change the ${NAMES[other]}.`
}
