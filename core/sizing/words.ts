import type { ConditionField, Conditions } from './conditions.ts'

/** What a person calls each condition; a finding that rests on a default names it so. */
const WORDS: Record<ConditionField, string> = {
  coldestRoomC: 'coldest room temperature',
  warmestRoomC: 'warmest room temperature',
  waterBelowRimMm: 'water level below the rim',
  substrateDepthMm: 'substrate depth',
  circuitVoltageV: 'circuit voltage',
  circuitCurrentA: 'circuit current',
  otherLoadW: 'other load on the circuit',
  outletHeightMm: 'height of the outlet',
  outletDistanceMm: 'distance to the outlet',
  circuitProtected: 'protection of the circuit',
  energyPriceMinor: 'price of electricity',
  lightHoursPerDay: 'hours of light a day',
  plants: 'kind of plants',
  floor: 'kind of floor',
  disinfectant: 'disinfectant in the tap water',
}

/** The words for those of the named conditions that a default stands for. @example assumedOf(conditions, ['floor']) // ['kind of floor'] */
export function assumedOf(conditions: Conditions, fields: readonly ConditionField[]): string[] {
  return fields.filter((field) => conditions.assumed.includes(field)).map((field) => WORDS[field])
}

/** What a person calls a condition; undefined for one that no default stands for. @example conditionWords('floor') // 'kind of floor' */
export const conditionWords = (field: keyof Conditions): string | undefined => (WORDS as Partial<Record<keyof Conditions, string>>)[field]

/** A name as a sentence begins with it. @example startOf('your own heater') // 'Your own heater' */
export const startOf = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1)
