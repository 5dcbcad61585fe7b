import { asJudged, phrase, quantity, stated } from '../units/quantity.ts'
import { equilibriumC } from './equilibrium.ts'
import { FINDING_CAUTIONS } from './finding-cautions.ts'
import type { Finding, Verdict } from './finding.ts'
import { SPARE_BAND_K, heaterAction } from './heater-choice.ts'
import type { Heating } from './heating.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'
import { judgeAtLeast } from './verdict.ts'
import { hoursBetween } from './warm-up.ts'
import { assumedOf } from './words.ts'

/** A spare is a precaution: its lack is *marginal*, never *does not fit*; a build with two heaters is never judged below one with one. */
const asPrecaution = (verdict: Verdict): Verdict => (verdict === 'does_not_fit' ? 'marginal' : verdict)

/**
 * What the water holds in the coldest room after the strongest heater fails off.
 *
 * Value: balance temperature in °C at the high-loss end. Limit: the group's lowest safe temperature; *fits* from 1 K above it.
 *
 * @example heaterSpare(situation, heating)?.value // 22.6 °C with one of two heaters of 100 W, where the animals bear 21 °C
 */
export function heaterSpare(situation: Situation, heating: Heating): Finding | null {
  if (heating.heaters.length === 0) return null
  const { conditions, tankUnstated, coverUnstated, fillDefaults } = situation
  const { lowestC, targetC } = conditions.livestock
  const left = (end: 'low' | 'high') => Math.max(0, heating.installedW[end] - Math.max(...heating.heaters.map(({ powerW }) => powerW[end])))
  const held = (end: 'low' | 'high') => quantity(over(heating.cold, ({ loss }) => equilibriumC(loss, left(end)))[end], 'degC', 1)
  const coldest = held('low')
  const limit = stated(lowestC, 'degC', 1)
  const judge = (heldC: number) => asPrecaution(judgeAtLeast(heldC, asJudged(limit), SPARE_BAND_K))
  const worst = judge(coldest.value)
  const outcome = settled(
    worst,
    judge(held('high').value),
    namesOf(heating.powerUnstated, tankUnstated, coverUnstated),
    namesOf(assumedOf(conditions, ['coldestRoomC']), fillDefaults),
  )
  const hours = over(
    heating.cold,
    ({ loss, capacityJPerK }) => hoursBetween(loss, capacityJPerK, left('low'), targetC, lowestC) ?? Infinity,
  ).low
  const room = stated(conditions.coldestRoomC, 'degC', 1)
  const after = Number.isFinite(hours)
    ? phrase`. After ${quantity(hours, 'h', 0)} it is below ${limit}, the least that these animals bear`
    : phrase`; the least that these animals bear is ${limit}`
  const first = heating.heaters.length === 1 ? phrase`There is one heater and no spare. If it fails` : phrase`If the strongest heater fails`
  return makeFinding('heater_spare', {
    ...outcome,
    value: coldest,
    limit: { kind: 'at_least', low: limit },
    reason: phrase`${first} in the coldest room, ${room}, the water falls to ${coldest}${after}.`,
    action: outcome.verdict === 'fits' ? null : heaterAction(situation, heating, { check: 'heater_spare', worst }),
    source: { tag: 'own', text: 'Heat balance at its high-loss end (ISO 6946, ASHRAE form); that one heater may fail is common practice.' },
    caution: FINDING_CAUTIONS.heater,
  })
}
