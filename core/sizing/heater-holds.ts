import { phrase, quantity, stated, type Phrase } from '../units/quantity.ts'
import { equilibriumC } from './equilibrium.ts'
import type { Finding } from './finding.ts'
import { HEATER_RESERVE, heaterAction } from './heater-choice.ts'
import { lossW } from './heat-loss.ts'
import type { Heating } from './heating.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'
import { judgeAtLeast } from './verdict.ts'
import { mostHours } from './warm-up.ts'
import { waterChangeWords } from './water-change-warmth.ts'
import { assumedOf } from './words.ts'

/**
 * Whether the heaters together hold the wanted temperature in the coldest room.
 *
 * Value: installed W. Limit: the loss there at the high-loss end; *fits* from a quarter above it.
 * A tank that stays above the animals' lowest temperature by itself needs no heater and fits.
 *
 * @example heaterHolds(situation, heating).limit // at least 149 W: 75 gal kept at 25 °C in a room of 18 °C, with a quarter in reserve
 */
export function heaterHolds(situation: Situation, heating: Heating): Finding {
  const { conditions, lossUnstated, fillDefaults } = situation
  const { targetC, lowestC } = conditions.livestock
  const defaults = namesOf(assumedOf(conditions, ['coldestRoomC']), fillDefaults)
  const loss = over(heating.cold, (each) => Math.max(0, Math.round(lossW(each.loss, targetC))))
  const bare = over(heating.cold, (each) => Math.round(equilibriumC(each.loss, 0) * 10) / 10)
  const bearC = quantity(lowestC, 'degC', 1).value
  if (bare.low >= bearC) return withoutHeat(situation, bare.low, namesOf(lossUnstated, defaults))
  const value = quantity(heating.installedW.low, 'W', 0)
  const unstated = namesOf(heating.powerUnstated, lossUnstated)
  const worst = judgeAtLeast(value.value, loss.high, loss.high * HEATER_RESERVE)
  const best =
    bare.high >= bearC ? 'fits' : judgeAtLeast(quantity(heating.installedW.high, 'W', 0).value, loss.low, loss.low * HEATER_RESERVE)
  const outcome = settled(worst, best, unstated, defaults)
  return makeFinding('heater_holds', {
    ...outcome,
    ...(outcome.verdict === 'not_known' && heating.powerUnstated.length > 0 ? {} : { value }),
    limit: { kind: 'at_least', low: quantity(loss.high, 'W', 0) },
    reason: reasonOf(situation, heating, loss.high),
    action: outcome.verdict === 'fits' ? null : heaterAction(situation, heating, { check: 'heater_holds', worst }),
    caution: 'heater',
  })
}

function withoutHeat(situation: Situation, bareC: number, assumed: string[]): Finding {
  const { lowestC } = situation.conditions.livestock
  const held = quantity(bareC, 'degC', 1)
  return makeFinding('heater_holds', {
    verdict: 'fits',
    value: held,
    limit: { kind: 'at_least', low: stated(lowestC, 'degC', 1) },
    reason: phrase`In the coldest room, ${stated(situation.conditions.coldestRoomC, 'degC', 1)}, the water stays at ${held} without any heat; the least that these animals bear is ${stated(lowestC, 'degC', 1)}.`,
    assumed,
  })
}

function reasonOf(situation: Situation, heating: Heating, lossHighW: number): Phrase {
  const { coldestRoomC, livestock } = situation.conditions
  const room = stated(coldestRoomC, 'degC', 1)
  const target = stated(livestock.targetC, 'degC', 1)
  const loses = phrase`In the coldest room, ${room}, the tank loses up to ${quantity(lossHighW, 'W', 0)} at ${target}.`
  const installedW = heating.installedW.low
  if (heating.heaters.length === 0)
    return phrase`${loses} No heater is chosen, and without one the water falls below what these animals bear.`
  if (heating.powerUnstated.length > 0) return phrase`${loses} The heater's power is not stated.`
  const one = heating.heaters.length === 1
  const duty = quantity((100 * lossHighW) / Math.max(installedW, 1), 'percent', 0)
  if (installedW < lossHighW) {
    const held = over(heating.cold, ({ loss }) => equilibriumC(loss, installedW)).low
    return phrase`${loses} Running all the time, ${one ? 'the heater' : 'the heaters'} cannot hold that: it takes ${duty} of what ${one ? 'it has' : 'they have'}, and the water settles at ${quantity(held, 'degC', 1)}.`
  }
  const hours = mostHours(heating.cold, installedW, coldestRoomC, livestock.targetC)
  const warmUp = hours === undefined ? phrase`` : phrase` A fill as cold as the room is warm after ${quantity(hours, 'h', 0)}.`
  return phrase`${loses} ${one ? 'The heater runs' : 'The heaters run'} ${duty} of the time to make that good.${warmUp}${waterChangeWords(situation, heating)}`
}
