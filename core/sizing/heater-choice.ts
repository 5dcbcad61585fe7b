import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Action, Check, Verdict } from './finding.ts'
import { lossW } from './heat-loss.ts'
import { ratingsIn, sayLeast, sayPower, sayUnsold } from './heater-ratings.ts'
import type { Heating } from './heating.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'

/** Installed heat over the loss of the coldest room: room for draughts, an aged heater, a colder night. Common practice: a quarter. */
export const HEATER_RESERVE = 0.25
/** A heater stuck on stays this far below the danger mark to count as safe. Own: the accuracy of the heat balance in still air. */
export const STUCK_BAND_K = 1
/** After one heater has failed, comfortably above the lowest safe temperature. Own: the accuracy of the heat balance. */
export const SPARE_BAND_K = 1
/** With one of several heaters failed, the rest keeps the coldest room's water this close to the target, where a power allows it. Own rule, with the check of one stuck on. */
const LEFT_BELOW_TARGET_K = 2
/** Hardly any smaller heater is sold: none is advised, and a tank that needs less than two of these gets one. Common practice. */
const SMALLEST_HEATER_W = 25
/** Heaters are sold in steps; a limit is told to the next 5 W on its safe side. */
const STEP_W = 5
/** No stronger aquarium heater is sold for a household plug, and none can be entered. Common practice. */
const LARGEST_HEATER_W = 1000
/** More than this many heaters is not a build anybody makes; an external controller is. Own. */
const MOST_HEATERS = 3

/** The check that asks for other heaters, with its verdict at the unfavourable end of what is stated: an offer must better it. */
export interface Asking {
  check: Extract<Check, 'heater_stuck' | 'heater_holds' | 'heater_spare'>
  worst: Verdict
}

export interface HeaterChoice {
  count: number
  eachLowestW: number
  eachHighestW: number
  /** With one of them failed, the rest holds the target less 2 K in the coldest room. Never of a single heater. */
  oneHolds: boolean
}

/** Heat to install for the coldest room, reserve included, W. */
function heatToChooseW({ conditions }: Situation, heating: Heating): number {
  const { targetC } = conditions.livestock
  return Math.max(0, (1 + HEATER_RESERVE) * over(heating.cold, ({ loss }) => lossW(loss, targetC)).high)
}

/** Heat that must be left after one heater has failed, W; none where nobody asks for a spare. */
function heatToSpareW({ conditions }: Situation, heating: Heating, { check }: Asking): number {
  const { lowestC } = conditions.livestock
  return check === 'heater_spare' ? over(heating.cold, ({ loss }) => lossW(loss, lowestC + SPARE_BAND_K)).high : 0
}

/** Heat that must be left after one heater has failed to hold the target less 2 K, W. */
const heatLeftW = ({ conditions }: Situation, heating: Heating): number =>
  over(heating.cold, ({ loss }) => lossW(loss, conditions.livestock.targetC - LEFT_BELOW_TARGET_K)).high

/** The least that each must have so that all hold what is needed and what is left after one has failed holds `leftW`: on the 5 W above, and no less than is sold. */
function eachLowestW(count: number, neededW: number, leftW: number): number {
  const eachW = Math.max(neededW / count, count > 1 ? leftW / (count - 1) : 0)
  return Math.max(SMALLEST_HEATER_W, Math.ceil(eachW / STEP_W) * STEP_W)
}

/**
 * How many heaters of what power hold the coldest room together, harm nothing one stuck on, and better the verdict of the check that asks; where no power
 * is safe at the low-loss end, those that are at usual losses (then *marginal*); null where none is.
 *
 * Units:  W, rounded to 5 W on the safe side.
 * Source: own, from the two ends of the heat balance: two rather than one, so that one failing is no disaster. As few as there is a power for that is commonly
 *         sold; where a power allows it, those left after one has failed hold the target less 2 K; where none does, that gives way before safety does.
 *
 * @example heaterChoice(situation, heating, { check: 'heater_holds', worst: 'does_not_fit' })?.count // 2
 */
export function heaterChoice(situation: Situation, heating: Heating, asking: Asking): HeaterChoice | null {
  const { dangerC } = situation.conditions.livestock
  const strictW = over(heating.warm, ({ loss }) => lossW(loss, dangerC - STUCK_BAND_K)).low
  const usualW = over(heating.warmUsual, ({ loss }) => lossW(loss, dangerC)).low
  // At usual losses alone a heater stuck on is marginal: no better than what is already marginal.
  const bounds = asking.check === 'heater_stuck' && asking.worst === 'marginal' ? [strictW] : [strictW, usualW]
  for (const boundW of bounds) {
    const eachHighestW = Math.min(LARGEST_HEATER_W, Math.floor((boundW - heating.applianceHeatW.high) / STEP_W) * STEP_W)
    const choices = choicesUnder(eachHighestW, situation, heating, asking)
    const choice = choices.find((each) => ratingsIn(each).length > 0) ?? choices.find(({ oneHolds }) => oneHolds) ?? choices[0]
    if (choice) return choice
  }
  return null
}

/** All that hold and stay below a power, fewest first; of each count first those of which one may fail. */
function choicesUnder(eachHighestW: number, situation: Situation, heating: Heating, asking: Asking): HeaterChoice[] {
  const neededW = heatToChooseW(situation, heating)
  const spareW = heatToSpareW(situation, heating, asking)
  const leftW = Math.max(spareW, heatLeftW(situation, heating))
  const first = asking.check !== 'heater_spare' && neededW < 2 * SMALLEST_HEATER_W ? 1 : 2
  const choices: HeaterChoice[] = []
  for (let count = first; count <= MOST_HEATERS; count++) {
    const holds = { count, eachLowestW: eachLowestW(count, neededW, leftW), eachHighestW, oneHolds: count > 1 }
    const serves = { count, eachLowestW: eachLowestW(count, neededW, spareW), eachHighestW, oneHolds: false }
    choices.push(...(count > 1 ? [holds, serves] : [serves]))
  }
  return choices.filter((each) => each.eachLowestW <= eachHighestW)
}

/**
 * What to do about heaters that are too weak, too strong or without a spare: powers that better the verdict of the check that asks, else what would.
 *
 * @example heaterAction(situation, heating, { check: 'heater_stuck', worst: 'does_not_fit' }).want // { slot: 'heat', quantity: 2, minimum, maximum }
 */
export function heaterAction(situation: Situation, heating: Heating, asking: Asking): Action {
  const controlled = heating.heaters.length > 0 && heating.heaters.every(({ externalController }) => externalController)
  if (controlled) return strongerAction(situation, heating, asking)
  const choice = heaterChoice(situation, heating, asking)
  if (!choice) return { text: otherwise(situation, heating, asking) }
  const [what, each] = choice.count === 1 ? ['one heater', ''] : [`${choice.count} heaters`, ' each']
  // A controller switches off what sticks; it adds neither heat nor a spare.
  const those = heating.heaters.length === 1 ? 'the one' : 'those'
  const left = choice.count > 1 ? leftWords(situation, choice) : phrase``
  const or = asking.check === 'heater_stuck' ? `, or have an external controller switch ${those} in this build` : ''
  return {
    text: phrase`Put in ${what} of ${sayPower(choice)}${each}${or}.${sayUnsold(choice, or !== '')}${left}`,
    want: { slot: 'heat', quantity: choice.count, minimum: { powerW: choice.eachLowestW }, maximum: { powerW: choice.eachHighestW } },
  }
}

/** What is held with one of several failed, or why it is not. */
function leftWords({ conditions }: Situation, { oneHolds }: HeaterChoice): Phrase {
  const target = quantity(conditions.livestock.targetC, 'degC', 1)
  const held = quantity(conditions.livestock.targetC - LEFT_BELOW_TARGET_K, 'degC', 1)
  const [holds, why] = oneHolds
    ? ['holds', '']
    : ['does not hold even', ': of what is sold, a power that did would be too much when it sticks on']
  return phrase` Together they hold the target, ${target}; should one fail, what is left ${holds} ${held} in the coldest room${why}.`
}

/** Where so many watts are needed that no heaters that are sold have them. */
const unsold = (neededW: number): Phrase =>
  phrase`It takes ${quantity(neededW, 'W', 0)}, more than aquarium heaters have: ask a professional, keep the room warmer, or choose a lower target that the animals bear.`

/** Where no power betters the verdict: enough of it and a controller against the harm that it could do, a steadier room, a lid. */
function otherwise(situation: Situation, heating: Heating, asking: Asking): Phrase {
  const neededW = heatToChooseW(situation, heating)
  if (neededW > MOST_HEATERS * LARGEST_HEATER_W) return unsold(neededW)
  const lid = situation.gear.lid === null ? phrase` A lid lowers the heat that is needed.` : phrase``
  const room = phrase`with an external controller against one that sticks on, or a room kept more even.${lid}`
  if (asking.check === 'heater_spare') {
    const eachW = eachLowestW(2, neededW, heatToSpareW(situation, heating, asking))
    if (eachW > LARGEST_HEATER_W) return unsold(2 * eachW)
    const each = sayLeast(eachW)
    return phrase`No power both leaves a spare and stays below the danger mark when stuck on. What would: 2 heaters of at least ${each} each, ${room}`
  }
  const needed = quantity(Math.max(SMALLEST_HEATER_W, neededW), 'W', 0)
  const why =
    asking.worst === 'marginal'
      ? 'No power that holds the coldest room is safer when stuck on.'
      : 'No power both holds the coldest room and stays below the danger mark when stuck on.'
  return phrase`${why} What would: heaters of ${needed} in all, ${room}`
}

/** Heaters behind an external controller have no upper limit of their own. */
function strongerAction(situation: Situation, heating: Heating, asking: Asking): Action {
  const leftW = Math.max(heatToSpareW(situation, heating, asking), heatLeftW(situation, heating))
  const neededW = heatToChooseW(situation, heating)
  const count = [2, MOST_HEATERS].find((each) => eachLowestW(each, neededW, leftW) <= LARGEST_HEATER_W)
  if (count === undefined) return { text: unsold(Math.max(neededW, leftW)) }
  const eachW = eachLowestW(count, neededW, leftW)
  return {
    text: phrase`Put in ${count} heaters of at least ${sayLeast(eachW)} each, with a controller as now.`,
    want: { slot: 'heat', quantity: count, minimum: { powerW: eachW } },
  }
}
