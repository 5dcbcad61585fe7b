import { COMMON_SIZES } from '../../../core/catalog/common-sizes.ts'
import { livestockGroup } from '../../../core/catalog/livestock.ts'
import type { Region } from '../../../core/catalog/region.ts'
import type { Store } from '../../../core/catalog/store.ts'
import { sayWeekday, yearOf, type CivilDate } from '../../../core/dates.ts'
import type { Install } from '../../../core/install.ts'
import { sayMoney } from '../../../core/money.ts'
import type { Need } from '../../../core/quote/need.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { sayLength, sayQuantity } from '../../../core/units/say.ts'
import type { ExactField } from './exact-fields.ts'

/** One row of the need as the desk shows it. `assumed`: nobody stated it. */
export interface NeedRow {
  label: string
  words: string
  assumed: boolean
}

export const LOOK_WORDS: Record<Need['look'], string> = { standard: 'rimmed', kit: 'kit', rimless: 'rimless', any: 'any' }

export function sayBig(need: Need, reader: ReaderUnits): string {
  const size = COMMON_SIZES.find((common) => common.id === need.commonSizeId)
  if (size) return size.label
  return need.lengthMm === null ? 'not asked yet' : `about ${sayLength(need.lengthMm, reader)}`
}

/** The group and what was said beside it. */
export function sayAnimals(need: Need, install: Pick<Install, 'livestock'>): string {
  const group = livestockGroup(need.livestockId, install)
  return [group?.name ?? 'not asked yet', need.livestockNote].filter(Boolean).join('; ')
}

/** The five questions, then the room: what must be seen without unfolding anything. */
export function needRows(
  need: Need,
  conditions: Conditions,
  install: Install,
  { stores, regions = [] }: { stores: Store[]; regions?: readonly Region[] | undefined },
  asOf: CivilDate,
): NeedRow[] {
  const stated = (label: string, words: string): NeedRow => ({ label, words, assumed: false })
  const names = need.storeIds.map((id) => stores.find((store) => store.id === id)?.name ?? 'a store that is gone')
  const region = regions.find(({ id }) => id === need.regionId)
  return [
    stated('Size', sayBig(need, install.units)),
    stated('Place', need.place || 'not asked yet'),
    stated('Animals', sayAnimals(need, install)),
    stated('Look', LOOK_WORDS[need.look]),
    roomRow(conditions, install.units),
    stated('Stores', region ? `all of ${region.name}` : names.length === 0 ? 'any' : names.join(', ')),
    stated('Budget', need.budgetMinor === null ? 'not asked yet' : sayMoney(need.budgetMinor, install.currency)),
    stated('By', need.byDate === null ? 'no hurry' : sayWeekday(need.byDate, yearOf(asOf))),
    ...(need.weekWaitMinor ? [stated('A week’s wait', `worth ${sayMoney(need.weekWaitMinor, install.currency)}`)] : []),
  ]
}

function roomRow(conditions: Conditions, reader: ReaderUnits): NeedRow {
  const say = (value: number) => sayQuantity({ value, unit: 'degC', digits: 0 }, reader)
  const assumed = conditions.assumed.includes('coldestRoomC') || conditions.assumed.includes('warmestRoomC')
  return { label: 'Room', words: `${say(conditions.coldestRoomC).replace(/ °[CF]$/, '')} to ${say(conditions.warmestRoomC)}`, assumed }
}

/** A figure of "more exact" in words: as stated, or what stands for it and where that comes from. */
export function sayExact(field: ExactField, need: Need, conditions: Conditions, reader: ReaderUnits): NeedRow {
  const own = need.exact[field.key]
  const value = own ?? standIn(field, conditions)
  const words = value === undefined ? 'not stated' : sayValue(field, value, reader)
  if (own !== undefined || value === undefined) return { label: field.label, words, assumed: false }
  const assumed = conditions.assumed.some((key) => key === field.key)
  return {
    label: field.label,
    words: assumed ? words : `${words}, ${LIVESTOCK_KEYS.has(field.key) ? 'the group’s' : 'the settings’'}`,
    assumed,
  }
}

const LIVESTOCK_KEYS: ReadonlySet<ExactField['key']> = new Set(['targetC', 'lowestC', 'dangerC'])

export function standIn(field: ExactField, conditions: Conditions): string | number | boolean | undefined {
  switch (field.key) {
    case 'targetC':
    case 'lowestC':
    case 'dangerC':
      return conditions.livestock[field.key]
    case 'tapPh':
    case 'tapGhDegrees':
    case 'tapKhDegrees':
      return undefined
    default:
      return conditions[field.key]
  }
}

function sayValue(field: ExactField, value: string | number | boolean, reader: ReaderUnits): string {
  if (field.type === 'flag') return value === true ? field.yes : field.no
  if (field.type === 'choice') return field.options.find(([option]) => option === value)?.[1] ?? String(value)
  return typeof value === 'number' ? sayQuantity({ value, unit: field.unit, digits: field.digits }, reader) : String(value)
}
