import { asJudged, phrase, quantity, stated, type Phrase, type Quantity } from '../units/quantity.ts'
import type { LivestockGroup } from './conditions.ts'
import { equilibriumC } from './equilibrium.ts'
import type { Finding, Verdict } from './finding.ts'
import { SPARE_BAND_K, heaterAction } from './heater-choice.ts'
import type { Heating } from './heating.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'
import { judgeAtLeast } from './verdict.ts'
import { leastHours } from './warm-up.ts'
import { assumedOf } from './words.ts'

/** A spare is a precaution: its lack is *marginal*, never *does not fit*; a build with two heaters is never judged below one with one. */
const asPrecaution = (verdict: Verdict): Verdict => (verdict === 'does_not_fit' ? 'marginal' : verdict)

/**
 * What the water holds in the coldest room after the strongest heater fails off.
 *
 * Value: balance temperature in °C at the high-loss end, and no more than the target: thermostats hold that. Limit: the group's lowest safe temperature; *fits* from 1 K above it.
 *
 * @example heaterSpare(situation, heating)?.value // 22.6 °C with one of two heaters of 100 W, where the animals bear 21 °C
 */
export function heaterSpare(situation: Situation, heating: Heating): Finding | null {
  if (heating.heaters.length === 0) return null
  const { conditions, lossUnstated, fillDefaults } = situation
  const { lowestC, targetC } = conditions.livestock
  const held = (end: 'low' | 'high') => oneFailedC(heating, end)
  const coldest = held('low')
  const told = toldOf(heating, coldest, targetC)
  const limit = stated(lowestC, 'degC', 1)
  const judge = (heldC: number) => asPrecaution(judgeAtLeast(heldC, asJudged(limit), SPARE_BAND_K))
  const worst = judge(coldest.value)
  const outcome = settled(
    worst,
    judge(held('high').value),
    namesOf(heating.powerUnstated, lossUnstated),
    namesOf(assumedOf(conditions, ['coldestRoomC']), fillDefaults),
  )
  const hours = leastHours(heating.cold, leftW(heating, 'low'), targetC, lowestC)
  const room = stated(conditions.coldestRoomC, 'degC', 1)
  const after =
    hours === undefined
      ? phrase`; the least that these animals bear is ${limit}`
      : phrase`. After ${quantity(hours, 'h', 0)} it is below ${limit}, the least that these animals bear`
  const left =
    told.value > targetC
      ? phrase`the room alone still keeps it at ${told}`
      : coldest.value >= targetC
        ? phrase`what is left still holds ${stated(targetC, 'degC', 1)}, with heat to spare`
        : phrase`the water falls to ${coldest}`
  const first = heating.heaters.length === 1 ? phrase`There is one heater and no spare. If it fails` : phrase`If the strongest heater fails`
  return makeFinding('heater_spare', {
    ...outcome,
    value: told,
    limit: { kind: 'at_least', low: limit },
    reason: phrase`${first} in the coldest room, ${room}, ${left}${after}.${powerCutWords(heating, conditions.livestock)}`,
    action: outcome.verdict === 'fits' ? null : heaterAction(situation, heating, { check: 'heater_spare', worst }),
    caution: 'heater',
  })
}

/** What the water is at: heat to spare does not warm it beyond what the thermostats are set to, a warm room does. */
function toldOf(heating: Heating, coldest: Quantity, targetC: number): Quantity {
  if (coldest.value <= targetC) return coldest
  const bareC = over(heating.cold, ({ loss }) => equilibriumC(loss, 0)).low
  return quantity(Math.max(targetC, bareC), 'degC', 1)
}

/** What is left after the strongest has failed, W. */
const leftW = ({ heaters, installedW }: Heating, end: 'low' | 'high'): number =>
  Math.max(0, installedW[end] - Math.max(...heaters.map(({ powerW }) => powerW[end])))

/** Balance temperature in the coldest room after the strongest heater has failed off, at an end of what is stated. */
export const oneFailedC = (heating: Heating, end: 'low' | 'high'): Quantity =>
  quantity(over(heating.cold, ({ loss }) => equilibriumC(loss, leftW(heating, end)))[end], 'degC', 1)

/**
 * The least hours in the coldest room until the water is as cold as these animals bear, all heat lost; undefined where it never is.
 *
 * Units: hours. Source: the heat balance at its high-loss end.
 *
 * @example powerCutHours(heating, { targetC: 25, lowestC: 21 }) // 9.6
 */
export const powerCutHours = (
  heating: Pick<Heating, 'cold'>,
  { targetC, lowestC }: Pick<LivestockGroup, 'targetC' | 'lowestC'>,
): number | undefined => leastHours(heating.cold, 0, targetC, lowestC)

/** Of several heaters: what a power cut does. One heater's failing is told already, and is the same. */
function powerCutWords(heating: Heating, livestock: LivestockGroup): Phrase {
  const hours = heating.heaters.length > 1 ? powerCutHours(heating, livestock) : undefined
  return hours === undefined
    ? phrase``
    : phrase` With all heat lost, as in a power cut, it is as cold as they bear after ${quantity(hours, 'h', 0)}.`
}
