import type { FilterSpec } from '../catalog/spec.ts'
import { canisterFlow, canisterOf, type Canister, type FilterFlow } from './canister-flow.ts'
import { namesOf } from './make-finding.ts'
import type { Situation } from './situation.ts'
import { exactly, type Span, sumOf, times } from './span.ts'
import { FLOW_SHARE, RISE_SHARE } from './typical-ranges.ts'

/** What all filters of a build give together. */
export interface Delivery extends FilterFlow {
  /** As printed, together, L/h. */
  ratedLph: number
  /** Filters that were put on their pump's curve: with the strongest, all or some of them. */
  byCurve: 'all' | 'some' | 'none'
  strongest: { name: string; canister: Canister; flow: FilterFlow } | null
  each: ReadonlyArray<{ flow: FilterFlow; count: number; hoseMm: number | undefined }>
  /** All of them are return pumps: what is lost is lost to the rise. */
  lifts: boolean
  /** Nobody stated them; the flow runs over their ranges. */
  unstated: string[]
  /** Stood in for, whatever is stated. */
  defaults: string[]
}

/** Of a filter without a curve, its media leave a share of what is printed; of a return pump's flow, the rise. */
export const flowShare = (type: FilterSpec['type']): Span => (type === 'return_pump' ? RISE_SHARE : FLOW_SHARE)

function derated({ type }: FilterSpec, ratedLph: number): FilterFlow {
  const { low, high } = flowShare(type)
  return { loaded: exactly(ratedLph * low), clean: exactly(ratedLph * high) }
}

/** What somebody measured goes before what is reckoned. */
function flowOf(spec: FilterSpec, ratedLph: number, canister: Canister | null): FilterFlow {
  const { measuredFlowLph } = spec
  if (measuredFlowLph !== undefined) return { loaded: exactly(measuredFlowLph), clean: exactly(measuredFlowLph) }
  return canister === null ? derated(spec, ratedLph) : canisterFlow(canister)
}

/**
 * What the filters give: on their pump's curve where it is known, else the usual share of the printed flow. Undefined without a filter, or where one states
 * no flow.
 *
 * Units: L/h. Source: Darcy & Weisbach on a curve; the usual share is common practice.
 *
 * @example deliveryOf(situation)?.loaded // { low: 1000, high: 1000 } of one printed at 2000 L/h
 */
export function deliveryOf(situation: Situation): Delivery | undefined {
  const { filters } = situation.gear
  if (filters.length === 0) return undefined
  const flows = filters.map(({ spec, quantity: count, name }) => {
    const ratedLph = spec.ratedFlowLph
    if (ratedLph === undefined) return undefined
    const canister = canisterOf(spec, situation)
    const measured = spec.measuredFlowLph !== undefined
    return { name, canister, measured, ratedLph: ratedLph * count, flow: flowOf(spec, ratedLph, canister), count, hoseMm: spec.hoseMm }
  })
  const known = flows.filter((flow) => flow !== undefined)
  if (known.length < flows.length) return undefined
  const curved = known.flatMap(({ name, canister, flow, measured }) => (canister === null || measured ? [] : [{ name, canister, flow }]))
  const derates = known.some(({ canister, measured }) => canister === null && !measured)
  return {
    ratedLph: known.reduce((sum, { ratedLph }) => sum + ratedLph, 0),
    loaded: sumOf(known.map(({ flow, count }) => times(flow.loaded, count))),
    clean: sumOf(known.map(({ flow, count }) => times(flow.clean, count))),
    byCurve: curved.length === 0 ? 'none' : derates || curved.length < known.length ? 'some' : 'all',
    strongest: curved.reduce<Delivery['strongest']>(
      (best, each) => (best && best.canister.maxFlowLph >= each.canister.maxFlowLph ? best : each),
      null,
    ),
    lifts: filters.every(({ spec }) => spec.type === 'return_pump'),
    each: known.map(({ flow, count, hoseMm }) => ({ flow, count, hoseMm })),
    unstated: namesOf(...curved.map(({ canister }) => canister.unstated)),
    defaults: namesOf(
      curved.some(({ canister }) => canister.media) ? ['resistance of the media'] : [],
      derates ? ['flow that media leave'] : [],
    ),
  }
}
