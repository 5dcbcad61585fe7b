/** Nitrate that the large change comes down to, mg/L (common practice). */
export const NITRATE_GOAL_MG_PER_L = 40

/**
 * Concentration left after equal water changes with clean water.
 *
 * Units: any concentration, share changed each time (0 to 1), whole changes.
 * Source: mass balance, C = C0 (1 − f)^n.
 *
 * @example afterWaterChanges(40, 0.3, 2) // 19.6
 */
export function afterWaterChanges(start: number, share: number, changes: number): number {
  return start * (1 - share) ** changes
}

/**
 * Equal water changes needed to come down to a concentration.
 *
 * Units: any concentration, both above 0; share changed each time (above 0, below 1); a whole count out, 0 where it is low already.
 *
 * @example waterChangesNeeded(40, 10, 0.25) // 5
 */
export function waterChangesNeeded(start: number, target: number, share: number): number {
  if (start <= target) return 0
  return Math.ceil(Math.log(target / start) / Math.log(1 - share))
}
