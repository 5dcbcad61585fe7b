import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { DOSE_MG_PER_L, PER_NITROGEN } from './ammonia-dose.ts'
import { ammoniaPortion, type AmmoniaPortion } from './ammonia-portion.ts'
import { caution } from './cautions.ts'
import { conditionerDose } from './conditioner-dose.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject, type StepsMade } from './startup-subject.ts'
import { doseOf, litres, tankFacts, type TankFacts } from './tank-facts.ts'
import { afterWaterChanges } from './water-change.ts'

/** A kit's lowest colour step where its maker states none (common practice). */
const LOWEST_STEP_MG_PER_L = 0.25
/** Share changed at the end of the cycle: a quarter of the nitrate stays (common practice). */
const LARGE_CHANGE = 0.75
/** Share changed on a day when active soil gives off too much (common practice). */
const SOIL_CHANGE = 0.5

/** Fishless cycling: dose, read, dose again, ready, change. */
export function cycleSteps(subject: StartupSubject): StepsMade {
  const facts = tankFacts(subject)
  const portion = ammoniaPortion(subject.gear, facts.waterL)
  const steps = [
    ...(facts.activeSoil ? [soilAmmonia(facts)] : []),
    firstDose(subject, facts, portion),
    dailyReadings(subject, facts),
    secondDose(subject, portion),
    readiness(subject),
    largeChange(subject, facts),
  ]
  const notComputed = portion.reason === null ? [] : [portion.reason]
  if (facts.waterL === null) notComputed.push('Litres of the large water change: take three quarters of what you counted.')
  return { steps, notComputed }
}

const lowestStep = ({ gear }: StartupSubject): number =>
  gear.testKits.find((kit) => kit.spec.lowestAmmoniaMgL !== undefined)?.spec.lowestAmmoniaMgL ?? LOWEST_STEP_MG_PER_L

const share = (waterL: number | null, part: number, words: string): Phrase =>
  waterL === null ? phrase`${words} of the water` : phrase`${litres(waterL * part)} (${words})`

function soilAmmonia({ waterL, holdDays }: TankFacts): Step {
  return stepOf('cycle', {
    id: 'soil-ammonia',
    title: "Wait for the soil's own ammonia",
    why: phrase`Active soil gives off ammonia for days to weeks. Adding more on top would stall the cycle.`,
    amounts: [
      { label: 'Dose nothing until', value: phrase`ammonia reads under 1 mg/L` },
      { label: 'Change water above', value: phrase`4 mg/L: ${share(waterL, SOIL_CHANGE, 'half')}, every day` },
    ],
    actions: [
      phrase`Test ammonia every day from the second day on and write it down.`,
      phrase`Treat the new water with conditioner before it goes in.`,
    ],
    howLong: 'some days to three weeks',
    stopAndAsk: phrase`ammonia is still above 4 mg/L after a week of daily changes.`,
    done: "Done: the soil's own ammonia is under 1 mg/L",
    earliestDay: holdDays + 1,
  })
}

function firstDose({ gear }: StartupSubject, facts: TankFacts, portion: AmmoniaPortion): Step {
  const kit = (factor: number) => (DOSE_MG_PER_L * factor).toFixed(1)
  const test = gear.testKits.length > 0 ? '' : ' There is no test kit in this plan: get one first.'
  return stepOf('cycle', {
    id: 'first-ammonia',
    title: portion.tooStrong ? 'First ammonia dose: not with this liquid' : 'First ammonia dose',
    why: phrase`It feeds the bacteria that make a tank safe, before any fish is there to be hurt by it.`,
    amounts: [
      { label: 'How much', value: portion.value },
      { label: 'To reach', value: phrase`${DOSE_MG_PER_L} mg/L, counted as nitrogen (N)` },
      {
        label: 'On your kit',
        value: phrase`${DOSE_MG_PER_L}.0 if it counts N, ${kit(PER_NITROGEN.ammonia)} if NH3, ${kit(PER_NITROGEN.ammonium)} if NH4: see its leaflet`,
      },
    ],
    actions: [
      phrase`Test ammonia before you dose.${facts.chloramine ? ' What the tap water left counts: dose only what is missing.' : ''}${test}`,
      phrase`Weigh or draw up the amount, dissolve it in a cup of tank water, pour it where the filter blows.`,
      phrase`Test again after an hour and write both down. Gloves on, window open.`,
    ],
    howLong: 'about 20 min, and an hour to mix',
    stopAndAsk: phrase`it reads 5 mg/L or more: change half the water. Household ammonia with scent or foam is never used.`,
    done: 'Done: dosed, and read after an hour',
    earliestDay: facts.activeSoil ? null : facts.holdDays + 1,
    caution: caution('bleach'),
  })
}

function dailyReadings({ gear, conditions }: StartupSubject, { holdDays }: TankFacts): Step {
  const measuresKh = gear.testKits.some((kit) => kit.spec.measuresKh === true)
  return stepOf('cycle', {
    id: 'daily-readings',
    title: 'Test the water every day',
    why: phrase`Ammonia falls first, then nitrite rises and falls, nitrate climbs. Only the figures show where the tank is.`,
    amounts: [
      { label: 'Each day', value: phrase`ammonia, nitrite, temperature` },
      { label: 'Twice a week', value: phrase`nitrate, pH${measuresKh ? ', KH' : ''}` },
      { label: 'Keep it at', value: phrase`${quantity(conditions.livestock.targetC, 'degC', 0)}, filter always on` },
    ],
    actions: [
      phrase`Same time of day, tube rinsed with tank water, read against white paper in daylight.`,
      phrase`Write every reading into the log, the zeros too.`,
      measuresKh
        ? phrase`If KH falls under 3 degrees, stop dosing and ask: soft water can stall the cycle.`
        : phrase`The kit does not measure KH. If pH falls under 6.5, stop dosing and ask.`,
    ],
    howLong: 'about 10 min a day; three to six weeks is usual, and it may be longer',
    stopAndAsk: phrase`nitrite is over 5 mg/L, pH is under 6.5, or nothing has moved for ten days.`,
    done: 'Done: read and written down today',
    earliestDay: holdDays + 2,
  })
}

function secondDose(subject: StartupSubject, portion: AmmoniaPortion): Step {
  return stepOf('cycle', {
    id: 'second-dose',
    title: 'Dose again, only when it is eaten',
    why: phrase`Bacteria starve without food and stall with too much. The reading decides, not the calendar.`,
    amounts: [
      { label: 'Only when', value: phrase`ammonia reads ${lowestStep(subject)} mg/L or less` },
      { label: 'How much', value: portion.value },
    ],
    actions: [
      phrase`Dose the same amount as the first time, at most once a day, and write it down.`,
      phrase`While nitrite reads over 5 mg/L dose nothing; change a third of the water if it stays there three days.`,
    ],
    howLong: 'about 5 min each time',
    stopAndAsk: phrase`ammonia does not fall at all within a week of a dose.`,
    done: 'Done: dosed again after it was eaten',
    earliestDay: null,
    caution: caution('bleach'),
  })
}

function readiness(subject: StartupSubject): Step {
  const low = lowestStep(subject)
  return stepOf('cycle', {
    id: 'ready',
    title: 'Is it ready? Two days in a row',
    why: phrase`Ammonia clears days before nitrite does. Only both together, twice, mean that the filter can carry fish.`,
    amounts: [
      { label: 'Dose', value: phrase`to ${DOSE_MG_PER_L} mg/L as N, as before` },
      { label: '24 h later', value: phrase`ammonia ${low} or less and nitrite 0.25 mg/L or less` },
      { label: 'How often', value: phrase`on two days, one after the other` },
    ],
    actions: [
      phrase`Dose, wait 24 h, read both.`,
      phrase`Dose once more, wait 24 h, read both again. If one of them fails, go on as before.`,
    ],
    howLong: 'two days',
    stopAndAsk: phrase`eight weeks have passed, or one reading keeps failing.`,
    done: 'Done: both at the lowest step, two days running',
    earliestDay: null,
  })
}

function largeChange({ gear, conditions }: StartupSubject, { waterL, disinfected }: TankFacts): Step {
  const dose = waterL === null || !disinfected ? null : conditionerDose(gear, waterL * LARGE_CHANGE)
  const left = afterWaterChanges(40, LARGE_CHANGE, 1)
  return stepOf('cycle', {
    id: 'large-change',
    title: 'Large water change',
    why: phrase`Weeks of dosing have become nitrate. Changing three quarters takes 40 mg/L down to ${left}.`,
    amounts: [
      { label: 'Out and in', value: share(waterL, LARGE_CHANGE, 'three quarters') },
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
      { label: 'New water', value: phrase`within ${quantity(2, 'K', 0)} of ${quantity(conditions.livestock.targetC, 'degC', 0)}` },
    ],
    actions: [
      phrase`Heater and filter unplugged, heater cooled for 15 min. Then drain.`,
      phrase`Keep the filter media wet, in tank water. Do not wash it.`,
      phrase`Refill with treated water, plug in, read nitrate. Above 40 mg/L: once more tomorrow.`,
    ],
    howLong: 'one to two hours',
    stopAndAsk: phrase`nitrate stays above 40 mg/L after two changes, or the tap water itself reads nitrate.`,
    done: 'Done: changed, warm again, nitrate 40 or less',
    earliestDay: null,
    caution: caution('unplug'),
  })
}
