import type { Conditions } from './conditions.ts'
import type { Gear } from './gear.ts'

interface Subject {
  gear: Gear
  conditions: Conditions
}

/**
 * Whether all the water of a tank comes through a reverse-osmosis unit that leaves nothing of the tap's disinfectant in it. Salt water is mixed from what the
 * unit makes; in fresh water it is as a rule blended with the tap's, which is then treated as ever. Carbon before the membrane takes chlorine; what
 * chloramine sets free passes carbon and membrane, so that it takes a resin stage behind them.
 *
 * Source: common practice. A resin stage that nobody stated is none.
 *
 * @example isPurified({ gear: { ...gear, purifiers: [{ name: 'Stillwell RO 190', quantity: 1, spec: { deionising: true } }] }, conditions: reef }) // true
 */
export const isPurified = ({ gear, conditions }: Subject): boolean =>
  conditions.livestock.water === 'salt' &&
  (gear.purifiers ?? []).some(({ spec }) => spec.deionising === true || conditions.disinfectant === 'chlorine')

/**
 * What has to be taken out of the water before it goes into the tank.
 *
 * @example disinfectantIn(subject) // 'chloramine', where the tap has it and no reverse-osmosis unit takes it out
 */
export const disinfectantIn = (subject: Subject): Conditions['disinfectant'] =>
  isPurified(subject) ? 'none' : subject.conditions.disinfectant
