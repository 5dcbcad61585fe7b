import type { NeedExact } from '../../../core/quote/need.ts'
import { CONDITION_FIELDS } from '../../../core/sizing/condition-fields.ts'
import type { Unit } from '../../../core/units/quantity.ts'

export type ExactKey = keyof NeedExact

interface FieldBase {
  key: ExactKey
  label: string
  help?: string | undefined
}
export type ExactField =
  | (FieldBase & { type: 'quantity'; unit: Unit; digits: number; least: number; most: number })
  | (FieldBase & { type: 'choice'; options: ReadonlyArray<readonly [value: string, words: string]> })
  | (FieldBase & { type: 'flag'; yes: string; no: string })

export interface ExactGroup {
  title: string
  fields: ExactField[]
}

/** How the desk asks: its heading says the rest of the label. Limits and options are those of the table that every validator reads. */
const ASKED: ReadonlyArray<readonly [title: string, fields: ReadonlyArray<readonly [key: ExactKey, label: string, digits?: number]>]> = [
  ['Room', [['coldestRoomC', 'Coldest', 1], ['warmestRoomC', 'Warmest', 1], ['altitudeM', 'Height above the sea'], ['floor', 'Floor']]],
  ['Joists of a wooden floor', [['joistSpanMm', 'Span'], ['joistSpacingMm', 'Spacing'], ['joistLie', 'Tank lies'], ['floorUse', 'Room is']]],
  ['Outlet and circuit', [['outletHeightMm', 'Outlet height'], ['outletDistanceMm', 'Outlet distance'], ['circuitVoltageV', 'Circuit voltage'], ['circuitCurrentA', 'Circuit breaker'], ['otherLoadW', 'Other load'], ['circuitProtected', 'Leakage protection']]],
  ['Tap water', [['disinfectant', 'Disinfectant'], ['tapC', 'Temperature in winter', 1], ['waterChangePercent', 'Changed at once'], ['tapPh', 'pH', 1], ['tapGhDegrees', 'GH', 1], ['tapKhDegrees', 'KH', 1]]],
  ['Inside the tank', [['plants', 'Plants'], ['lightHoursPerDay', 'Light a day', 1], ['substrateDepthMm', 'Substrate depth'], ['waterBelowRimMm', 'Water below the rim']]],
  ['Sump below the tank', [['siphonBelowMm', 'Siphon level below the water'], ['pipeVolumeL', 'Water in the pipes', 1]]],
  ['Animals', [['targetC', 'Target', 1], ['lowestC', 'Lowest', 1], ['dangerC', 'Danger mark', 1]]],
] // prettier-ignore

function exactField(key: ExactKey, label: string, digits: number): ExactField {
  const field = CONDITION_FIELDS.find((row) => row.key === key)
  if (!field) throw new Error(`The table of conditions has no "${key}"`)
  const base = { key, label, help: field.help || undefined }
  if (field.type === 'flag') return { ...base, type: 'flag', yes: 'on the circuit', no: 'none' }
  if (field.type === 'choice')
    return { ...base, type: 'choice', options: field.options.map((option) => [option.value, lower(option.label)]) }
  return { ...base, type: 'quantity', unit: field.unit ?? 'count', digits, least: field.min, most: field.max }
}

/** What is offered beside "I don’t know", which says the same as an answer of "not known". */
export const answersOf = ({ options }: Extract<ExactField, { type: 'choice' }>): ReadonlyArray<readonly [value: string, words: string]> =>
  options.filter(([value]) => value !== 'unknown')

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)

export const EXACT_GROUPS: readonly ExactGroup[] = ASKED.map(([title, fields]) => ({
  title,
  fields: fields.map(([key, label, digits]) => exactField(key, label, digits ?? 0)),
}))

/** Asked with the first questions, since so much follows from them: what grows in it, and the room it stands in. */
const ASKED_FIRST: ReadonlySet<ExactKey> = new Set(['plants', 'coldestRoomC', 'warmestRoomC'])
/** Asked with pictures, right behind them. */
const WITH_PICTURES: ReadonlySet<ExactKey> = new Set(['floor', 'joistSpanMm', 'joistSpacingMm', 'joistLie', 'floorUse'])

/** Those of the first questions, in the order they are asked. */
export const FIRST_EXACT_FIELDS: readonly ExactField[] = EXACT_GROUPS.flatMap((group) => group.fields)
  .filter((field) => ASKED_FIRST.has(field.key))
  .toSorted((a, b) => [...ASKED_FIRST].indexOf(a.key) - [...ASKED_FIRST].indexOf(b.key))

/** What is measured of joists, asked where the floor has some. */
export const JOIST_FIGURES: readonly ExactField[] = EXACT_GROUPS.flatMap((group) => group.fields).filter(
  ({ key }) => key === 'joistSpanMm' || key === 'joistSpacingMm',
)

/** The rest, under "more exact". */
export const FURTHER_EXACT_GROUPS: readonly ExactGroup[] = EXACT_GROUPS.map((group) => ({
  ...group,
  fields: group.fields.filter((field) => !ASKED_FIRST.has(field.key) && !WITH_PICTURES.has(field.key)),
})).filter((group) => group.fields.length > 0)

export const EXACT_FIELDS: readonly ExactField[] = EXACT_GROUPS.flatMap((group) => group.fields)
