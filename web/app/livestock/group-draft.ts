import { LIVESTOCK_FIELDS } from '../../../core/catalog/livestock-fields.ts'
import type { LivestockGroup } from '../../../core/sizing/conditions.ts'
import { sayQuantity } from '../../../core/units/say.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import type { GroupBody } from '../client/livestock.ts'
import { readKept, spellFigure, type FigureLimits } from '../parts/figure.ts'

export type FigureKey = (typeof LIVESTOCK_FIELDS)[number]['key']

/** A group as it is typed: every figure as text, so that nothing typed is lost to a fault. */
export interface GroupDraft {
  name: string
  examples: string
  figures: Record<FigureKey, string>
  lidNeeded: boolean
  water: LivestockGroup['water']
  source: string
}

export const limitsOf = (field: (typeof LIVESTOCK_FIELDS)[number]): FigureLimits => ({
  label: field.label,
  unit: field.unit,
  unitText: field.unitText,
  min: field.min,
  max: field.max,
})

const NO_FIGURES = Object.fromEntries(LIVESTOCK_FIELDS.map(({ key }) => [key, ''])) as Record<FigureKey, string>

/** A new group: nothing is preset but the water that most tanks hold. */
export const EMPTY_GROUP: GroupDraft = { name: '', examples: '', figures: NO_FIGURES, lidNeeded: false, water: 'fresh', source: '' }

export function draftOfGroup(group: LivestockGroup, reader: ReaderUnits): GroupDraft {
  const spelled = LIVESTOCK_FIELDS.map((field) => [field.key, spellFigure(group[field.key], limitsOf(field), reader)])
  const { name, examples, lidNeeded, water, source } = group
  return { name, examples, figures: Object.fromEntries(spelled) as Record<FigureKey, string>, lidNeeded, water, source }
}

/** Pairs of marks, the colder first; comfort ends below danger, the others may meet. The server holds a group to the same. */
const PAIRS = [
  ['lowestC', 'targetC', 'at least'],
  ['targetC', 'highestC', 'at least'],
  ['highestC', 'dangerC', 'more than'],
] as const

/** Marks out of their order, told at the warmer one in the reader's units. */
function orderFaults(figures: Partial<Record<FigureKey, number | null>>, reader: ReaderUnits): Array<[FigureKey, string]> {
  const labelOf = (key: FigureKey): string => LIVESTOCK_FIELDS.find((field) => field.key === key)?.label ?? key
  return PAIRS.flatMap(([low, high, words]): Array<[FigureKey, string]> => {
    const [cold, warm] = [figures[low], figures[high]]
    if (cold == null || warm == null || warm > cold || (warm === cold && words === 'at least')) return []
    const say = (celsius: number): string => sayQuantity({ value: celsius, unit: 'degC', digits: 1 }, reader)
    return [[high, `${labelOf(high)} is ${say(warm)}, and “${labelOf(low)}” is ${say(cold)}. Enter ${words} ${say(cold)}.`]]
  })
}

/** The body to send, and what is wrong by field. A figure that was not touched keeps its stored value to the last digit. */
export function readGroup(
  draft: GroupDraft,
  reader: ReaderUnits,
  stored?: LivestockGroup,
): { body: GroupBody; faults: Record<string, string> } {
  const faults: Record<string, string> = {}
  const figures: Partial<Record<FigureKey, number | null>> = {}
  for (const field of LIVESTOCK_FIELDS) {
    const read = readKept(draft.figures[field.key], stored?.[field.key] ?? null, limitsOf(field), reader)
    if (read.fault !== null) faults[field.key] = read.fault
    else if (read.value === null && field.required) faults[field.key] = `${field.label} is missing.`
    figures[field.key] = read.value
  }
  for (const [key, message] of orderFaults(figures, reader)) faults[key] ??= message
  if (draft.name.trim() === '') faults['name'] = 'Name is empty. Write it as a customer would say it.'
  if (draft.source.trim().length < 3) faults['source'] = 'Source is missing. Say where the figures come from, or “common practice”.'
  const { examples, lidNeeded, water } = draft
  const body = { name: draft.name.trim(), examples: examples.trim(), ...figures, lidNeeded, water, source: draft.source.trim() }
  // With no fault every required figure is a number.
  return { body: body as GroupBody, faults }
}
