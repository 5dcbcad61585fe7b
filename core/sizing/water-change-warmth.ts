import { phrase, quantity, stated, type Phrase } from '../units/quantity.ts'
import { changesOf, USUAL_CHANGE_PERCENT } from './change-share.ts'
import type { Conditions } from './conditions.ts'
import type { Heating } from './heating.ts'
import type { Situation } from './situation.ts'
import { mostHours } from './warm-up.ts'
import { weeklyChange } from './weekly-change.ts'

/** Cold tap water in winter where nobody measured it. Common practice. */
export const USUAL_TAP_C = 12
/** A fall or rise of more than this at once shocks fish. Common practice. */
export const SHOCK_K = 2

/** A water change as the animals feel it. */
export interface WaterChange {
  sharePercent: number
  tapC: number
  /** Tank water and new water mixed, before glass and substrate give anything back. */
  mixedC: number
  /** Until the target is held again in the coldest room; undefined where it never is. */
  hours: number | undefined
}

/** Water at one temperature with a share of it replaced by water of another, °C. @example mixedC(25, 12, 0.25) // 21.75 */
export const mixedC = (tankC: number, tapC: number, share: number): number => tankC - share * (tankC - tapC)

/**
 * What a water change with water straight from the tap does, and how long all heaters take to make it good.
 *
 * The share is the stated one, else that of the checklist's weekly change.
 * Units:  percent, °C, hours. Source: mixing by volume; warm-up by the heat balance at its high-loss end.
 *
 * @example waterChange(situation, heating).mixedC // 21.75: a quarter of 25 °C for tap water of 12 °C
 */
export function waterChange(situation: Situation, heating: Heating): WaterChange {
  const { waterChangePercent, tapC = USUAL_TAP_C, livestock } = situation.conditions
  const { percent: sharePercent } = changesOf(weeklyChange(situation), waterChangePercent)
  const mixed = mixedC(livestock.targetC, tapC, sharePercent / 100)
  return { sharePercent, tapC, mixedC: mixed, hours: mostHours(heating.cold, heating.installedW.low, mixed, livestock.targetC) }
}

/** Words for what nobody stated of it. */
function takenWords({ waterChangePercent, tapC }: Conditions, sharePercent: number): string {
  const byWeek = sharePercent !== (waterChangePercent ?? USUAL_CHANGE_PERCENT)
  const share = byWeek ? ', the share by the weekly change' : waterChangePercent === undefined ? ', the share as usual' : ''
  const taken = `${share}${tapC === undefined ? ', the temperature as usual in winter' : ''}`
  return taken && `${taken},`
}

/** Salt water is mixed before it is changed: as cold as the tap's, where nobody warmed it. */
const newWater = ({ livestock }: Conditions): string => (livestock.water === 'salt' ? 'salt water of the tap’s' : 'tap water of')

/** A water change told: where it takes the water, for how long, and what not to do to the animals. */
export function waterChangeWords(situation: Situation, heating: Heating): Phrase {
  const { conditions } = situation
  const change = waterChange(situation, heating)
  const { targetC } = conditions.livestock
  const share = quantity(change.sharePercent, 'percent', 0)
  const mixed = quantity(change.mixedC, 'degC', 1)
  const water = newWater(conditions)
  const start = phrase` Changing ${share} for ${water} ${stated(change.tapC, 'degC', 1)}${takenWords(conditions, change.sharePercent)} leaves ${mixed}`
  const back = change.hours === undefined ? phrase`` : phrase`, made good after ${quantity(Math.max(1, change.hours), 'h', 0)}`
  if (Math.abs(targetC - change.mixedC) <= SHOCK_K) return phrase`${start}${back}.`
  const colder = change.mixedC < targetC
  const bearableC = targetC + ((colder ? -1 : 1) * SHOCK_K * 100) / change.sharePercent
  const bring = phrase`bring the new water to ${quantity(bearableC, 'degC', 1)} or ${colder ? 'more' : 'less'} first`
  return phrase`${start}${back}. A step of more than ${quantity(SHOCK_K, 'K', 0)} at once shocks fish: ${bring}.`
}
