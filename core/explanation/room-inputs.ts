import { CONDITION_FIELDS } from '../sizing/condition-fields.ts'
import type { ConditionField, Conditions, LivestockGroup } from '../sizing/conditions.ts'
import { conditionWords, startOf } from '../sizing/words.ts'
import { phrase, stated, type Phrase, type Unit } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { fieldValue, listed } from './field-words.ts'
import type { GroupField, RoomField } from './what-goes-in.ts'

/** How a person calls a field of the room. Those that a default may stand for are called as the finding that rests on it calls them. */
const nameOf = (field: RoomField): string => conditionWords(field) ?? CONDITION_FIELDS.find(({ key }) => key === field)?.label ?? field

/** The room's answers that a check reads, but those that its finding names as open: `openInputsOf` tells them. */
export const roomAnswers = (conditions: Conditions, fields: readonly RoomField[], open: readonly string[]): ExplainedInput[] =>
  fields.flatMap((key): ExplainedInput[] => {
    const value = roomValue(conditions, key)
    const name = nameOf(key)
    if (value === undefined || open.includes(name)) return []
    return [{ name: startOf(name), value, from: conditions.assumed.includes(key as ConditionField) ? 'assumed' : 'answered' }]
  })

/** One answer with its unit; undefined where there is neither an answer nor a default. */
export function roomValue(conditions: Conditions, key: RoomField): Phrase | undefined {
  const field = CONDITION_FIELDS.find((known) => known.key === key)
  return field && fieldValue(field, conditions[key])
}

/** Whole where it is a whole one, else to a tenth. */
const asStated = (value: number, unit: Unit) => stated(value, unit, Number.isInteger(value) ? 0 : 1)

const MARKS: Record<GroupField, (group: LivestockGroup) => Phrase> = {
  targetC: ({ targetC }) => phrase`target ${asStated(targetC, 'degC')}`,
  lowestC: ({ lowestC }) => phrase`least ${asStated(lowestC, 'degC')}`,
  highestC: ({ highestC }) => phrase`most ${asStated(highestC, 'degC')}`,
  dangerC: ({ dangerC }) => phrase`danger mark ${asStated(dangerC, 'degC')}`,
  flowFloorPerHour: ({ flowFloorPerHour }) => phrase`water turned over at least ${asStated(flowFloorPerHour, 'per_hour')}`,
  flowCeilingPerHour: ({ flowCeilingPerHour }) =>
    flowCeilingPerHour === null
      ? phrase`no flow too strong`
      : phrase`water turned over at most ${asStated(flowCeilingPerHour, 'per_hour')}`,
  smallestVolumeL: ({ smallestVolumeL }) => phrase`smallest tank ${asStated(smallestVolumeL, 'L')}`,
  lidNeeded: ({ lidNeeded }) => phrase`${lidNeeded ? 'leave an open tank' : 'stay in an open tank'}`,
  water: ({ water }) => phrase`${water === 'salt' ? 'salt water' : 'fresh water'}`,
}

/** The animals' marks that a check reads, in one row. */
export const groupInputs = ({ livestock }: Conditions, fields: readonly GroupField[]): ExplainedInput[] =>
  fields.length === 0
    ? []
    : [{ name: `Animals (${livestock.name})`, value: listed(fields.map((field) => MARKS[field](livestock))), from: 'group' }]
