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

/** Halvings of the greatest flow: to a part in a million million. */
const HALVINGS = 40

/**
 * Flow at which a pump gives just the head that its system takes, L/h; none where the height alone is more than the pump has.
 *
 * Units:  as the parts say. Range: any curve and system of positive figures. Errors: none.
 * Source: the one falls and the other rises with the flow, so that halving finds where they meet.
 *
 * @example operatingFlowLph({ maxHeadM: 2, maxFlowLph: 1500, bend: 2 }, system) // 962.9 through 3 m of 16 mm hose and clean media
 */
export function operatingFlowLph(pump: PumpCurve, system: FlowSystem): number {
  if (system.staticHeadM >= pump.maxHeadM) return 0
  let low = 0
  let high = pump.maxFlowLph
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2
    if (pumpHeadM(pump, middle) > systemHeadM(system, middle)) low = middle
    else high = middle
  }
  return (low + high) / 2
}
