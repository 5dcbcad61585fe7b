import { controllerCutOffC } from '../sizing/heater-stuck.ts'
import { phrase } from '../units/quantity.ts'
import { caution } from './cautions.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject } from './startup-subject.ts'
import { limitC } from './temperatures.ts'

/**
 * The step that sets the controller outside the water, which switches a heater off whose own thermostat sticks. The sizing judged the build by it, so
 * it counts only once it is set and was seen to switch.
 *
 * Units:  cut-off and danger mark in °C, told in the reader's. `earliestDay` counts days from the start.
 * Errors: null where there is no heater, or one that no controller switches.
 * Source: cut-off as in the finding `heater_stuck`; the monthly test is common practice.
 *
 * @example controllerStep(subject, 1)?.id // 'set-controller'
 */
export function controllerStep({ gear, conditions }: StartupSubject, earliestDay: number): Step | null {
  const heaters = gear.heaters
  if (heaters.length === 0 || !heaters.every(({ spec }) => spec.externalController === true)) return null
  const count = heaters.reduce((sum, { quantity }) => sum + quantity, 0)
  const several = count > 1
  const it = several ? 'each heater' : 'the heater'
  return stepOf('fill', {
    id: 'set-controller',
    title: several ? 'Set the controllers, and see each switch off' : 'Set the controller, and see it switch off',
    why: phrase`A thermostat that sticks on goes on heating. The controller outside the water switches ${it} off before that harms anything.`,
    amounts: [
      { label: 'Cut off at', value: phrase`${limitC(controllerCutOffC(conditions.livestock))}` },
      { label: 'Danger mark', value: phrase`${limitC(conditions.livestock.dangerC)}: the water must never come to it` },
      ...(several ? [{ label: 'How many', value: phrase`${count} controllers, all set alike` }] : []),
    ],
    actions: [
      phrase`Fix the sensor under water where it moves, a hand's width from ${it}, so that it cannot slip out: in the air it would let the heater run on.`,
      phrase`Plug ${it} into ${several ? 'its' : 'the'} controller, and the controller into the outlet. Both cords hang in a drip loop, the controller above the water line.`,
      phrase`Turn the cut-off below what the thermometer reads: the heater's lamp must go out. Turn it back to the figure above.`,
      phrase`Do it again on the first day of every month.`,
    ],
    howLong: several ? 'about 10 min each' : 'about 10 min',
    stopAndAsk: phrase`the lamp stays on below the cut-off, or controller and thermometer are far apart. Unplug ${it} first, then ask.`,
    done: several ? 'Done: each switched off, all set to the cut-off' : 'Done: it switched off, and is set to the cut-off',
    earliestDay,
    caution: caution('unplug'),
  })
}
