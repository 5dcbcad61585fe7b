import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { DOSE_MG_PER_L, PER_NITROGEN } from './ammonia-dose.ts'
import { ammoniaPortion } from './ammonia-portion.ts'
import { DOSES_OF_A_CYCLE, firstDose, getAmmonia, secondDose } from './ammonia-steps.ts'
import { caution } from './cautions.ts'
import { conditionerDose } from './conditioner-dose.ts'
import { AT_MARK, GENERAL_MARKS } from './reading-marks.ts'
import { ammoniaKit, eatenAmmonia, READY_MG_PER_L, SOIL_UNDER_MG_PER_L } from './ready-reading.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject, type StepsMade } from './startup-subject.ts'
import { doseOf, litres, tankFacts, type TankFacts } from './tank-facts.ts'
import { isHeated, keptAt } from './temperatures.ts'
import { afterWaterChanges, NITRATE_GOAL_MG_PER_L, waterChangesNeeded } from './water-change.ts'

/** Share changed at the end of the cycle: a quarter of the nitrate stays (common practice). */
const LARGE_CHANGE = 0.75
/** Share changed on a day when active soil gives off too much (common practice). */
const SOIL_CHANGE = 0.5
/** The most that one such change brings down to the goal, mg/L. */
const MOST_FOR_ONE_CHANGE_MG_PER_L = NITRATE_GOAL_MG_PER_L / (1 - LARGE_CHANGE)

/**
 * Fishless cycling: dose, read, dose again, ready, change.
 *
 * Errors: an amount that cannot be worked out is read off the label, and `notComputed` says which; with nothing that may be dosed a step to get it
 *         stands before the first dose.
 * Source: common practice; ready is both at 0.25 mg/L or less a day after a dose to 2 mg/L, on two days running.
 *
 * @example cycleSteps(subject).steps.map((step) => step.id) // ['first-ammonia', 'daily-readings', 'second-dose', 'ready', 'large-change']
 */
export function cycleSteps(subject: StartupSubject): StepsMade {
  const facts = tankFacts(subject)
  const portion = ammoniaPortion(subject.gear, facts.waterL)
  const get = getAmmonia(facts, portion)
  const steps = [
    ...(facts.activeSoil ? [soilAmmonia(facts)] : []),
    ...(get === null ? [] : [get]),
    firstDose(subject, facts, portion),
    dailyReadings(subject, facts),
    secondDose(subject, portion),
    readiness(subject),
    largeChange(subject, facts),
  ]
  const notComputed = portion.reason === null ? [] : [portion.reason]
  if (facts.waterL === null) notComputed.push('Water of the large change: take three quarters of what you counted.')
  return { steps, notComputed }
}

const share = (waterL: number | null, part: number, words: string): Phrase =>
  waterL === null ? phrase`${words} of the water` : phrase`${litres(waterL * part)} (${words})`

function soilAmmonia({ waterL, holdDays, disinfected }: TankFacts): Step {
  return stepOf('cycle', {
    id: 'soil-ammonia',
    title: "Wait for the soil's own ammonia",
    why: phrase`Active soil gives off ammonia for days to weeks. Adding more on top would stall the cycle.`,
    amounts: [
      { label: 'Dose nothing until', value: phrase`ammonia reads under ${SOIL_UNDER_MG_PER_L} mg/L` },
      { label: 'Change water above', value: phrase`4 mg/L: ${share(waterL, SOIL_CHANGE, 'half')}, every day` },
    ],
    actions: [
      phrase`Test ammonia every day from the second day on and write it down.`,
      ...(disinfected ? [phrase`Treat the new water with conditioner before it goes in.`] : []),
    ],
    howLong: 'some days to three weeks',
    stopAndAsk: phrase`ammonia is still above 4 mg/L after a week of daily changes.`,
    done: `Done: the soil's own ammonia is under ${SOIL_UNDER_MG_PER_L} mg/L`,
    earliestDay: holdDays + 1,
  })
}

function dailyReadings(subject: StartupSubject, { holdDays }: TankFacts): Step {
  const measuresKh = subject.gear.testKits.some((kit) => kit.spec.measuresKh === true)
  return stepOf('cycle', {
    id: 'daily-readings',
    title: 'Test the water every day',
    why: phrase`Ammonia falls first, then nitrite rises and falls, nitrate climbs. Only the figures show where the tank is.`,
    amounts: [
      { label: 'Each day', value: phrase`ammonia, nitrite, temperature` },
      { label: 'Twice a week', value: phrase`nitrate, pH${measuresKh ? ', KH' : ''}` },
      { label: 'Keep it at', value: phrase`${keptAt(subject)}, filter always on` },
    ],
    actions: [
      phrase`Same time of day, tube rinsed with tank water, read against white paper in daylight.`,
      phrase`Write every reading into the log, the zeros too.`,
      measuresKh
        ? phrase`If KH falls under ${quantity(GENERAL_MARKS.lowestKhDegrees, 'dKH', 0)}, ${AT_MARK.soft}`
        : phrase`The kit does not measure KH. If pH falls under ${GENERAL_MARKS.lowestPh}, ${AT_MARK.soft}`,
    ],
    howLong: 'about 10 min a day; three to six weeks is usual, and it may be longer',
    stopAndAsk: phrase`nitrite is over ${GENERAL_MARKS.nitriteMgL} mg/L, pH is under ${GENERAL_MARKS.lowestPh}, or nothing has moved for ten days.`,
    done: 'Done: read and written down today',
    earliestDay: holdDays + 2,
  })
}

function readiness({ gear }: StartupSubject): Step {
  const { coarse, lowestMgL } = ammoniaKit(gear)
  const ready = quantity(READY_MG_PER_L, 'mg/L', 2)
  return stepOf('cycle', {
    id: 'ready',
    title: 'Is it ready? Two days in a row',
    why: phrase`Ammonia clears days before nitrite does. Only both together, twice, mean that the filter can carry fish.`,
    amounts: [
      { label: 'Dose', value: phrase`to ${DOSE_MG_PER_L} mg/L as N, as before` },
      { label: '24 h later', value: phrase`ammonia ${eatenAmmonia(gear)}, and nitrite ${ready} or less` },
      { label: 'How often', value: phrase`on two days, one after the other` },
      ...(coarse && lowestMgL !== null
        ? [
            {
              label: 'Finer kit',
              value: phrase`before the first fish: yours starts at ${quantity(lowestMgL, 'mg/L', 2)}, ready is told at ${ready}`,
            },
          ]
        : []),
    ],
    actions: [
      phrase`Dose, wait 24 h, read both.`,
      phrase`Dose once more, wait 24 h, read both again. If one of them fails, go on as before.`,
      ...(coarse ? [phrase`Get an ammonia kit that tells ${ready}, and read the second day with it as well.`] : []),
    ],
    howLong: 'two days',
    stopAndAsk: phrase`eight weeks have passed, or one reading keeps failing.`,
    done: coarse ? 'Done: ready two days running, and told by a finer kit' : `Done: both at ${READY_MG_PER_L} or less, two days running`,
    earliestDay: null,
  })
}

function largeChange(subject: StartupSubject, { waterL, disinfected }: TankFacts): Step {
  const dose = waterL === null || !disinfected ? null : conditionerDose(subject.gear, waterL * LARGE_CHANGE)
  const heated = isHeated(subject)
  const left = afterWaterChanges(NITRATE_GOAL_MG_PER_L, LARGE_CHANGE, 1)
  const nitrate = DOSES_OF_A_CYCLE * DOSE_MG_PER_L * PER_NITROGEN.nitrate
  const times = (from: number) => waterChangesNeeded(from, NITRATE_GOAL_MG_PER_L, LARGE_CHANGE)
  return stepOf('cycle', {
    id: 'large-change',
    title: 'Large water change',
    why: phrase`Weeks of dosing have become nitrate. Changing three quarters takes ${NITRATE_GOAL_MG_PER_L} mg/L down to ${left}.`,
    amounts: [
      { label: 'Out and in', value: share(waterL, LARGE_CHANGE, 'three quarters') },
      {
        label: 'How many',
        value: phrase`${times(nitrate)} after ten doses (about ${quantity(nitrate, 'mg/L', 0)} of nitrate); ${times(MOST_FOR_ONE_CHANGE_MG_PER_L + 1)} above ${MOST_FOR_ONE_CHANGE_MG_PER_L} mg/L`,
      },
      ...(disinfected
        ? [
            {
              label: 'Conditioner',
              value:
                dose === null
                  ? phrase`by its label, for the new water`
                  : phrase`${doseOf(dose.ml, 'mL')} of ${dose.name}, into the new water`,
            },
          ]
        : []),
      { label: 'New water', value: phrase`within ${quantity(2, 'K', 0)} of ${heated ? keptAt(subject) : phrase`what the tank reads`}` },
    ],
    actions: [
      heated ? phrase`Heater and filter unplugged, heater cooled for 15 min. Then drain.` : phrase`Filter unplugged. Then drain.`,
      phrase`Keep the filter media wet, in tank water. Do not wash it.`,
      phrase`Refill with treated water, plug in, read nitrate. Above 40 mg/L: once more tomorrow.`,
      phrase`Fish follow within two days of the last dose. Later than that, the bacteria starve: dose to ${DOSE_MG_PER_L} mg/L every second day, and fetch them once both read ${READY_MG_PER_L} or less again.`,
    ],
    howLong: 'one to two hours',
    stopAndAsk: phrase`nitrate stays above 40 mg/L after two changes, or the tap water itself reads nitrate.`,
    done: heated ? 'Done: changed, warm again, nitrate 40 or less' : 'Done: changed, nitrate 40 or less',
    earliestDay: null,
    caution: caution('unplug'),
  })
}
