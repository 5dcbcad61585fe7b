import type { Check } from '../sizing/finding.ts'
import { phrase, type Phrase } from '../units/quantity.ts'
import type { Formula } from './formulas.ts'

const LOSS =
  'Heat lost = sum over the sides of area × (water − room) ÷ thermal resistance (film of air, pane, film of water) + water that evaporates × its heat'

const balance = (gets: string): Phrase => phrase`The temperature at which the water loses what it gets: heat lost = ${gets}. ${LOSS}`

/** Formulas of the checks that stand on the heat balance. */
export const HEAT_FORMULAS = {
  heater_stuck: ({ assumed }) =>
    assumed.includes('cut-off of the controller')
      ? phrase`The controller cuts off at the highest temperature that the animals are comfortable at, a degree Celsius or more below their danger mark.`
      : phrase`${balance('the strongest heater + pumps + half of the lamps’ power')}, at the end that loses least: humid air, a lid on, back and bottom insulated. Held against the danger mark; it fits from one degree Celsius below.`,
  heater_holds: ({ value }) =>
    value?.unit === 'degC'
      ? phrase`${balance('nothing')}, in the coldest room at the end that loses most. Held against the least that the animals bear: no heater is needed.`
      : phrase`${LOSS}, in the coldest room at the end that loses most: dry air, every side free. The heaters’ watts are held against it; they fit with a quarter to spare.`,
  heater_spare: () =>
    phrase`${balance('the heaters without the strongest')}, in the coldest room at the end that loses most, and no more than the target, which the thermostats hold. Held against the least that the animals bear.`,
  warm_room: () =>
    phrase`${balance('pumps + half of the lamps’ power − what a chiller takes out')}, in the warmest room at usual losses. Held against the highest that the animals are comfortable at.`,
} satisfies Partial<Record<Check, Formula>>
