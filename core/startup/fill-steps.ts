import { SALT_G_PER_L } from '../sizing/typical-ranges.ts'
import { phrase, quantity, stated, type Phrase } from '../units/quantity.ts'
import { specificGravity } from '../units/specific-gravity.ts'
import { SALINITY } from '../water/sea-salinity.ts'
import { caution } from './cautions.ts'
import { controllerStep, isControlled } from './controller-step.ts'
import { conditionerDose } from './conditioner-dose.ts'
import { ammoniaFromChloramine, HIGHEST_RESIDUAL_MG_PER_L } from './disinfectant.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject, type StepsMade } from './startup-subject.ts'
import { isHeated, limitC, suitableRange } from './temperatures.ts'
import { doseOf, litres, tankFacts, type TankFacts } from './tank-facts.ts'

/**
 * Water, warmth and a day of running.
 *
 * Errors: without the inside of the tank the buckets are counted; where part of it was assumed the litres are marked as about, with what was assumed.
 * Source: common practice; ammonia from chloramine by stoichiometry.
 *
 * @example fillSteps(subject).steps.map((step) => step.id) // ['fill', 'heater', 'run-in']
 */
export function fillSteps(subject: StartupSubject): StepsMade {
  const facts = tankFacts(subject)
  const made: StepsMade = { steps: [], notComputed: fillNotComputed(subject, facts) }
  if (facts.salt) made.steps.push(mixSalt(subject, facts))
  made.steps.push(fill(subject, facts))
  if (subject.gear.heaters.length > 0) made.steps.push(warmUp(subject, facts))
  const controller = controllerStep(subject, facts.holdDays)
  if (controller !== null) made.steps.push(controller)
  made.steps.push(runIn(subject, facts))
  if (facts.planted) made.steps.push(plant(subject, facts))
  return made
}

function fillNotComputed({ gear }: StartupSubject, facts: TankFacts): string[] {
  const out: string[] = []
  if (facts.waterL === null)
    out.push('Water to fill: the inside of the tank is not known. Count the buckets and write the sum down: every dose depends on it.')
  if (facts.salt && (gear.salts ?? []).length === 0)
    out.push('Salt: no salt mix is part of this plan. Read grams for a litre off its label.')
  if (!facts.disinfected) return out
  if (gear.conditioners.length === 0) out.push('Conditioner dose: no conditioner is part of this plan.')
  else if (!gear.conditioners.some((each) => each.spec.doseMlPerL !== undefined))
    out.push(`Conditioner dose: ${gear.conditioners[0]?.name ?? 'the product'} states none. Read millilitres for each litre off its label.`)
  return out
}

function conditionerPhrase({ gear }: StartupSubject, { waterL, disinfected, purified }: TankFacts): Phrase {
  if (purified) return phrase`none: the reverse-osmosis unit makes the water`
  if (!disinfected) return phrase`none: the water was said to carry no disinfectant`
  if (gear.conditioners.length === 0) return phrase`none in this plan: get one before you fill`
  const dose = waterL === null ? null : conditionerDose(gear, waterL)
  if (dose === null)
    return waterL === null
      ? phrase`by its label, for the water you count`
      : phrase`by its label, for ${litres(waterL)} of water and not for the size on the box`
  return phrase`${doseOf(dose.ml, 'mL')} of ${dose.name}`
}

/** Litres, marked as about where glass or filling are not stated: every later dose rests on them, so it is said here once. */
function waterPhrase({ waterL, assumed }: TankFacts): Phrase {
  if (waterL === null) return phrase`count the buckets`
  return assumed.length === 0 ? phrase`${litres(waterL)}` : phrase`about ${litres(waterL)}, assumed: ${assumed.join(', ')}`
}

/** Before a tank over a sump is left alone. */
const SUMP_TRIAL: readonly Phrase[] = [
  phrase`Fill the sump to its line with the return pump running.`,
  phrase`Pull the pump's plug and wait until nothing runs any more. Mark where the water stands: it must stay below the rim with a hand's width to spare. Plug it in again, and pull it once more.`,
]

function fill(subject: StartupSubject, facts: TankFacts): Step {
  const binds = subject.gear.conditioners.some((each) => each.spec.bindsAmmonia === true)
  const left = quantity(ammoniaFromChloramine(HIGHEST_RESIDUAL_MG_PER_L), 'mg/L', 2)
  const unknownTap = subject.conditions.disinfectant === 'unknown'
  return stepOf('fill', {
    id: 'fill',
    title: facts.salt ? 'Fill with the salt water' : 'Fill the tank',
    why: facts.chloramine
      ? phrase`${unknownTap ? 'Your tap may carry chloramine, so it is treated as if it did.' : 'Your tap carries chloramine.'} Breaking it leaves ammonia, up to ${left} as nitrogen: it counts towards the first dose.`
      : phrase`Dosed by the water that is really in the tank. The size on the box is often a fifth too much.`,
    amounts: [
      { label: 'Water', value: waterPhrase(facts) },
      { label: 'Conditioner', value: conditionerPhrase(subject, facts) },
      { label: 'Up to', value: phrase`${quantity(subject.conditions.waterBelowRimMm, 'mm', 0)} below the rim` },
    ],
    actions: [
      ...(facts.waterL !== null && facts.assumed.length > 0
        ? [phrase`Count the water that goes in. Where it differs by more than a tenth, every dose of this sheet goes by your count.`]
        : []),
      ...(facts.disinfected ? [phrase`Put the conditioner in with the first bucket, the whole amount.`] : []),
      phrase`Pour onto a plate or a bag laid on the substrate. Lukewarm water, near room temperature.`,
      phrase`${subject.gear.lid ? 'Fit the lid. ' : ''}Plug in the filter${isHeated(subject) ? ', not the heater' : ''}. Tilt or tap the filter until the air is out and the flow is even.`,
      ...(subject.gear.sump ? SUMP_TRIAL : []),
    ],
    howLong: 'one to two hours',
    stopAndAsk:
      facts.chloramine && !binds
        ? phrase`the conditioner's label does not say that it binds ammonia or treats chloramine; or water shows anywhere outside the glass.`
        : phrase`water shows anywhere outside the glass, or the filter rattles for more than ten minutes.`,
    done: facts.disinfected ? 'Done: full, conditioned, filter running' : 'Done: full, filter running',
    earliestDay: facts.holdDays,
    caution: caution('siphon'),
  })
}

/** Grams by the label of the first mix that states them, else by what labels usually say. */
function saltPhrase({ gear }: StartupSubject, waterL: number | null): Phrase {
  const mix = gear.salts?.find(({ spec }) => spec.gramsPerL !== undefined)
  if (waterL === null) return phrase`by its label, for the water you count, to salinity 35`
  if (mix?.spec.gramsPerL !== undefined)
    return phrase`${quantity((waterL * mix.spec.gramsPerL) / 1000, 'kg', 1)} of ${mix.name}, to salinity 35`
  const [low, high] = [SALT_G_PER_L.low, SALT_G_PER_L.high].map((grams) => quantity((waterL * grams) / 1000, 'kg', 1))
  return phrase`by its label, usually ${low ?? ''} to ${high ?? ''} for this much, to salinity 35`
}

/** Of the open ocean's water, for a meter that shows gravity: it means nothing without its temperature. */
const SEA_GRAVITY = phrase`a specific gravity of ${quantity(specificGravity(SALINITY.salt), 'share', 3)} at ${stated(25, 'degC', 0)}`

function mixSalt(subject: StartupSubject, { waterL, holdDays, purified }: TankFacts): Step {
  return stepOf('fill', {
    id: 'mix-salt',
    title: 'Mix the salt water and let it stand',
    why: phrase`Freshly mixed salt water is harsh. A day of air and movement settles it before rock or life goes in.`,
    amounts: [
      { label: 'Water', value: waterL === null ? phrase`count the buckets` : phrase`${litres(waterL)}` },
      { label: 'Salt', value: saltPhrase(subject, waterL) },
      { label: 'Should measure', value: phrase`${SALINITY.salt} g in a kilogram, ${SEA_GRAVITY}` },
    ],
    actions: [
      ...(purified ? [phrase`Take water that the reverse-osmosis unit made, and test it for chlorine first: its carbon wears out.`] : []),
      phrase`Salt into water, never water onto salt. Stir with a pump and an air stone for 24 h.`,
      phrase`Measure it at the temperature the meter is made for.`,
    ],
    howLong: 'one day',
    stopAndAsk: phrase`it stays cloudy after a day or two meters disagree.`,
    done: 'Done: clear, measured, a day old',
    earliestDay: holdDays,
    caution: caution('stand'),
  })
}

function warmUp(subject: StartupSubject, { holdDays }: TankFacts): Step {
  const { gear, conditions, report } = subject
  const controlled = isControlled(subject)
  const count = gear.heaters.reduce((sum, each) => sum + each.quantity, 0)
  const heaters = count > 1 ? 'Heaters' : 'Heater'
  const power = report.figures.heaterPowerW
  return stepOf('fill', {
    id: 'heater',
    title: controlled ? `${heaters} in water, no power yet` : `${heaters} in water first, then power`,
    why: phrase`A heater's glass must take the water's temperature before it gets hot, or it cracks${count > 1 ? `. ${count === 2 ? 'Two are' : 'More than one is'} there so that one failing is no disaster` : ''}.`,
    amounts: [
      { label: 'Wait', value: phrase`15 to 30 min under water, unplugged` },
      { label: 'Set to', value: phrase`${stated(conditions.livestock.targetC, 'degC', 0)}` },
      ...(power === undefined ? [] : [{ label: 'Power', value: phrase`${quantity(power, 'W', 0)} in all` }]),
    ],
    actions: [
      phrase`Unplug the filter and all else before hands go in.`,
      phrase`Fix ${count === 1 ? 'the heater' : count === 2 ? 'each heater, one at each end' : 'each heater, spread from end to end'} below the lowest water line, where water moves past it, clear of substrate and glass.`,
      controlled
        ? phrase`Set ${count > 1 ? 'all to the same figure' : 'the figure'} and wait. ${count > 1 ? 'They get' : 'It gets'} power only through the controller, in the next step.`
        : phrase`Set ${count > 1 ? 'all to the same figure' : 'the figure'} and wait. Hands out and dry: plug in heater and filter. Check the drip loop once more.`,
    ],
    howLong: '30 min',
    stopAndAsk: controlled
      ? phrase`the tube is cracked or has water in it. Leave it unplugged.`
      : phrase`the tube is cracked or has water in it, or the lamp never lights. Unplug first, then look.`,
    done: controlled ? 'Done: waited, set, still unplugged' : 'Done: waited, set, plugged in',
    earliestDay: holdDays,
    caution: caution('unplug'),
  })
}

function runIn(subject: StartupSubject, { holdDays }: TankFacts): Step {
  const { dangerC, lowestC } = subject.conditions.livestock
  const thermometer = subject.gear.thermometers?.[0]?.name
  return stepOf('fill', {
    id: 'run-in',
    title: 'Run 24 hours, then read the thermometer',
    why: isHeated(subject)
      ? phrase`A day shows a weak pump, a slow leak and a thermostat that lies, while nothing can come to harm.`
      : phrase`A day shows a weak pump, a slow leak and how warm the room keeps the water, while nothing can come to harm.`,
    amounts: [
      { label: 'Should read', value: shouldRead(subject) },
      { label: 'Never', value: phrase`at or above ${limitC(dangerC)}, nor below ${limitC(lowestC)}` },
      ...(subject.gear.lights.length > 0 ? [{ label: 'Light', value: phrase`6 to 8 h a day at first` }] : []),
    ],
    actions: [
      phrase`Read ${thermometer ?? 'the thermometer'} in the morning and in the evening${isHeated(subject) ? ', away from the heater' : ''}.${thermometer === undefined ? ' There is none in this plan: get one.' : ''}`,
      ...(isHeated(subject) ? [phrase`Outside that range, turn the heater's setting by as much as it is off, and run one day more.`] : []),
      phrase`Look under the tank, at the hoses and at the paper. Press TEST again.`,
      ...(subject.gear.filters.length > 0
        ? [
            phrase`With dry hands unplug the filter for ten minutes and watch: no water may come to the floor. Plug in: it must run again by itself.`,
          ]
        : []),
    ],
    howLong: 'one day',
    stopAndAsk: isHeated(subject)
      ? phrase`it still reads outside ${shouldRead(subject)} a day after its setting was turned, or water shows. Too warm: unplug the heater first.`
      : phrase`it leaves ${suitableRange(subject)} in the morning or in the evening, or water shows.`,
    done: 'Done: a day without a drop, temperature right',
    earliestDay: holdDays,
    caution: caution('unplug'),
  })
}

/** A degree to either side of the setting; without a heater there is no setting, and the animals' range counts. */
function shouldRead(subject: StartupSubject): Phrase {
  const { targetC } = subject.conditions.livestock
  if (!isHeated(subject)) return phrase`${suitableRange(subject)}: no heater holds it, the room does`
  return phrase`${stated(targetC - 1, 'degC', 0)} to ${stated(targetC + 1, 'degC', 0)}`
}

function plant(subject: StartupSubject, { holdDays, activeSoil }: TankFacts): Step {
  return stepOf('fill', {
    id: 'plants',
    title: 'Plant',
    why: phrase`Plants take up ammonia and hold algae back. ${activeSoil ? 'The soil feeds them from the first day.' : 'They need time to root before fish pull at them.'}`,
    actions: [
      isHeated(subject)
        ? phrase`Heater and filter unplugged while hands are in. Heater off 15 min before.`
        : phrase`Filter unplugged while hands are in.`,
      phrase`Take pots and wool off, shorten the roots to a finger's length, set each plant alone with tweezers.`,
      phrase`Plug in again, and see that the filter runs.`,
    ],
    howLong: 'about an hour',
    stopAndAsk: phrase`there are snails or jelly on the plants that you do not want: rinse and ask.`,
    done: 'Done: planted, all plugged in again',
    earliestDay: holdDays + 1,
    caution: caution('unplug'),
  })
}
