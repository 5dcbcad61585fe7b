import type { FilterSpec, TankSpec } from '../catalog/spec.ts'
import { seaWaterDensity } from '../water/density.ts'
import { SALINITY } from '../water/sea-salinity.ts'
import { waterViscosity } from '../water/viscosity.ts'
import { M3_S_PER_LPH, type FlowSystem } from './flow-system.ts'
import type { Gear } from './gear.ts'
import { bendThrough, operatingFlowLph, type PumpCurve } from './operating-point.ts'
import type { Situation } from './situation.ts'
import { exactly, type Span } from './span.ts'
import { CURVE_BEND, FITTINGS, HOSE_OVER_HEIGHT, MEDIA_LOSS, STAND_HEIGHT_MM } from './typical-ranges.ts'

/** What a filter gives with loaded media and with clean ones, L/h, each over all that nobody stated. */
export interface FilterFlow {
  loaded: Span
  clean: Span
}

/** A filter whose pump's curve and hoses are known well enough to find where they meet. */
export interface Canister {
  maxHeadM: number
  maxFlowLph: number
  boreMm: number
  bend: Span
  lengthMm: Span
  fittings: Span
  viscosityM2S: number
  /** What of it nobody stated: "length of the hoses". */
  unstated: string[]
}

const within = (span: Span, share: number): number => span.low + share * (span.high - span.low)

/** One pump and its hoses; `ease` runs from 0, everything unstated at its worst for the flow, to 1, at its best. */
export const pumpOf = ({ maxHeadM, maxFlowLph, bend }: Canister, ease: number): PumpCurve => ({
  maxHeadM,
  maxFlowLph,
  bend: within(bend, ease),
})
export function systemOf(canister: Canister, media: keyof typeof MEDIA_LOSS, ease: number): FlowSystem {
  const { maxHeadM, maxFlowLph, boreMm, lengthMm, fittings, viscosityM2S } = canister
  return {
    staticHeadM: 0,
    boreMm,
    lengthMm: within(lengthMm, 1 - ease),
    fittings: within(fittings, 1 - ease),
    mediaLoss: (MEDIA_LOSS[media] * maxHeadM) / (maxFlowLph * M3_S_PER_LPH) ** 2,
    viscosityM2S,
  }
}

/**
 * The canister that a filter's spec describes; null where it is another kind of filter, or states no flow, head or hose. A stated point that is on no curve
 * between the printed flow and the highest head is taken as none.
 *
 * @example canisterOf({ type: 'canister', ratedFlowLph: 1400, maxHeadM: 1.9, hoseMm: 16 }, situation)?.unstated // ['form of the pump’s curve', …]
 */
export function canisterOf(spec: FilterSpec, situation: Situation): Canister | null {
  const { type, ratedFlowLph, maxHeadM, midHeadM, midFlowLph, hoseMm, hoseLengthMm, fittings } = spec
  if (type !== 'canister' || ratedFlowLph === undefined || maxHeadM === undefined || hoseMm === undefined) return null
  const ends = { maxHeadM, maxFlowLph: ratedFlowLph }
  const bend = midHeadM === undefined || midFlowLph === undefined ? undefined : bendThrough(ends, { headM: midHeadM, flowLph: midFlowLph })
  const { targetC, water } = situation.conditions.livestock
  const salinity = SALINITY[water]
  return {
    ...ends,
    boreMm: hoseMm,
    bend: bend === undefined ? CURVE_BEND : exactly(bend),
    lengthMm: hoseLengthMm === undefined ? usualHoses(situation) : exactly(hoseLengthMm),
    fittings: fittings === undefined ? { low: FITTINGS.few, high: FITTINGS.many } : exactly(FITTINGS[fittings]),
    viscosityM2S: waterViscosity(targetC, salinity) / seaWaterDensity(salinity, targetC),
    unstated: [
      ...(bend === undefined ? ['form of the pump’s curve'] : []),
      ...(hoseLengthMm === undefined ? ['length of the hoses'] : []),
      ...(fittings === undefined ? ['fittings in the hoses'] : []),
    ],
  }
}

/** Both hoses of a canister that stands on the floor under the tank, mm. */
export function usualHoses({ gear, tank }: { gear: Pick<Gear, 'stand'>; tank: Pick<TankSpec, 'heightMm'> }): Span {
  const stand = gear.stand?.spec.heightMm
  const under = stand === undefined ? STAND_HEIGHT_MM : exactly(stand)
  return {
    low: 2 * HOSE_OVER_HEIGHT.low * (under.low + tank.heightMm),
    high: 2 * HOSE_OVER_HEIGHT.high * (under.high + tank.heightMm),
  }
}

/** Where pump and hoses meet, with everything unstated at its worst and at its best. */
export function canisterFlow(canister: Canister): FilterFlow {
  const exact = canister.unstated.length === 0
  const over = (media: keyof typeof MEDIA_LOSS): Span => {
    const at = (ease: number) => operatingFlowLph(pumpOf(canister, ease), systemOf(canister, media, ease))
    return exact ? exactly(at(0)) : { low: at(0), high: at(1) }
  }
  return { loaded: over('loaded'), clean: over('clean') }
}
