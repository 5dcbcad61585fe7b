import { changesOf } from '../sizing/change-share.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { unionisedShare } from './ammonia-fraction.ts'
import { caution } from './cautions.ts'
import { conditionerDose } from './conditioner-dose.ts'
import { AT_MARK } from './reading-marks.ts'
import { ammoniaKit, READY_MG_PER_L } from './ready-reading.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject, type StepsMade } from './startup-subject.ts'
import { keptAt, suitableRange } from './temperatures.ts'
import { doseOf, litres, tankFacts, type TankFacts } from './tank-facts.ts'

/** First portion of the stock and of its feed (common practice). */
const FIRST_SHARE = 0.25

/** Below this, feed is told to a milligram: a tenth of a gram would be several days' worth for shrimp (own). */
const FINE_FEED_G = 0.1

/**
 * The first animals and the month after.
 *
 * Errors: a tank that the report finds too small for the group is said beside the emergency, never in its place.
 * Source: common practice; share of poisonous ammonia by Emerson et al. (1975).
 *
 * @example firstFishSteps(subject).steps.map((step) => step.id) // ['first-fish', 'first-month']
 */
export function firstFishSteps(subject: StartupSubject): StepsMade {
  return { steps: [firstFish(subject), firstMonth(subject, tankFacts(subject))], notComputed: [] }
}

/** Feed, rounded down: too much of it is the harm. Below 0.1 g no hand measures it, so the hand is told what it looks like. */
function feedPhrase(grams: number): Phrase {
  const digits = grams < FINE_FEED_G ? 3 : grams < 1 ? 2 : 1
  // A whole step short by the last bit of a product is that step.
  const least = Math.floor(grams * 10 ** digits + 1e-6) / 10 ** digits
  return phrase`at most ${quantity(least, 'g', digits)} a day${grams < FINE_FEED_G ? ': some grains, less than a pinch' : ''}`
}

/** The size is the sizing's verdict, by the outside as the trade names it. */
function tooSmall({ report }: StartupSubject): Phrase {
  const finding = report.findings.find(({ check }) => check === 'smallest_volume')
  if (finding?.verdict !== 'does_not_fit' && finding?.verdict !== 'marginal') return phrase``
  return phrase` Before you buy any fish, talk the size over: ${finding.reason}`
}

function firstFish(subject: StartupSubject): Step {
  const { livestock } = subject.conditions
  const { coarse } = ammoniaKit(subject.gear)
  const dark = subject.gear.lights.length > 0 ? 'Light off. ' : ''
  const ready = quantity(READY_MG_PER_L, 'mg/L', 2)
  return stepOf('first_fish', {
    id: 'first-fish',
    title: 'First fish, a few',
    why: phrase`The filter has eaten measured ammonia. A first small group lets it grow with what fish make.`,
    amounts: [
      { label: 'When', value: phrase`within two days of the last dose; later, dose on as told with the large change` },
      { label: 'How many', value: phrase`at most a quarter of what you plan (${livestock.name})` },
      { label: 'Water', value: phrase`${keptAt(subject)}, ammonia and nitrite ${ready} or less` },
      { label: 'Feed', value: feedPhrase(livestock.feedGramsPerDay * FIRST_SHARE) },
    ],
    actions: [
      ...(coarse ? [phrase`Test ammonia with the finer kit, one that tells ${ready}, before you fetch any fish.`] : []),
      phrase`${dark}Float the closed bag for 15 min, then add a little tank water every 5 min for half an hour.`,
      phrase`Lift the fish over with a net; pour the bag's water away.`,
      phrase`No food on the first day.${livestock.lidNeeded ? ' Lid closed: these jump.' : ''}`,
    ],
    howLong: 'about an hour',
    stopAndAsk: phrase`a fish gasps at the surface or lies on its side: test at once, change half the water, ask.${tooSmall(subject)}`,
    done: 'Done: in, breathing calmly',
    earliestDay: null,
    caution: caution('stand'),
  })
}

/** What the report's weekly-change finding asks for, in so many changes; a quarter of the water where it asks for less or is not known. */
function changePhrase({ gear, conditions, report }: StartupSubject, waterL: number | null, disinfected: boolean): Phrase {
  const asked = report.findings.find(({ check }) => check === 'weekly_change')
  const { count, percent, tooLittle } = changesOf(asked, conditions.waterChangePercent)
  const each = count === 1 ? '' : ' each time'
  const often = count === 1 ? '' : count === 2 ? 'twice, ' : `${count} times, `
  const share = percent === 25 ? 'a quarter' : phrase`${quantity(percent, 'percent', 0)}`
  const short = tooLittle === true ? '. Not even that keeps up with the full stock: feed less, keep fewer animals' : ''
  if (waterL === null) return phrase`${often}change ${share} of the water${each}${short}`
  const dose = disinfected ? conditionerDose(gear, (waterL * percent) / 100) : null
  const treated = dose === null ? phrase`` : phrase` with ${doseOf(dose.ml, 'mL')} of ${dose.name}`
  return phrase`${often}change ${litres((waterL * percent) / 100)}${treated}${each}${short}`
}

function firstMonth(subject: StartupSubject, { waterL, disinfected }: TankFacts): Step {
  const at = (ph: number) => quantity(unionisedShare(subject.conditions.livestock.targetC, ph) * 100, 'percent', 1)
  return stepOf('first_fish', {
    id: 'first-month',
    title: 'The first month',
    why: phrase`Ammonia is more poisonous at higher pH; any reading counts. At pH 7, ${at(7)} of it is the poisonous form; at pH 8, ${at(8)}.`,
    amounts: [
      { label: 'Test', value: phrase`ammonia and nitrite every other day, for two weeks after each new group` },
      {
        label: 'Each week',
        value: changePhrase(subject, waterL, disinfected),
      },
      { label: 'New fish', value: phrase`a quarter more, after two weeks with both at ${READY_MG_PER_L} mg/L or less` },
    ],
    actions: [
      phrase`Rinse the filter sponge in a bucket of tank water when the flow drops, never under the tap.`,
      phrase`Press TEST on the first day of the month. Look along cords and hoses.`,
      phrase`Ammonia or nitrite above ${READY_MG_PER_L} mg/L: ${AT_MARK.fishInIt}`,
    ],
    howLong: 'half an hour a week',
    stopAndAsk: phrase`fish hang at the surface, a reading stays up for two days, or the temperature leaves ${suitableRange(subject)}.`,
    done: 'Done: a month with steady readings',
    earliestDay: null,
    caution: caution('unplug'),
  })
}
