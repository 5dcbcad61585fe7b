import { phrase } from '../units/quantity.ts'
import { ammoniaPortion } from './ammonia-portion.ts'
import { caution } from './cautions.ts'
import { stepOf, type StartupSubject, type StepsMade } from './startup-subject.ts'
import type { Step } from './setup-plan.ts'
import { tankFacts } from './tank-facts.ts'

/**
 * What to have at hand and what to look at before anything is lifted.
 *
 * Errors: none. Source: common practice; three years as the age of a heater.
 *
 * @example beforeSteps(subject).steps.map((step) => step.id) // ['before-you-start'], and 'used-heater', 'used-tank' where they are owned
 */
export function beforeSteps(subject: StartupSubject): StepsMade {
  const steps = [gather(subject)]
  if (subject.gear.heaters.some((heater) => heater.owned === true)) steps.push(usedHeater())
  if (subject.gear.tank?.owned === true) steps.push(usedTank())
  return { steps, notComputed: [] }
}

function gather(subject: StartupSubject): Step {
  const { gear } = subject
  const missing = [
    gear.stand ? null : 'something level and strong to stand the tank on',
    gear.lights.length > 0 ? null : 'a light, if you want one',
  ].filter((each) => each !== null)
  return stepOf('before', {
    id: 'before-you-start',
    title: 'Before you start',
    why: phrase`Half of what goes wrong is a part that was missing or broken on the day. Once water is in, nothing moves any more.`,
    actions: [
      phrase`Unpack everything and look for cracks and chips. Run a gloved finger along every seam of the tank.`,
      phrase`Have ready: a spirit level as long as the tank, paper towels, dry towels, a hose, and two buckets that never held soap.`,
      phrase`And for later steps: ${laterTools(subject)}.`,
      phrase`Read the makers' instructions, above all those of the heater and the filter.`,
      ...(missing.length > 0 ? [phrase`Not in this plan, so find it first: ${missing.join('; ')}.`] : []),
    ],
    howLong: 'about an hour',
    stopAndAsk: phrase`the glass has a chip on an edge or a crack of any length, a seam has a gap, or a part does not match this sheet.`,
    done: 'Done: everything is here and unbroken',
    earliestDay: 0,
    caution: caution('maker'),
  })
}

/** What the later steps take into the hand. */
function laterTools(subject: StartupSubject): string {
  const { value, stock } = ammoniaPortion(subject.gear, tankFacts(subject).waterL)
  const weighed = stock || value.some((part) => typeof part !== 'string' && part.unit === 'g')
  return [
    'gloves',
    'flat shims for the stand',
    'a thin plastic sheet to go under stones',
    'tape to mark the water line',
    'clips for the cords',
    'a net',
    ...(tankFacts(subject).planted ? ['tweezers for the plants'] : []),
    weighed ? 'a scale that reads 0.1 g' : 'a syringe in mL',
  ].join(', ')
}

function usedHeater(): Step {
  return stepOf('before', {
    id: 'used-heater',
    title: 'Check the age of the used heater',
    why: phrase`Old heaters stick on or let water in. Past three years they are replaced, not trusted.`,
    amounts: [{ label: 'Oldest', value: phrase`3 years` }],
    actions: [
      phrase`Look for the date on the heater or its cord; ask whoever had it before.`,
      phrase`Look along the tube and the cord for cracks, water inside, or a loose cap. Do not plug it in to try it dry.`,
    ],
    howLong: 'about 5 min',
    stopAndAsk: phrase`it is more than three years old, its age is not known, or there is water or a crack in the tube. Replace it.`,
    done: 'Done: under three years and dry inside',
    earliestDay: 0,
    caution: caution('unplug'),
  })
}

function usedTank(): Step {
  return stepOf('before', {
    id: 'used-tank',
    title: 'Clean the used tank',
    why: phrase`An old tank brings old trouble. It is cleaned before it meets anything alive, and bleach must be gone before ammonia comes.`,
    actions: [
      phrase`Scrape, scrub with water and a new sponge. No soap.`,
      phrase`If it is bleached: rinse three times, fill with water and a double dose of conditioner, drain, and let it dry for a day.`,
      phrase`Press a fingernail on the silicone: it should be rubbery and stuck down everywhere.`,
    ],
    howLong: 'two hours, and a day to dry',
    stopAndAsk: phrase`the silicone is hard, peels or was cut, or the tank still smells of bleach.`,
    done: 'Done: clean, dry, no smell',
    earliestDay: 0,
    caution: caution('bleach'),
  })
}
