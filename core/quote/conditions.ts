import { livestockGroup } from '../catalog/livestock.ts'
import type { Install } from '../install.ts'
import type { ConditionField, Conditions, LivestockGroup } from '../sizing/conditions.ts'
import type { Need, NeedExact } from './need.ts'

type Defaults = Omit<Conditions, 'assumed' | 'livestock'>

/**
 * What stands in for a question nobody answered. Each is marked *assumed* wherever it is used.
 *
 * 18 and 26 °C span a heated home over a year; 40 mm below the rim and 50 mm of substrate are common practice; an outlet
 * stands 300 mm above the floor and is reached within 600 mm; eight hours of light suit a new tank. All common practice.
 */
function defaults(install: Install): Defaults {
  return {
    coldestRoomC: 18,
    warmestRoomC: 26,
    waterBelowRimMm: 40,
    substrateDepthMm: 50,
    circuitVoltageV: install.circuitVoltageV,
    circuitCurrentA: install.circuitCurrentA,
    otherLoadW: 0,
    outletHeightMm: 300,
    outletDistanceMm: 600,
    circuitProtected: false,
    energyPriceMinor: install.energyPriceMinor,
    lightHoursPerDay: 8,
    plants: 'none',
    floor: 'unknown',
    disinfectant: 'unknown',
  }
}

/** Settings of the install are stated by its manager, so they are not assumptions about the customer. */
const STATED_BY_INSTALL: ReadonlySet<ConditionField> = new Set(['circuitVoltageV', 'circuitCurrentA', 'energyPriceMinor'])

function livestockOf(need: Need): LivestockGroup {
  const group = livestockGroup(need.livestockId)
  if (group === undefined) throw new RangeError(`No livestock group "${need.livestockId}"`)
  return {
    ...group,
    targetC: need.exact.targetC ?? group.targetC,
    dangerC: need.exact.dangerC ?? group.dangerC,
    lowestC: need.exact.lowestC ?? group.lowestC,
  }
}

/**
 * The need with every open question filled in by its default, the names of the assumed ones kept.
 * Errors: RangeError for a livestock group that is not in the table; the validator of a need refuses it before.
 *
 * @example resolveConditions({ ...emptyNeed(), exact: { coldestRoomC: 15 } }, install).assumed.includes('coldestRoomC') // false
 */
export function resolveConditions(need: Need, install: Install): Conditions {
  const base = defaults(install)
  const stated: NeedExact = need.exact
  const fields = Object.keys(base) as Array<keyof Defaults>
  const assumed = fields.filter((field) => stated[field] === undefined && !STATED_BY_INSTALL.has(field))
  const given = Object.fromEntries(
    fields.filter((field) => stated[field] !== undefined).map((field) => [field, stated[field]]),
  ) as Partial<Defaults>
  return { ...base, ...given, livestock: livestockOf(need), assumed }
}
