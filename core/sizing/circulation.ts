import { phrase, quantity } from '../units/quantity.ts'
import { appliancesOf } from './appliances.ts'
import type { Delivery } from './filter-delivery.ts'
import { tankWater } from './filter-flow.ts'
import type { Finding, Verdict } from './finding.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'

/** Turnover an hour of pumps and filters together in salt water: least, and from where it is plenty. Common practice. */
const LEAST_PER_HOUR = 10
const GOOD_PER_HOUR = 20
/** Pumps are sold in steps; what is missing is told to the next of these above it. */
const STEP_LPH = 50

const turns = (times: number) => quantity(times, 'per_hour', 1)

/**
 * Whether pumps and filters together move salt water enough. Only in salt water.
 *
 * Value: turnover an hour, pumps as printed in free water and filters with loaded media. Limit: ten; *fits* from there.
 *
 * @example circulation(situation, deliveryOf(situation))?.value // 14.2 times an hour
 */
export function circulation(situation: Situation, delivery: Delivery | undefined): Finding | null {
  const { gear, conditions, tankUnstated, fillDefaults } = situation
  if (conditions.livestock.water !== 'salt') return null
  const water = tankWater(situation)
  const pumps = appliancesOf(gear).filter(({ kind }) => kind === 'circulation_pump')
  const pumpedLph = pumps.reduce((sum, { spec, quantity: count }) => sum + count * (spec.ratedFlowLph ?? 0), 0)
  const filtered = delivery?.loaded ?? { low: 0, high: 0 }
  const value = turns((pumpedLph + filtered.low) / water.high)
  const best = turns((pumpedLph + filtered.high) / water.low)
  const limit = { kind: 'at_least', low: quantity(LEAST_PER_HOUR, 'per_hour', 0) } as const
  const neededLph = Math.ceil((LEAST_PER_HOUR * water.high - filtered.low - pumpedLph) / STEP_LPH) * STEP_LPH
  const action = {
    text: phrase`Add circulation pumps of ${quantity(neededLph, 'L/h', 0)} or more together, one at each end.`,
    want: { slot: 'circulate', quantity: 1, minimum: { ratedFlowLph: neededLph } },
  } as const
  const judge = (times: number): Verdict => (times >= LEAST_PER_HOUR ? 'fits' : times >= LEAST_PER_HOUR / 2 ? 'marginal' : 'does_not_fit')
  const unstated = [
    ...(pumps.some(({ spec }) => spec.ratedFlowLph === undefined) ? ['flow of the circulation pump'] : []),
    ...(delivery === undefined && gear.filters.length > 0 ? ['flow of the filter'] : []),
  ]
  // A flow that nobody stated can only add: what is enough without it is enough.
  const most = unstated.length > 0 ? 'fits' : judge(best.value)
  const outcome = settled(judge(value.value), most, namesOf(unstated, tankUnstated, delivery?.unstated ?? []), fillDefaults)
  return makeFinding('circulation', {
    ...outcome,
    value,
    limit,
    reason: phrase`Pumps and filter together move the water ${value}; salt water is moved ${limit.low} at the least, and ${quantity(GOOD_PER_HOUR, 'per_hour', 0)} or more where corals of strong water live.`,
    action:
      outcome.verdict === 'fits' ? null : outcome.verdict === 'not_known' ? { ...action, text: phrase`Enter the printed flow.` } : action,
  })
}
