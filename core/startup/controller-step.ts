import { controllerCutOffC } from '../sizing/heater-stuck.ts'
import { phrase } from '../units/quantity.ts'
import { caution } from './cautions.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject } from './startup-subject.ts'
import { limitC } from './temperatures.ts'

/** Every heater comes with a controller outside the water, and gets its power through it. */
export const isControlled = ({ gear: { heaters } }: StartupSubject): boolean =>
  heaters.length > 0 && heaters.every(({ spec }) => spec.externalController === true)

/**
 * The step that sets the controller outside the water, which switches a heater off whose own thermostat sticks. The sizing judged the build by it, so
 * it counts only once it is set and was seen to switch; it stands after the heaters are fixed, unplugged, and is what gives them power.
 *
 * Units:  cut-off and danger mark in °C, told in the reader's. `earliestDay` counts days from the start.
 * Errors: null where there is no heater, or one that no controller switches.
 * Source: cut-off as in the finding `heater_stuck`; the monthly test is common practice.
 *
 * @example controllerStep(subject, 1)?.id // 'set-controller'
 */
export function controllerStep(subject: StartupSubject, earliestDay: number): Step | null {
  if (!isControlled(subject)) return null
  const { gear, conditions } = subject
  const heaters = gear.heaters
  const count = heaters.reduce((sum, { quantity }) => sum + quantity, 0)
  const several = count > 1
  const it = several ? 'each heater' : 'the heater'
  const cutOff = phrase`${limitC(controllerCutOffC(conditions.livestock))}`
  return stepOf('fill', {
    id: 'set-controller',
    title: several ? 'Set the controllers, and see each switch off' : 'Set the controller, and see it switch off',
    why: phrase`A thermostat that sticks on goes on heating. The controller outside the water switches ${it} off before that harms anything.`,
    amounts: [
      { label: 'Cut off at', value: cutOff },
      { label: 'Danger mark', value: phrase`${limitC(conditions.livestock.dangerC)}: the water must never come to it` },
      ...(several ? [{ label: 'How many', value: phrase`${count} controllers, all set alike` }] : []),
    ],
    actions: [
      phrase`Everything stays unplugged while hands are in: the filter too.`,
      phrase`Fix the sensor under water where it moves, a hand's width from ${it}, so that it cannot slip out: in the air it would let the heater run on.`,
      phrase`Plug ${it} into ${several ? 'its' : 'the'} controller, which is not plugged in yet. Both cords hang in a drip loop, the controller above the water line.`,
      phrase`Hands out and dry. Plug the filter in, then ${several ? 'each' : 'the'} controller, and set ${several ? 'all to cut off' : 'it to cut off'} at ${cutOff}.`,
      phrase`The heater's lamp must be lit first. Is it dark? Turn the heater's own setting up, above what the thermometer reads, until it lights. With its dial under water: unplug all, turn it, plug in again.`,
      phrase`Then turn the cut-off below what the thermometer reads: the lamp must go out. Turn it back to ${cutOff}, and the heater to its own setting.`,
      phrase`Do it again on the first day of every month, with the lamp lit first.`,
    ],
    howLong: several ? 'about 10 min each' : 'about 10 min',
    stopAndAsk: phrase`the lamp never lights, or stays on when the cut-off is set below what the thermometer reads, or controller and thermometer are far apart. Unplug ${it} first, then ask.`,
    done: several
      ? 'Done: each lamp lit and went out, all set to the cut-off'
      : 'Done: the lamp lit and went out, and it is set to the cut-off',
    earliestDay,
    caution: caution('unplug'),
  })
}
