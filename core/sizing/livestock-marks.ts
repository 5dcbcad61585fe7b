import type { LivestockGroup } from './conditions.ts'

/** Marks of temperature that an advisor may set over those of a livestock group, °C. Absent is the group's. */
export interface MarkOverrides {
  lowestC?: number | undefined
  targetC?: number | undefined
  dangerC?: number | undefined
}

/** A mark that only an impossible pair forces, or a comfort mark under a low danger mark, stays this far below danger. Own: the band of the heater check. */
const BELOW_DANGER_K = 1

export interface MarkFault {
  field: keyof MarkOverrides
  message: string
}

/**
 * Stated marks that contradict the group's own, each with field, limit and fix. A pair that is stated on both sides is not looked at: its own validator does.
 *
 * Units: °C. Rule: lowest ≤ target < danger.
 *
 * @example markFaults(smallTropical, { targetC: 18 })[0]?.field // 'targetC': the group bears 21 °C at the least
 */
export function markFaults(group: LivestockGroup, stated: MarkOverrides): MarkFault[] {
  const { lowestC = group.lowestC, targetC = group.targetC, dangerC = group.dangerC } = stated
  const own = `of this group (${group.name})`
  const faults: MarkFault[] = []
  if (lowestC > targetC && stated.lowestC === undefined)
    faults.push({
      field: 'targetC',
      message: `Target temperature is ${targetC} °C, below the lowest safe temperature ${own}, ${lowestC} °C. Enter at least ${lowestC} °C, or a lower lowest safe temperature.`,
    })
  if (lowestC > targetC && stated.targetC === undefined)
    faults.push({
      field: 'lowestC',
      message: `Lowest safe temperature is ${lowestC} °C, above the target ${own}, ${targetC} °C. Enter at most ${targetC} °C, or a higher target temperature.`,
    })
  if (targetC >= dangerC && stated.dangerC === undefined)
    faults.push({
      field: 'targetC',
      message: `Target temperature is ${targetC} °C and the danger mark ${own} ${dangerC} °C. Enter less than ${dangerC} °C, or a higher danger mark.`,
    })
  if (targetC >= dangerC && stated.targetC === undefined)
    faults.push({
      field: 'dangerC',
      message: `Danger mark is ${dangerC} °C and the target ${own} ${targetC} °C. Enter more than ${targetC} °C, or a lower target temperature.`,
    })
  return faults
}

/**
 * The group with stated marks in place of its own, in order: lowest ≤ target ≤ highest < danger. What `markFaults` accepts is kept as it was stated.
 *
 * A contradiction, in a draft that is older than the check, is settled one way: the danger mark is never moved, the target gives way to it, and a stated
 * mark moves the group's rather than the other way round.
 *
 * @example withMarks(smallTropical, { targetC: 30 }).highestC // 30: comfort ends at 28 °C for the group
 * @example withMarks(smallTropical, { targetC: 18 }).lowestC // 18
 */
export function withMarks(group: LivestockGroup, stated: MarkOverrides): LivestockGroup {
  const dangerC = stated.dangerC ?? group.dangerC
  const wantedC = stated.targetC ?? Math.max(group.targetC, stated.lowestC ?? group.lowestC)
  const targetC = wantedC < dangerC ? wantedC : dangerC - BELOW_DANGER_K
  const lowestC = Math.min(stated.lowestC ?? group.lowestC, targetC)
  const highestC = Math.max(targetC, Math.min(group.highestC, dangerC - BELOW_DANGER_K))
  return { ...group, lowestC, targetC, highestC, dangerC }
}

/** Where a group's marks come from, to stand beside a finding. @example groupSource(smallTropical) // 'The keeping trade’s marks for this group (Small tropical community): small shoaling …' */
export const groupSource = ({ name, source, standing }: Pick<LivestockGroup, 'name' | 'source' | 'standing'>): string =>
  `${standing === undefined ? 'The keeping trade’s marks for this group' : standing === 'own' ? 'This place’s own marks for this group' : 'Marks edited here for this group'} (${name}): ${source}`
