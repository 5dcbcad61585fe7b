import { phrase, quantity } from '../units/quantity.ts'
import { appliancesOf } from './appliances.ts'
import { waterSpan } from './filter-flow.ts'
import type { Finding, Verdict } from './finding.ts'
import { makeFinding } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'

/** What a box promises is for few animals: it should name this many times the water. Common practice. */
const GOOD_TIMES = 1.5

/**
 * Whether the skimmer's box names a tank large enough. Only where one is chosen for salt water: a small tank does without, by water changes.
 *
 * Value: tank size on the box. Limit: the water in use; *fits* from half as much again.
 *
 * @example skimmerSize(situation)?.value // 400 L, where 238 L are in use
 */
export function skimmerSize(situation: Situation): Finding | null {
  const { gear, conditions, waterUnstated, fillDefaults } = situation
  const skimmers = appliancesOf(gear).filter(({ kind }) => kind === 'skimmer')
  if (conditions.livestock.water !== 'salt' || skimmers.length === 0) return null
  const water = waterSpan(situation)
  const limit = { kind: 'at_least', low: quantity(water.high, 'L', 1) } as const
  const want = quantity(water.high * GOOD_TIMES, 'L', 0)
  const most = phrase`${water.low < water.high ? 'up to ' : ''}${limit.low}`
  const named = skimmers.reduce<number | undefined>(
    (sum, { spec, quantity: count }) =>
      sum === undefined || spec.ratedVolumeL === undefined ? undefined : sum + count * spec.ratedVolumeL,
    0,
  )
  if (named === undefined)
    return makeFinding('skimmer_size', {
      verdict: 'not_known',
      limit,
      reason: phrase`No tank size is stated for the skimmer; for ${most} of water it should name ${want} or more.`,
      action: { text: phrase`Enter the tank size on the skimmer's box.` },
      missing: ['tank size on the skimmer’s box'],
    })
  const value = quantity(named, 'L', 0)
  const judge = (litres: number): Verdict =>
    value.value < quantity(litres, 'L', 1).value ? 'does_not_fit' : value.value < Math.round(litres * GOOD_TIMES) ? 'marginal' : 'fits'
  const outcome = settled(judge(water.high), judge(water.low), waterUnstated, fillDefaults)
  return makeFinding('skimmer_size', {
    ...outcome,
    value,
    limit,
    reason: phrase`The skimmer's box names ${value}; there are ${most} of water, and for a usual stock it should name ${want} or more.`,
    action: outcome.verdict === 'fits' ? null : { text: phrase`Choose a skimmer whose box names ${want} or more, or change more water.` },
  })
}
