/** The loop hangs this far below the lower end of the cord. Common practice: 0.10 m. */
export const LOOP_DROP_MM = 100
/** Cord left over for moving a plug or a pump. Common practice: 0.3 m. */
export const CORD_SLACK_MM = 300

/** A cord from an appliance to an outlet, lengths in mm, heights above the floor. */
export interface CordRun {
  exitHeightMm: number
  outletHeightMm: number
  distanceMm: number
}

export interface DripLoop {
  /** Height of the loop's low point above the floor. */
  lowPointMm: number
  /** Low point's distance from the appliance, along the floor. */
  lowPointFromTankMm: number
  /** The shortest cord that touches the low point. */
  shortestMm: number
  /** Hanging straight down to the outlet's side, before slack. */
  hangingMm: number
  /** What to have: hanging form and 0.3 m of slack. */
  neededMm: number
}

/**
 * Cord that a drip loop needs, so that water running down it falls off below the outlet.
 *
 * Units:  mm in and out, unrounded.
 * Errors: null where an end is less than 0.10 m above the floor: there is no room for the loop to hang.
 * Source: mirror principle (own), hanging form and slack common practice.
 *
 * @example dripLoop({ distanceMm: 600, exitHeightMm: 1350, outletHeightMm: 300 }) // lowPointMm 200, shortestMm 1386.5, hangingMm 1397.1, neededMm 1697.1
 */
export function dripLoop({ exitHeightMm, outletHeightMm, distanceMm }: CordRun): DripLoop | null {
  const lowPointMm = Math.min(exitHeightMm, outletHeightMm) - LOOP_DROP_MM
  if (!(lowPointMm >= 0)) return null
  const down = exitHeightMm - lowPointMm
  const up = outletHeightMm - lowPointMm
  const hangingMm = Math.hypot(distanceMm, down) + up
  return {
    lowPointMm,
    lowPointFromTankMm: (distanceMm * down) / (down + up),
    shortestMm: Math.hypot(distanceMm, down + up),
    hangingMm,
    neededMm: hangingMm + CORD_SLACK_MM,
  }
}
