import { phrase, quantity } from '../units/quantity.ts'
import type { Action } from './finding.ts'
import { lossW } from './heat-loss.ts'
import type { Heating } from './heating.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'

/** Installed heat over the loss of the coldest room: room for draughts, an aged heater, a colder night. Common practice: a quarter. */
export const HEATER_RESERVE = 0.25
/** A heater stuck on stays this far below the danger mark to count as safe. Own: the accuracy of the heat balance in still air. */
export const STUCK_BAND_K = 1
/** Hardly any smaller heater is sold; a tank that needs less than two of these gets one. Common practice. */
const SMALLEST_HEATER_W = 25
/** Heaters are sold in steps; a limit is told to the next 5 W on its safe side. */
const STEP_W = 5
/** More than this many heaters is not a build anybody makes; an external controller is. Own. */
const MOST_HEATERS = 3

export interface HeaterChoice {
  count: number
  eachLowestW: number
  eachHighestW: number
}

/**
 * How many heaters of what power hold the coldest room together and harm nothing one stuck on; where no power does both at the low-loss end, those
 * that do at usual losses (then *marginal*); null where none does.
 *
 * Units:  W, rounded to 5 W on the safe side.
 * Source: own, from the two ends of the heat balance: two rather than one, so that one failing is no disaster.
 */
export function heaterChoice(situation: Situation, heating: Heating): HeaterChoice | null {
  const { dangerC } = situation.conditions.livestock
  const neededW = heatToChooseW(situation, heating)
  const strictW = over(heating.warm, ({ loss }) => lossW(loss, dangerC - STUCK_BAND_K)).low
  const usualW = over(heating.warmUsual, ({ loss }) => lossW(loss, dangerC)).low
  return choiceUnder(neededW, strictW - heating.applianceHeatW.high) ?? choiceUnder(neededW, usualW - heating.applianceHeatW.high)
}

/** The fewest heaters that bear `neededW` together, each at most `spareW`. */
function choiceUnder(neededW: number, spareW: number): HeaterChoice | null {
  const eachHighestW = Math.floor(spareW / STEP_W) * STEP_W
  const first = neededW < 2 * SMALLEST_HEATER_W && neededW <= eachHighestW ? 1 : 2
  for (let count = first; count <= MOST_HEATERS; count++) {
    const eachLowestW = Math.max(STEP_W, Math.ceil(neededW / count / STEP_W) * STEP_W)
    if (eachLowestW <= eachHighestW) return { count, eachLowestW, eachHighestW }
  }
  return null
}

/** What to do about a heater that is too weak or too strong, with the powers that would settle it. */
export function heaterAction(situation: Situation, heating: Heating): Action {
  const controlled = heating.heaters.length > 0 && heating.heaters.every(({ externalController }) => externalController)
  if (controlled) return strongerAction(situation, heating)
  const choice = heaterChoice(situation, heating)
  if (!choice) {
    const neededW = quantity(heatToChooseW(situation, heating), 'W', 0)
    const lid = situation.gear.lid === null ? phrase` A lid lowers the heat that is needed.` : phrase``
    return {
      text: phrase`No power both holds the coldest room and stays below the danger mark when stuck on. What would: heaters of ${neededW} in all switched by an external controller, or a room kept more even.${lid}`,
    }
  }
  const low = quantity(choice.eachLowestW, 'W', 0)
  const high = quantity(choice.eachHighestW, 'W', 0)
  const [what, each] = choice.count === 1 ? ['one heater', ''] : [`${choice.count} heaters`, ' each']
  const size = choice.eachLowestW === choice.eachHighestW ? phrase`${low}` : phrase`${low} to ${high}`
  return {
    text: phrase`Put in ${what} of ${size}${each}, or have an external controller switch them.`,
    want: { slot: 'heat', quantity: choice.count, minimum: { powerW: choice.eachLowestW }, maximum: { powerW: choice.eachHighestW } },
  }
}

/** Heat to install for the coldest room, reserve included, W. */
export function heatToChooseW(situation: Situation, heating: Heating): number {
  const { targetC } = situation.conditions.livestock
  return Math.max(0, (1 + HEATER_RESERVE) * over(heating.cold, ({ loss }) => lossW(loss, targetC)).high)
}

/** Heaters behind an external controller have no upper limit of their own. */
function strongerAction(situation: Situation, heating: Heating): Action {
  const eachW = Math.ceil(heatToChooseW(situation, heating) / 2 / STEP_W) * STEP_W
  return {
    text: phrase`Put in 2 heaters of at least ${quantity(eachW, 'W', 0)} each behind the controller.`,
    want: { slot: 'heat', quantity: 2, minimum: { powerW: eachW } },
  }
}
