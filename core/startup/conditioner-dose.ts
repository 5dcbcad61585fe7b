import type { Gear } from '../sizing/gear.ts'

/** The bottle that is dosed: of several, the first whose label states a dose. */
export interface ConditionerDose {
  name: string
  ml: number
}

/**
 * Water conditioner for a volume of tap water, by the actual water and not the label's size.
 *
 * Units: litres in, millilitres out, unrounded. Null where no conditioner is there or its label states no dose.
 * Source: the maker's stated dose.
 *
 * @example conditionerDose(gear, 146) // { name: 'Stillwell 500 mL', ml: 14.6 } at 0.1 mL for a litre
 */
export function conditionerDose(gear: Gear, waterL: number): ConditionerDose | null {
  const bottle = gear.conditioners.find((each) => each.spec.doseMlPerL !== undefined)
  if (bottle?.spec.doseMlPerL === undefined) return null
  return { name: bottle.name, ml: waterL * bottle.spec.doseMlPerL }
}
