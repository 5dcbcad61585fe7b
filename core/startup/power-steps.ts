import { LOOP_DROP_MM } from '../sizing/drip-loop.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { METRIC, sayAtLeastLength, US } from '../units/say.ts'
import { caution } from './cautions.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject, type StepsMade } from './startup-subject.ts'
import { tankFacts, type TankFacts } from './tank-facts.ts'

/** Countries where the device is called a GFCI. */
const GFCI_COUNTRIES = ['US', 'CA', 'MX']

/** Drip loops and the protective device, before anything is switched on. */
export function powerSteps(subject: StartupSubject): StepsMade {
  const facts = tankFacts(subject)
  const notComputed: string[] = []
  if (facts.cords.length > 0 && subject.report.figures.dripLoop === undefined) {
    notComputed.push(
      'Cord for the drip loops: heights of tank and outlet are not known. Measure with a string that hangs below the outlet.',
    )
  }
  const steps = facts.cords.length > 0 ? [dripLoops(subject, facts)] : []
  return { steps: [...steps, protection(subject, facts)], notComputed }
}

function cordList(cords: TankFacts['cords']): Phrase {
  const total = cords.reduce((sum, cord) => sum + cord.count, 0)
  const names = cords.map((cord) => (cord.count > 1 ? `${cord.count} ${cord.what}s` : cord.what)).join(', ')
  return phrase`${total} ${total === 1 ? 'cord' : 'cords'}: ${names}`
}

/** A length to keep to, rounded up in both measures, whichever is on the tape: "4 in (10 cm)". The install's own comes first. */
function atLeast(mm: number, install: StartupSubject['install']): string {
  const [first, second] = install?.units?.system === 'us' ? [install.units, METRIC] : [install?.units ?? METRIC, US]
  return `${sayAtLeastLength(mm, first)} (${sayAtLeastLength(mm, second)})`
}

function dripLoops({ report, install }: StartupSubject, { cords, holdDays }: TankFacts): Step {
  const loop = report.figures.dripLoop
  const leastDrop = atLeast(LOOP_DROP_MM, install)
  const stated = cords.flatMap((cord) => (cord.cordMm === undefined ? [] : [cord.cordMm]))
  const shortest = stated.length > 0 ? Math.min(...stated) : null
  const total = cords.reduce((sum, cord) => sum + cord.count, 0)
  return stepOf('power', {
    id: 'drip-loops',
    title: 'Make a drip loop in every cord',
    why: phrase`Water runs down a cord. Hang each one lower than the outlet, and the water drips off before it gets there.`,
    amounts: [
      { label: 'How many', value: cordList(cords) },
      { label: 'How low', value: phrase`lowest point at least ${leastDrop} under the outlet` },
      ...(loop === undefined
        ? [{ label: 'Cord needed', value: phrase`measure: a string from the tank to the outlet that hangs ${leastDrop} below it` }]
        : [
            { label: 'Low point', value: phrase`${quantity(loop.lowPointMm, 'mm', 0)} above the floor` },
            {
              label: 'Cord needed',
              value: phrase`${atLeast(loop.neededMm, install)} each${shortest === null ? phrase`` : phrase`; your shortest is ${quantity(shortest, 'mm', 0)}`}`,
            },
          ]),
    ],
    actions: [
      phrase`Leave everything unplugged.`,
      phrase`Let each cord hang behind the stand, and hold it with a clip so that it cannot slide.`,
      phrase`Measure from the outlet down to the lowest point of each cord.`,
      phrase`Fix the power strip sheathed, above the water line, never on the floor of the cabinet. Never plug one strip into another.`,
    ],
    howLong: 'about 15 min',
    stopAndAsk: phrase`an outlet or plug is wet, a cord is cut or too short, or the strip lies on the floor. Wet plug: do not touch it. Switch off at the breaker first.`,
    done: total === 1 ? 'Done: it hangs below the outlet' : `Done: all ${total} hang below the outlet`,
    earliestDay: holdDays,
    drawing: 'drip_loop',
    caution: caution('protection'),
  })
}

function protection({ gear, conditions, install }: StartupSubject, { holdDays }: TankFacts): Step {
  const device = install === undefined ? 'protective device' : GFCI_COUNTRIES.includes(install.country) ? 'GFCI' : 'residual-current device'
  const strip = gear.power.find((each) => each.spec.protective === true)
  const present = strip !== undefined || conditions.circuitProtected
  return stepOf('power', {
    id: 'test-protection',
    title: present ? `Press TEST on the ${device}` : `Get a ${device} first`,
    why: phrase`It cuts the current when it leaks through water or a person. It is worth what its last test was worth.`,
    amounts: [
      {
        label: 'Where',
        value: strip ? phrase`${strip.name}` : present ? phrase`in the circuit, at the outlet or the panel` : phrase`none in this plan`,
      },
    ],
    actions: present
      ? [
          phrase`Plug in a lamp, press TEST: the lamp must go out. Press RESET: it must come back.`,
          phrase`Do it again on the first day of every month. After every trip look at the heater: a night without heat is cold.`,
        ]
      : [
          phrase`Ask a licensed electrician for a protected outlet, or buy a protected strip or adapter.`,
          phrase`Plug nothing in before that.`,
        ],
    howLong: present ? 'about 2 min' : 'until it is there',
    stopAndAsk: phrase`the lamp stays on, it will not reset, or it trips by itself. Use nothing on that outlet; a licensed electrician decides.`,
    done: present ? 'Done: TEST cuts, RESET brings back' : 'Done: a protective device is in and tested',
    earliestDay: holdDays,
    caution: caution('protection'),
  })
}
