import type { Unit } from '../../../core/units/quantity.ts'
import type { NeedExact } from '../../../core/quote/need.ts'

export type ExactKey = keyof NeedExact

interface FieldBase {
  key: ExactKey
  label: string
  /** One line where the question is not plain. */
  help?: string
}
export type ExactField =
  | (FieldBase & { type: 'quantity'; unit: Unit; digits: number; least: number; most: number })
  | (FieldBase & { type: 'choice'; options: ReadonlyArray<readonly [value: string, words: string]> })
  | (FieldBase & { type: 'flag'; yes: string; no: string })

export interface ExactGroup {
  title: string
  fields: ExactField[]
}

/** Widest limits within which a figure can be meant; the rules judge the rest. In storage units. */
export const EXACT_GROUPS: readonly ExactGroup[] = [
  {
    title: 'Room',
    fields: [
      { key: 'coldestRoomC', label: 'Coldest', type: 'quantity', unit: 'degC', digits: 1, least: -10, most: 40, help: 'At night in winter, heating as usual.' },
      { key: 'warmestRoomC', label: 'Warmest', type: 'quantity', unit: 'degC', digits: 1, least: 0, most: 50, help: 'On the hottest afternoon.' },
      { key: 'floor', label: 'Floor', type: 'choice', options: [['ground_slab', 'slab on the ground'], ['timber_upper', 'timber joists'], ['concrete_upper', 'concrete, upper floor'], ['unknown', 'not known']] },
    ],
  },
  {
    title: 'Outlet and circuit',
    fields: [
      { key: 'outletHeightMm', label: 'Outlet height', type: 'quantity', unit: 'mm', digits: 0, least: 0, most: 3000, help: 'Above the floor.' },
      { key: 'outletDistanceMm', label: 'Outlet distance', type: 'quantity', unit: 'mm', digits: 0, least: 0, most: 10_000, help: 'From the tank’s nearest end.' },
      { key: 'circuitVoltageV', label: 'Circuit voltage', type: 'quantity', unit: 'V', digits: 0, least: 90, most: 260 },
      { key: 'circuitCurrentA', label: 'Circuit breaker', type: 'quantity', unit: 'A', digits: 0, least: 1, most: 63 },
      { key: 'otherLoadW', label: 'Other load', type: 'quantity', unit: 'W', digits: 0, least: 0, most: 10_000, help: 'What else runs on this circuit.' },
      { key: 'circuitProtected', label: 'Leakage protection', type: 'flag', yes: 'on the circuit', no: 'none' },
    ],
  },
  {
    title: 'Tap water',
    fields: [
      { key: 'disinfectant', label: 'Disinfectant', type: 'choice', options: [['chlorine', 'chlorine'], ['chloramine', 'chloramine'], ['none', 'none'], ['unknown', 'not known']] },
      { key: 'tapPh', label: 'pH', type: 'quantity', unit: 'count', digits: 1, least: 3, most: 11 },
      { key: 'tapGhDegrees', label: 'GH', type: 'quantity', unit: 'dKH', digits: 1, least: 0, most: 60, help: 'General hardness, degrees or ppm.' },
      { key: 'tapKhDegrees', label: 'KH', type: 'quantity', unit: 'dKH', digits: 1, least: 0, most: 40, help: 'Carbonate hardness, degrees or ppm.' },
    ],
  },
  {
    title: 'Inside the tank',
    fields: [
      { key: 'plants', label: 'Plants', type: 'choice', options: [['none', 'none'], ['low', 'low light'], ['medium', 'medium light'], ['high', 'high light']] },
      { key: 'lightHoursPerDay', label: 'Light a day', type: 'quantity', unit: 'h', digits: 1, least: 0, most: 24 },
      { key: 'substrateDepthMm', label: 'Substrate depth', type: 'quantity', unit: 'mm', digits: 0, least: 0, most: 300 },
      { key: 'waterBelowRimMm', label: 'Water below the rim', type: 'quantity', unit: 'mm', digits: 0, least: 0, most: 300 },
    ],
  },
  {
    title: 'Animals',
    fields: [
      { key: 'targetC', label: 'Target', type: 'quantity', unit: 'degC', digits: 1, least: 0, most: 40 },
      { key: 'lowestC', label: 'Lowest', type: 'quantity', unit: 'degC', digits: 1, least: 0, most: 40 },
      { key: 'dangerC', label: 'Danger mark', type: 'quantity', unit: 'degC', digits: 1, least: 10, most: 45, help: 'A heater stuck on must not reach it.' },
    ],
  },
] // prettier-ignore

export const EXACT_FIELDS: readonly ExactField[] = EXACT_GROUPS.flatMap((group) => group.fields)
