import { phrase } from '../units/quantity.ts'
import { protectionCaution } from './cautions.ts'
import { dripLoopNotComputed, dripLoopStep } from './drip-loop-step.ts'
import { protectiveDevice } from './protective-device.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject, type StepsMade } from './startup-subject.ts'
import { isHeated } from './temperatures.ts'
import { tankFacts, type TankFacts } from './tank-facts.ts'

/**
 * Drip loops and the protective device, before anything is switched on.
 *
 * Errors: without the heights the loops are measured with a string, and `notComputed` says so; without an appliance there is no loop to make.
 * Source: common practice; the cords from the report's finding.
 *
 * @example powerSteps(subject).steps.map((step) => step.id) // ['drip-loops', 'test-protection']
 */
export function powerSteps(subject: StartupSubject): StepsMade {
  const loops = dripLoopStep(subject)
  return { steps: [...(loops === null ? [] : [loops]), protection(subject, tankFacts(subject))], notComputed: dripLoopNotComputed(subject) }
}

function protection(subject: StartupSubject, { holdDays }: TankFacts): Step {
  const { gear, conditions } = subject
  const device = protectiveDevice(subject)
  const strip = gear.power.find((each) => each.spec.protective === true)
  const present = strip !== undefined || conditions.circuitProtected
  return stepOf('power', {
    id: 'test-protection',
    title: present ? `Press TEST on the ${device}` : `Get a ${device} first`,
    why: phrase`It cuts the current when it leaks through water or a person. Test it monthly, or do not trust it.`,
    amounts: [
      {
        label: 'Where',
        value: strip ? phrase`${strip.name}` : present ? phrase`in the circuit, at the outlet or the panel` : phrase`none in this plan`,
      },
    ],
    actions: present
      ? [
          phrase`Plug in a lamp, press TEST: the lamp must go out. Press RESET: it must come back.`,
          phrase`Do it again on the first day of every month. After every trip ${isHeated(subject) ? 'look at the heater: a night without heat is cold' : 'see that the filter runs again'}.`,
        ]
      : [
          phrase`Ask a licensed electrician for a protected outlet, or buy a protected strip or adapter.`,
          phrase`Plug nothing in before that.`,
        ],
    howLong: present ? 'about 2 min' : 'until it is there',
    stopAndAsk: phrase`the lamp stays on, it will not reset, or it trips by itself. Use nothing on that outlet; a licensed electrician decides.`,
    done: present ? 'Done: TEST cuts, RESET brings back' : 'Done: a protective device is in and tested',
    earliestDay: holdDays,
    caution: protectionCaution(protectiveDevice(subject)),
  })
}
