import { phrase, type Phrase } from '../units/quantity.ts'
import { caution } from './cautions.ts'
import { leakTestWeight } from './place-steps.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject, type StepsMade } from './startup-subject.ts'
import { litres, tankFacts, type TankFacts } from './tank-facts.ts'

/** Quarter by quarter, so that a bad seam shows while there is little water to lose (common practice). */
export const LEAK_STAGES = [0.25, 0.5, 0.75, 1] as const

/**
 * Fill in four stages, hold, drain. Nothing else is in the tank yet.
 *
 * Units:  litres to the rim, hours. Errors: without the inside of the tank it is filled by height, and `notComputed` says so.
 * Source: common practice; one day for a new tank, three for a used one.
 *
 * @example leakTestSteps(subject).steps.map((step) => step.id) // ['leak-fill', 'leak-hold', 'drain']
 */
export function leakTestSteps(subject: StartupSubject): StepsMade {
  const facts = tankFacts(subject)
  const notComputed =
    facts.brimL === null ? ['Water of the leak test: the inside of the tank is not known. Fill by height, a quarter at a time.'] : []
  return { steps: [fill(facts, leakTestWeight(subject)), hold(facts), drain(facts)], notComputed }
}

function fill({ brimL }: TankFacts, weight: Phrase | null): Step {
  return stepOf('leak_test', {
    id: 'leak-fill',
    title: 'Leak test in four fills',
    why: phrase`A seam that fails now wets a towel. The same seam with sand and fish in the tank empties it on the floor.`,
    amounts: [
      ...LEAK_STAGES.map((share) => ({
        label: `${share * 100} % of the height`,
        value: brimL === null ? phrase`by height, marked on the glass` : phrase`${litres(brimL * share)} in all`,
      })),
      ...(weight === null ? [] : [{ label: 'Weight when full', value: weight }]),
    ],
    actions: [
      phrase`Dry every seam. Lay dry paper towel all round the base, touching the glass.`,
      phrase`Plain tap water at room temperature, nothing in it. Stop at each quarter and wait.`,
      phrase`At each stop look at every seam, at the paper and at the level. The last stop is just under the rim.`,
    ],
    howLong: '30 to 60 min at each stop, half a day in all',
    stopAndAsk: phrase`any paper is damp at a seam, the level moved, or the stand creaks. Drain it down and ask; do not seal it yourself.`,
    done: 'Done: full, four stops, all paper dry',
    earliestDay: 0,
    caution: caution('leak_test'),
  })
}

function hold({ holdDays }: TankFacts): Step {
  const hours = holdDays * 24
  return stepOf('leak_test', {
    id: 'leak-hold',
    title: `Hold it full for ${hours} hours`,
    why: phrase`Slow leaks need time. A cold, covered tank loses next to nothing to the air in a day, so a drop means a leak.`,
    amounts: [
      { label: 'Hold', value: phrase`${hours} h${holdDays > 1 ? ', because the tank is used' : ''}` },
      { label: 'Most it may drop', value: phrase`1 to 2 mm (1/16 in) in 24 h` },
    ],
    actions: [
      phrase`Mark the water line with tape at both ends, cover the tank, lay fresh paper.`,
      phrase`After the hold compare the line, feel the paper, check the level again.`,
    ],
    howLong: holdDays > 1 ? 'three days' : 'one day',
    stopAndAsk: phrase`the line fell by more, or any paper is damp. Both mean stop: drain, and take it back while it may be returned.`,
    done: `Done: ${hours} h, line held, paper dry`,
    earliestDay: 0,
    caution: caution('leak_test'),
  })
}

function drain({ holdDays, brimL }: TankFacts): Step {
  return stepOf('leak_test', {
    id: 'drain',
    title: 'Drain it',
    why: phrase`Substrate goes into an empty tank. A tank with water in it is never lifted or pushed.`,
    amounts: brimL === null ? [] : [{ label: 'How much', value: phrase`about ${litres(brimL)} into a drain that takes it` }],
    actions: [phrase`Siphon it out with the hose, the last of it with a sponge. Do not tip or lift the tank.`, phrase`Wipe it dry inside.`],
    howLong: 'about an hour',
    stopAndAsk: phrase`the tank has shifted on its stand.`,
    done: 'Done: empty, not moved',
    earliestDay: holdDays,
    caution: caution('lifting'),
  })
}
