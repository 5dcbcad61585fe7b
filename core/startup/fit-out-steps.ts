import type { FilterSpec } from '../catalog/spec.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { caution } from './cautions.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject, type StepsMade } from './startup-subject.ts'
import { tankFacts, type TankFacts } from './tank-facts.ts'

/**
 * Substrate, stones and wood, filter: everything that goes in before the mains.
 *
 * Units:  kg dry, mm deep. Errors: packs that state no weight are filled by depth, and `notComputed` says so.
 * Source: common practice.
 *
 * @example fitOutSteps(subject).steps.map((step) => step.id) // ['rinse-substrate', 'hardscape', 'plumb-filter']
 */
export function fitOutSteps(subject: StartupSubject): StepsMade {
  const facts = tankFacts(subject)
  const steps: Step[] = []
  const notComputed: string[] = []
  if (subject.gear.substrates.length > 0) {
    steps.push(substrate(subject, facts))
    if (subject.report.figures.substrateMassKg === undefined)
      notComputed.push('Weight of the substrate: the packs state no weight. Fill by depth.')
  }
  steps.push(hardscape(facts, subject.gear.substrates.length === 0))
  if (subject.gear.filters.length > 0) steps.push(plumbFilter(subject, facts))
  return { steps, notComputed }
}

/** All of what is bought goes in: as deep as the report says that it comes to, where it does; else as deep as was asked. */
function bedMm({ findings }: StartupSubject['report'], { substrateDepthMm }: StartupSubject['conditions']): number {
  const made = findings.find(({ check }) => check === 'substrate_depth')?.value
  return made !== undefined && made.value > 0 ? made.value : substrateDepthMm
}

/** Once the bed lies, no sheet comes under a stone any more. */
const SHEET_FIRST = phrase`Where heavy stones will stand, lay the thin plastic sheet or mat on the glass first.`

function substrate({ gear, conditions, report }: StartupSubject, facts: TankFacts): Step {
  const mass = report.figures.substrateMassKg
  const packs = gear.substrates.map((each) => `${each.quantity} × ${each.name}`).join(', ')
  return stepOf('fit_out', {
    id: facts.activeSoil ? 'lay-soil' : 'rinse-substrate',
    title: facts.activeSoil ? 'Lay the soil, unrinsed' : 'Rinse and lay the substrate',
    why: facts.activeSoil
      ? phrase`Active soil falls apart when it is washed. It gives off ammonia of its own at first, which feeds the cycle.`
      : phrase`Dust left in the packs clouds the water for days and settles in the filter.`,
    amounts: [
      { label: 'What', value: phrase`${packs}` },
      ...(mass === undefined ? [] : [{ label: 'How much', value: phrase`about ${quantity(mass, 'kg', 0)} dry` }]),
      { label: 'How deep', value: phrase`about ${quantity(bedMm(report, conditions), 'mm', 0)}, a little more at the back` },
    ],
    actions: facts.activeSoil
      ? [
          SHEET_FIRST,
          phrase`Do not rinse it. Open the pack, pour it in dry and gently.`,
          phrase`Slope it upwards to the back with a flat card. Do not press it down.`,
        ]
      : [
          SHEET_FIRST,
          phrase`Rinse it in a bucket, a third full, under running tap water, stirring, until the water runs clear. No soap.`,
          phrase`Lay it in by hand or with a jug. Do not drop it on the glass.`,
        ],
    howLong: facts.activeSoil ? 'about 20 min' : 'about an hour',
    stopAndAsk: phrase`the pack says something else about rinsing: the maker is right.`,
    done: facts.activeSoil ? 'Done: laid dry, sloped to the back' : 'Done: rinsed clear and laid',
    earliestDay: facts.holdDays,
  })
}

function hardscape({ holdDays, salt }: TankFacts, bare: boolean): Step {
  return stepOf('fit_out', {
    id: 'hardscape',
    title: salt ? 'Set the dry rock' : 'Set stones and wood',
    why: phrase`A stone that slides breaks glass. It is set while the tank is empty and can be seen from all sides.`,
    actions: [
      bare
        ? phrase`Set heavy stones on a thin plastic sheet or mat, not on bare glass.`
        : phrase`Push heavy stones down through the substrate until they sit firm on the sheet below it, not on bare glass.`,
      phrase`Pile nothing that a fish could dig loose. Leave a hand's width to each pane for cleaning.`,
      phrase`Soaked wood sinks; weigh down what floats.`,
    ],
    howLong: 'as long as you like',
    stopAndAsk: phrase`a stone fizzes with a drop of vinegar and your animals want soft water, or you do not know where a piece came from.`,
    done: 'Done: nothing moves when pushed',
    earliestDay: holdDays,
  })
}

const PRIMING: Record<NonNullable<FilterSpec['type']>, Phrase> = {
  canister: phrase`Push both hoses home and tighten their nuts. Fill the canister with water before its lid goes on; open both taps.`,
  hang_on: phrase`Hang it level, put the media in rinsed, and fill its box with water.`,
  internal: phrase`Fix it upright below the water line, with its outlet just under the surface.`,
  return_pump: phrase`Stand the pump in the last chamber of the sump, its pipe pushed home. Media go into the chambers before it.`,
  sponge: phrase`Squeeze the sponge under water until no air comes. Fit a check valve in the air hose if the pump stands below the water line.`,
}

function plumbFilter({ gear }: StartupSubject, { holdDays }: TankFacts): Step {
  const types = [...new Set(gear.filters.map((each) => each.spec.type))]
  const priming = types.map((type) => (type === undefined ? phrase`Assemble the filter as its maker shows, media rinsed.` : PRIMING[type]))
  return stepOf('fit_out', {
    id: 'plumb-filter',
    title: 'Connect the filter, no power yet',
    why: phrase`A pump that runs dry wears out in minutes, and a loose hose empties the tank. Both are found now.`,
    amounts: [
      {
        label: 'What',
        value: phrase`${gear.filters.map((each) => (each.quantity > 1 ? `${each.quantity} × ${each.name}` : each.name)).join(', ')}`,
      },
    ],
    actions: [
      phrase`Rinse the media in tap water. It is new: nothing alive is lost.`,
      ...priming,
      phrase`Leave it unplugged until the tank is full.`,
    ],
    howLong: 'about 30 min',
    stopAndAsk: phrase`a hose does not seat, a seal is cut, or a part is left over.`,
    done: 'Done: connected, filled, unplugged',
    earliestDay: holdDays,
    caution: caution('siphon'),
  })
}
