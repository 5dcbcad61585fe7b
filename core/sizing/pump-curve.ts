import { pumpOf, systemOf } from './canister-flow.ts'
import type { Delivery } from './filter-delivery.ts'
import { tankWater, waterSpan } from './filter-flow.ts'
import { systemHeadM } from './flow-system.ts'
import { operatingFlowLph, pumpHeadM } from './operating-point.ts'
import type { CurvePoint, PumpCurveFigure } from './report.ts'
import type { Situation } from './situation.ts'
import { round, type Span } from './span.ts'

/** Enough for a smooth line on paper. */
const STEPS = 24
/** Everything unstated at its middle. */
const MIDDLE = 0.5

const wholeEnds = ({ low, high }: Span): Span => ({ low: round(low, 0), high: round(high, 0) })
const point = (flowLph: number, headM: number): CurvePoint => ({ flowLph: round(flowLph, 0), headM: round(headM, 3) })

/**
 * The curve of one filter's pump with what its hoses and media take, for a plot.
 *
 * Units: L/h and m. What nobody stated stands at the middle of its range; the ends of the flow that follow from it are told beside.
 *
 * @example pumpCurve({ name: 'Pellick C-1400', canister, flow }, situation).cleanAt // { flowLph: 962, headM: 1.176 }
 */
export function pumpCurve({ name: filter, canister, flow }: NonNullable<Delivery['strongest']>, situation: Situation): PumpCurveFigure {
  const pump = pumpOf(canister, MIDDLE)
  const { maxFlowLph, maxHeadM } = pump
  const flows = Array.from({ length: STEPS + 1 }, (_, step) => (maxFlowLph * step) / STEPS)
  const { flowFloorPerHour, flowCeilingPerHour } = situation.conditions.livestock
  const lphAt = (perHour: number, { low, high }: Span) => round((perHour * (low + high)) / 2, 0)
  const system = (media: 'clean' | 'loaded') => {
    const through = systemOf(canister, media, MIDDLE)
    const meets = operatingFlowLph(pump, through)
    const points = flows.map((lph) => point(lph, systemHeadM(through, lph))).filter(({ headM }) => headM <= maxHeadM)
    return { points, meets: point(meets, systemHeadM(through, meets)) }
  }
  const [cleanSystem, loadedSystem] = [system('clean'), system('loaded')]
  return {
    filter,
    pump: flows.map((lph) => point(lph, pumpHeadM(pump, lph))),
    clean: cleanSystem.points,
    loaded: loadedSystem.points,
    cleanAt: cleanSystem.meets,
    loadedAt: loadedSystem.meets,
    cleanLph: wholeEnds(flow.clean),
    loadedLph: wholeEnds(flow.loaded),
    floorLph: lphAt(flowFloorPerHour, waterSpan(situation)),
    ceilingLph: flowCeilingPerHour === null ? null : lphAt(flowCeilingPerHour, tankWater(situation)),
  }
}
