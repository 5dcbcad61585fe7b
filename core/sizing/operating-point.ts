import { systemHeadM, type FlowSystem } from './flow-system.ts'

/** A pump as its maker draws it: `H = H0·(1 − (Q/Q0)^bend)`; a bend of 1 is a straight line, of 2 a parabola. */
export interface PumpCurve {
  maxHeadM: number
  /** At no head. */
  maxFlowLph: number
  bend: number
}

/** Least and greatest bend; a point that asks for more says that it was misread. Own. */
const BEND = { low: 0.2, high: 20 } as const

/**
 * Bend of the curve through one point between its ends; undefined for a point that is on none.
 *
 * @example bendThrough({ maxHeadM: 2, maxFlowLph: 1500 }, { headM: 1.5, flowLph: 750 }) // 2
 */
export function bendThrough(ends: Omit<PumpCurve, 'bend'>, { headM, flowLph }: { headM: number; flowLph: number }): number | undefined {
  const head = headM / ends.maxHeadM
  const flow = flowLph / ends.maxFlowLph
  if (!(head > 0 && head < 1 && flow > 0 && flow < 1)) return undefined
  return Math.min(BEND.high, Math.max(BEND.low, Math.log(1 - head) / Math.log(flow)))
}

/** Head of a pump at a flow, m; none beyond its greatest flow. @example pumpHeadM({ maxHeadM: 2, maxFlowLph: 1500, bend: 1 }, 750) // 1 */
export const pumpHeadM = ({ maxHeadM, maxFlowLph, bend }: PumpCurve, flowLph: number): number =>
  Math.max(0, maxHeadM * (1 - (flowLph / maxFlowLph) ** bend))

/** A part in a million million of the greatest flow; a dozen steps are the rule, thirty the most that was found. */
const NEAR_ENOUGH = 1e-12
const MOST_STEPS = 60

/**
 * Flow at which a pump gives just the head that its system takes, L/h; none where the height alone is more than the pump has.
 *
 * Units:  as the parts say. Range: any curve and system of positive figures. Errors: none.
 * Source: the one falls and the other rises with the flow, so that there is one answer between none and the greatest flow: regula falsi that halves the
 *         end it keeps (Dowell & Jarratt, BIT 11 (1971) 168, from memory). Scaled by how far the last step came, as others do, it sticks at steep pumps.
 *
 * @example operatingFlowLph({ maxHeadM: 2, maxFlowLph: 1500, bend: 2 }, system) // 962.9 through 3 m of 16 mm hose and clean media
 */
export function operatingFlowLph(pump: PumpCurve, system: FlowSystem): number {
  const leftM = (flowLph: number): number => pumpHeadM(pump, flowLph) - systemHeadM(system, flowLph)
  let [kept, keptM] = [0, leftM(0)]
  if (keptM <= 0) return 0
  let [newest, newestM] = [pump.maxFlowLph, leftM(pump.maxFlowLph)]
  for (let step = 0; step < MOST_STEPS; step++) {
    const flow = newest - (newestM * (newest - kept)) / (newestM - keptM)
    if (Math.abs(flow - newest) <= NEAR_ENOUGH * pump.maxFlowLph) return flow
    const flowM = leftM(flow)
    if (flowM < 0 !== newestM < 0) [kept, keptM] = [newest, newestM]
    else keptM /= 2
    ;[newest, newestM] = [flow, flowM]
  }
  return newest
}
