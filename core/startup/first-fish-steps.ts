import { phrase, quantity } from '../units/quantity.ts'
import { unionisedShare } from './ammonia-fraction.ts'
import { caution } from './cautions.ts'
import { conditionerDose } from './conditioner-dose.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject, type StepsMade } from './startup-subject.ts'
import { doseOf, litres, tankFacts, type TankFacts } from './tank-facts.ts'

/** First portion of the stock and of its feed (common practice). */
const FIRST_SHARE = 0.25
/** Share changed each week (common practice). */
const WEEKLY_CHANGE = 0.25

/** The first animals and the month after. */
export function firstFishSteps(subject: StartupSubject): StepsMade {
  const facts = tankFacts(subject)
  return { steps: [firstFish(subject, facts), firstMonth(subject, facts)], notComputed: [] }
}

function firstFish({ conditions }: StartupSubject, { waterL }: TankFacts): Step {
  const { livestock } = conditions
  const small = waterL !== null && waterL < livestock.smallestVolumeL
  return stepOf('first_fish', {
    id: 'first-fish',
    title: 'First fish, a few',
    why: phrase`The filter has eaten measured ammonia. A first small group lets it grow with what fish make.`,
    amounts: [
      { label: 'How many', value: phrase`at most a quarter of what you plan (${livestock.name})` },
      { label: 'Water', value: phrase`${quantity(livestock.targetC, 'degC', 0)}, ammonia and nitrite at the lowest step` },
      { label: 'Feed', value: phrase`at most ${quantity(livestock.feedGramsPerDay * FIRST_SHARE, 'g', 1)} a day` },
    ],
    actions: [
      phrase`Light off. Float the closed bag for 15 min, then add a little tank water every 5 min for half an hour.`,
      phrase`Lift the fish over with a net; pour the bag's water away.`,
      phrase`No food on the first day.${livestock.lidNeeded ? ' Lid closed: these jump.' : ''}`,
    ],
    howLong: 'about an hour',
    stopAndAsk: small
      ? phrase`you have not spoken to someone about the size: this group wants at least ${litres(livestock.smallestVolumeL)} of water.`
      : phrase`a fish gasps at the surface or lies on its side: test at once, change half the water, ask.`,
    done: 'Done: in, breathing calmly',
    earliestDay: null,
    caution: caution('stand'),
  })
}

function firstMonth({ gear, conditions }: StartupSubject, { waterL, disinfected }: TankFacts): Step {
  const dose = waterL === null || !disinfected ? null : conditionerDose(gear, waterL * WEEKLY_CHANGE)
  const at = (ph: number) => quantity(unionisedShare(conditions.livestock.targetC, ph) * 100, 'percent', 1)
  return stepOf('first_fish', {
    id: 'first-month',
    title: 'The first month',
    why: phrase`Ammonia bites by pH: ${at(7)} of it is the poisonous form at pH 7, ${at(8)} at pH 8. So any reading counts.`,
    amounts: [
      { label: 'Test', value: phrase`ammonia and nitrite every other day, for two weeks after each new group` },
      {
        label: 'Each week',
        value:
          waterL === null
            ? phrase`change a quarter of the water`
            : phrase`change ${litres(waterL * WEEKLY_CHANGE)}${dose === null ? phrase`` : phrase` with ${doseOf(dose.ml, 'mL')} of ${dose.name}`}`,
      },
      { label: 'New fish', value: phrase`a quarter more, after two weeks with both at the lowest step` },
    ],
    actions: [
      phrase`Rinse the filter sponge in a bucket of tank water when the flow drops, never under the tap.`,
      phrase`Press TEST on the first day of the month. Look along cords and hoses.`,
      phrase`Ammonia or nitrite above 0.25 mg/L: change half the water today, feed nothing, test tomorrow.`,
    ],
    howLong: 'half an hour a week',
    stopAndAsk: phrase`fish hang at the surface, a reading stays up for two days, or the temperature leaves ${quantity(conditions.livestock.lowestC, 'degC', 0)} to ${quantity(conditions.livestock.highestC, 'degC', 0)}.`,
    done: 'Done: a month with steady readings',
    earliestDay: null,
    caution: caution('unplug'),
  })
}
