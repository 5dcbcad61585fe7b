import { asJudged, phrase, quantity, stated, type Phrase, type Quantity } from '../units/quantity.ts'
import type { LivestockGroup } from './conditions.ts'
import { equilibriumC } from './equilibrium.ts'
import type { Finding, Verdict } from './finding.ts'
import { STUCK_BAND_K, heaterAction } from './heater-choice.ts'
import type { Heating, OneHeater } from './heating.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'
import { judgeAtMost } from './verdict.ts'
import { leastHours } from './warm-up.ts'
import { assumedOf } from './words.ts'

/**
 * Where one heater that sticks on takes the water in the warmest room, while the other thermostats open.
 *
 * Value: balance temperature in °C at the low-loss end. Limit: the group's danger mark; *fits* from 1 K below it. Past the mark at the low-loss end
 * alone it is *marginal*, since back and bottom need not be insulated; past it at usual losses too, with the build's own cover, it does not fit. The
 * low-loss end has a lid on even where the build has none: anybody may lay one on, and the finding says so.
 * Heaters that an external controller switches are judged at the controller's cut-off, the group's highest comfortable temperature.
 *
 * @example heaterStuck(situation, heating)?.value // 34.3 °C, where the danger mark is 32 °C
 */
export function heaterStuck(situation: Situation, heating: Heating): Finding | null {
  const strongest = heating.heaters.filter((h) => !h.externalController).sort((a, b) => b.powerW.high - a.powerW.high)[0]
  if (!strongest) return heating.heaters.length > 0 ? switchedByController(situation, heating) : null
  const { conditions, lossUnstated, fillDefaults } = situation
  const danger = stated(conditions.livestock.dangerC, 'degC', 1)
  const hottest = stuckC(heating, 'high', strongest)
  const coolest = stuckC(heating, 'low', strongest)
  const worst = judge(hottest, stuckUsualC(heating, 'high', strongest), asJudged(danger))
  const outcome = settled(
    worst,
    judge(coolest, stuckUsualC(heating, 'low', strongest), asJudged(danger)),
    namesOf(heating.powerUnstated, heating.applianceUnstated, lossUnstated),
    namesOf(assumedOf(conditions, ['warmestRoomC']), fillDefaults),
  )
  return makeFinding('heater_stuck', {
    ...outcome,
    value: hottest,
    limit: { kind: 'at_most', high: danger },
    reason: reasonOf(situation, heating, strongest, hottest),
    action: outcome.verdict === 'fits' ? null : heaterAction(situation, heating, { check: 'heater_stuck', worst }),
    caution: 'heater',
  })
}

/** The least hours in which one heater stuck on takes the water from the target to the danger mark; undefined where it never does. */
export const hoursToDanger = ({ conditions }: Situation, heating: Heating, heater: OneHeater): number | undefined =>
  leastHours(heating.warm, heater.powerW.high + heating.applianceHeatW.high, conditions.livestock.targetC, conditions.livestock.dangerC)

/** Balance temperature with one heater stuck on, at an end of what is stated. Exported for the figures of the report. */
export function stuckC(heating: Heating, end: 'low' | 'high', heater: OneHeater): Quantity {
  const heatW = heater.powerW[end] + heating.applianceHeatW[end]
  return quantity(over(heating.warm, ({ loss }) => equilibriumC(loss, heatW))[end], 'degC', 1)
}

const stuckUsualC = (heating: Heating, end: 'low' | 'high', heater: OneHeater): Quantity =>
  quantity(over(heating.warmUsual, ({ loss }) => equilibriumC(loss, heater.powerW[end] + heating.applianceHeatW[end]))[end], 'degC', 1)

function judge(lowLoss: Quantity, usual: Quantity, dangerC: number): Verdict {
  const strict = judgeAtMost(lowLoss.value, dangerC, STUCK_BAND_K)
  return strict === 'does_not_fit' && usual.value <= dangerC ? 'marginal' : strict
}

function reasonOf(situation: Situation, heating: Heating, heater: OneHeater, hottest: Quantity): Phrase {
  const { warmestRoomC, livestock } = situation.conditions
  const room = stated(warmestRoomC, 'degC', 1)
  const danger = stated(livestock.dangerC, 'degC', 1)
  const start = phrase`In the warmest room, ${room}, a heater stuck on (${heater.name}) would take the water to ${hottest}${lidWords(heating)}`
  if (hottest.value <= asJudged(danger)) return phrase`${start}; these animals are in danger from ${danger}.`
  const hours = hoursToDanger(situation, heating, heater)
  const when = hours === undefined ? phrase`` : phrase` after ${quantity(hours, 'h', 0)}`
  const usual = stuckUsualC(heating, 'high', heater)
  const sides = heating.lidLaidOn ? 'Without it and with every side free' : 'With every side free'
  const free = usual.value <= asJudged(danger) ? phrase` ${sides} it would stay at ${usual}.` : phrase``
  return phrase`${start} where back and bottom keep the heat in. It passes the danger mark of these animals, ${danger},${when}.${free}`
}

const lidWords = ({ lidLaidOn }: Heating): string => (lidLaidOn ? ' with a lid laid on' : '')

/**
 * Where a heater's controller is set to cut off: the highest temperature that these animals are comfortable at, a kelvin or more below their danger mark,
 * never below the target, where it would hold the heater off for good.
 *
 * Units: °C. Source: own.
 *
 * @example controllerCutOffC({ targetC: 25, highestC: 28, dangerC: 32 }) // 28
 */
export const controllerCutOffC = ({ targetC, highestC, dangerC }: Pick<LivestockGroup, 'targetC' | 'highestC' | 'dangerC'>): number =>
  Math.max(targetC, Math.min(highestC, dangerC - STUCK_BAND_K))

function switchedByController(situation: Situation, heating: Heating): Finding {
  const { livestock } = situation.conditions
  const cutOff = stated(controllerCutOffC(livestock), 'degC', 1)
  const strongest = heating.heaters.reduce((a, b) => (b.powerW.high > a.powerW.high ? b : a))
  return makeFinding('heater_stuck', {
    verdict: 'fits',
    value: cutOff,
    limit: { kind: 'at_most', high: stated(livestock.dangerC, 'degC', 1) },
    reason: phrase`A thermostat that sticks would take the water to ${stuckC(heating, 'high', strongest)}${lidWords(heating)}, but the heater's own controller (${strongest.name}), set to ${cutOff}, switches it off first. Test it every month.`,
    assumed: ['cut-off of the controller'],
    caution: 'heater',
  })
}
