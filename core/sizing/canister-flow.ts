import type { FilterSpec, TankSpec } from '../catalog/spec.ts'
import { seaWaterDensity } from '../water/density.ts'
import { SALINITY } from '../water/sea-salinity.ts'
import { waterViscosity } from '../water/viscosity.ts'
import { M3_S_PER_LPH, type FlowSystem } from './flow-system.ts'
import type { Gear } from './gear.ts'
import { bendThrough, operatingFlowLph, type PumpCurve } from './operating-point.ts'
import type { Situation } from './situation.ts'
import { exactly, type Span } from './span.ts'
import { sumpVolumes } from './sump.ts'
import {
  CURVE_BEND,
  FITTINGS,
  HOSES_OVER_HEIGHT,
  MEDIA_LOSS,
  PIPE_OVER_RISE,
  STAND_HEIGHT_MM,
  SUMP_HEIGHT_MM,
  SUMP_RUNNING,
} from './typical-ranges.ts'

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
  /** Between the water of a sump and the tank's rim; none in a canister's closed loop. */
  riseMm: Span
  /** Whether the flow goes through media: those of a sump stand beside its pump. */
  media: boolean
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
  const { maxHeadM, maxFlowLph, boreMm, lengthMm, fittings, viscosityM2S, riseMm } = canister
  return {
    staticHeadM: within(riseMm, 1 - ease) / 1000,
    boreMm,
    lengthMm: within(lengthMm, 1 - ease),
    fittings: within(fittings, 1 - ease),
    mediaLoss: !canister.media ? 0 : (MEDIA_LOSS[media] * maxHeadM) / (maxFlowLph * M3_S_PER_LPH) ** 2,
    viscosityM2S,
  }
}

/** Whether pump and hoses are known well enough: a canister's, or a sump's return pump's. */
export const isCurved = ({ type, ratedFlowLph, maxHeadM, hoseMm }: FilterSpec): boolean =>
  (type === 'canister' || type === 'return_pump') && ratedFlowLph !== undefined && maxHeadM !== undefined && hoseMm !== undefined

/**
 * The canister, or the return pump with its pipe, that a filter's spec describes; null where it is another kind of filter, or states no flow, head or hose. A stated point that is on no curve
 * between the printed flow and the highest head is taken as none.
 *
 * @example canisterOf({ type: 'canister', ratedFlowLph: 1400, maxHeadM: 1.9, hoseMm: 16 }, situation)?.unstated // ['form of the pump’s curve', …]
 */
export function canisterOf(spec: FilterSpec, situation: Situation): Canister | null {
  const { type, ratedFlowLph, maxHeadM, midHeadM, midFlowLph, hoseMm, hoseLengthMm, fittings } = spec
  if (!isCurved(spec) || ratedFlowLph === undefined || maxHeadM === undefined || hoseMm === undefined) return null
  const media = type === 'canister'
  const ends = { maxHeadM, maxFlowLph: ratedFlowLph }
  const bend = midHeadM === undefined || midFlowLph === undefined ? undefined : bendThrough(ends, { headM: midHeadM, flowLph: midFlowLph })
  const { targetC, water } = situation.conditions.livestock
  const salinity = SALINITY[water]
  return {
    ...ends,
    boreMm: hoseMm,
    bend: bend === undefined ? CURVE_BEND : exactly(bend),
    lengthMm: hoseLengthMm === undefined ? usualHoses(situation, type) : exactly(hoseLengthMm),
    fittings: fittings === undefined ? { low: FITTINGS.few, high: FITTINGS.many } : exactly(FITTINGS[fittings]),
    viscosityM2S: waterViscosity(targetC, salinity) / seaWaterDensity(salinity, targetC),
    riseMm: media ? exactly(0) : riseMm(situation),
    media,
    unstated: [
      ...(media ? [] : riseUnstated(situation)),
      ...(bend === undefined ? ['form of the pump’s curve'] : []),
      ...(hoseLengthMm === undefined ? ['length of the hoses'] : []),
      ...(fittings === undefined ? ['fittings in the hoses'] : []),
    ],
  }
}

/** What stands under the tank, and the tank. */
interface UnderTank {
  gear: Pick<Gear, 'stand' | 'sump' | 'tank'>
  tank: Pick<TankSpec, 'heightMm'>
}

const standMm = ({ gear }: UnderTank): Span => {
  const stand = gear.stand?.spec.heightMm
  return stand === undefined ? STAND_HEIGHT_MM : exactly(stand)
}

const higher = ({ low, high }: Span, byMm: number): Span => ({ low: low + byMm, high: high + byMm })

/** From the water of a sump on the floor of the stand to the tank's rim, mm. */
function riseMm(under: UnderTank): Span {
  const heightMm = under.gear.sump?.spec.heightMm
  const height = heightMm === undefined ? SUMP_HEIGHT_MM : exactly(heightMm)
  const share = sumpVolumes(under.gear)?.level ?? SUMP_RUNNING
  const level = { low: height.low * share.low, high: height.high * share.high }
  const rim = higher(standMm(under), under.tank.heightMm)
  return { low: rim.low - level.high, high: rim.high - level.low }
}

const riseUnstated = ({ gear, sump }: Situation): string[] => [
  ...(gear.stand?.spec.heightMm === undefined ? ['height of the stand'] : []),
  ...(sump ? [...(gear.sump?.spec.heightMm === undefined ? ['height of the sump'] : []), ...sump.unstated] : ['the sump']),
]

/** Both hoses of a canister that stands on the floor under the tank, or the pipe up from a sump, mm. */
export function usualHoses(under: UnderTank, type: FilterSpec['type']): Span {
  const [share, height] =
    type === 'return_pump' ? [PIPE_OVER_RISE, riseMm(under)] : [HOSES_OVER_HEIGHT, higher(standMm(under), under.tank.heightMm)]
  return { low: share.low * height.low, high: share.high * height.high }
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
