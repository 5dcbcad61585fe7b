import { livestockGroup } from '../catalog/livestock.ts'
import type { Install } from '../install.ts'
import type { ConditionField, Conditions, LivestockGroup, OnlyStated } from '../sizing/conditions.ts'
import { withMarks } from '../sizing/livestock-marks.ts'
import type { Need, NeedExact } from './need.ts'

type Defaults = Omit<Conditions, 'assumed' | 'livestock' | keyof OnlyStated>

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

function livestockOf(need: Need, install: Install): LivestockGroup {
  const group = livestockGroup(need.livestockId, install)
  if (group === undefined) throw new RangeError(`No livestock group "${need.livestockId}"`)
  return withMarks(group, need.exact)
}

/** A heated room varies by at least this much over a year: what a default keeps from the figure that was stated. Common practice. */
const ROOM_SPREAD_K = 4

/**
 * The room's ends in order. A default gives way to a stated figure that passes it and keeps 4 K from it; two stated figures in the wrong order, in a draft
 * that is older than the check, are taken as swapped.
 */
function roomOf(base: Defaults, { coldestRoomC, warmestRoomC }: NeedExact): Pick<Defaults, 'coldestRoomC' | 'warmestRoomC'> {
  const coldest = coldestRoomC ?? Math.min(base.coldestRoomC, (warmestRoomC ?? Infinity) - ROOM_SPREAD_K)
  const warmest = warmestRoomC ?? Math.max(base.warmestRoomC, (coldestRoomC ?? -Infinity) + ROOM_SPREAD_K)
  return { coldestRoomC: Math.min(coldest, warmest), warmestRoomC: Math.max(coldest, warmest) }
}

/** What somebody measured of the floor and the tap; nothing stands for what nobody did. */
const onlyStated = ({
  joistSpanMm,
  joistSpacingMm,
  joistLie,
  floorUse,
  waterChangePercent,
  tapC,
  altitudeM,
  siphonBelowMm,
  pipeVolumeL,
}: NeedExact): OnlyStated => ({
  ...(waterChangePercent === undefined ? {} : { waterChangePercent }),
  ...(tapC === undefined ? {} : { tapC }),
  ...(altitudeM === undefined ? {} : { altitudeM }),
  ...(siphonBelowMm === undefined ? {} : { siphonBelowMm }),
  ...(pipeVolumeL === undefined ? {} : { pipeVolumeL }),
  ...(joistSpanMm === undefined ? {} : { joistSpanMm }),
  ...(joistSpacingMm === undefined ? {} : { joistSpacingMm }),
  ...(joistLie === undefined ? {} : { joistLie }),
  ...(floorUse === undefined ? {} : { floorUse }),
})

/**
 * The need with every open question filled in by its default, the names of the assumed ones kept. Temperatures come in order whatever the need holds:
 * coldest ≤ warmest room, lowest ≤ target ≤ highest < danger.
 *
 * Errors: RangeError for a livestock group that is not in the table; the validator of a need refuses it before.
 *
 * @example resolveConditions({ ...emptyNeed(), exact: { coldestRoomC: 15 } }, install).assumed.includes('coldestRoomC') // false
 * @example resolveConditions({ ...emptyNeed(), exact: { coldestRoomC: 30 } }, install).warmestRoomC // 34, assumed
 */
export function resolveConditions(need: Need, install: Install): Conditions {
  const base = defaults(install)
  const stated: NeedExact = need.exact
  const fields = Object.keys(base) as Array<keyof Defaults>
  const assumed = fields.filter((field) => stated[field] === undefined && !STATED_BY_INSTALL.has(field))
  const given = Object.fromEntries(
    fields.filter((field) => stated[field] !== undefined).map((field) => [field, stated[field]]),
  ) as Partial<Defaults>
  return { ...base, ...given, ...roomOf(base, stated), ...onlyStated(stated), livestock: livestockOf(need, install), assumed }
}
