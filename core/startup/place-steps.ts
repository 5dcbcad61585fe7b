import { liftPeople } from '../sizing/empty-lift.ts'
import { situationOf } from '../sizing/situation.ts'
import { over } from '../sizing/span.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { caution, protectionCaution } from './cautions.ts'
import { protectiveDevice } from './protective-device.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject, type StepsMade } from './startup-subject.ts'

/**
 * Stand, level, bedding, tank.
 *
 * Units:  kg, mm. Errors: a weight that is not known is said in `notComputed`.
 * Source: common practice: 3 mm over the length, 1.5 mm over the depth, two people from 20 kg or 900 mm on and 25 kg each beyond; a floor finding is a screening only.
 *
 * @example placeSteps(subject).steps.map((step) => step.id) // ['place-stand', 'level', 'bed-glass', 'lift-tank']
 */
export function placeSteps(subject: StartupSubject): StepsMade {
  const { figures } = subject.report
  const notComputed: string[] = []
  if (figures.brimMassKg === undefined) notComputed.push('Weight of the full tank: the tank states too few of its dimensions.')
  if (figures.emptyMassKg === undefined) notComputed.push('Weight of the empty tank: read it off the box before lifting.')
  return { steps: [placeStand(subject), level(subject), bedGlass(subject), liftTank(subject)], notComputed }
}

const weighs = ({ gear }: StartupSubject, kg: number): Phrase =>
  phrase`about ${quantity(kg, 'kg', 0)}${gear.stand?.spec.massKg === undefined ? '' : ', stand included'}`

/** What the grains of the bed add to a tank full of water, kg. A litre of grains gives way to a litre of tap water, a kilogram. */
function bedKg({ gear, conditions, report }: StartupSubject): number {
  const { substrateMassKg = 0 } = report.figures
  const situation = situationOf({ gear, conditions })
  const solidL = situation.ok ? over(situation.value.corners, ({ laden }) => laden.substrateSolidL).high : 0
  return substrateMassKg === 0 || solidL === 0 ? 0 : substrateMassKg - solidL
}

/** What stands on the floor while the tank is full for the leak test, which comes before the bed; null where the tank states too little. */
export function leakTestWeight(subject: StartupSubject): Phrase | null {
  const { brimMassKg } = subject.report.figures
  return brimMassKg === undefined ? null : weighs(subject, brimMassKg - bedKg(subject))
}

/** What stands there: for the leak test, and later at the most. */
function weights(subject: StartupSubject): Step['amounts'] {
  const { brimMassKg } = subject.report.figures
  const leakTest = leakTestWeight(subject)
  if (brimMassKg === undefined || leakTest === null) return []
  if (bedKg(subject) === 0) return [{ label: 'Full to the rim', value: weighs(subject, brimMassKg) }]
  return [
    { label: 'Leak test, no bed', value: leakTest },
    { label: 'Full, with its bed', value: weighs(subject, brimMassKg) },
  ]
}

function placeStand(subject: StartupSubject): Step {
  const { gear, report } = subject
  const hoses = gear.filters.some(
    (each) => each.spec.type === 'canister' || each.spec.type === 'hang_on' || each.spec.type === 'return_pump',
  )
  const floor = report.findings.find((finding) => finding.check === 'floor_load')
  const askFirst = floor?.wording !== undefined && floor.wording !== 'within the usual allowance'
  return stepOf('place', {
    id: 'place-stand',
    title: gear.stand ? 'Place the stand' : 'Choose what the tank stands on',
    why: phrase`A full tank is never moved again, so its place is chosen once: away from sun, radiators and doors, near the outlet.`,
    amounts: [
      ...weights(subject),
      ...(hoses ? [{ label: 'Behind it', value: phrase`${quantity(75, 'mm', 0)} to ${quantity(150, 'mm', 0)} for hoses and cords` }] : []),
    ],
    actions: [
      gear.stand
        ? phrase`Set the stand in its place, doors and cords reachable.`
        : phrase`Use only what was built for this weight, flat under the whole tank. A shelf or a chest of drawers was not.`,
      phrase`Rock it by hand from corner to corner. It must not rock, and the floor must not bounce when you step beside it.`,
      phrase`Keep the outlet beside the stand, not straight below the tank.`,
      ...(askFirst ? [phrase`The floor finding of this tank says: ${floor.wording ?? ''}. Settle that before water goes in.`] : []),
    ],
    howLong: 'about 20 min',
    stopAndAsk: phrase`the floor sags or bounces, the place is a balcony, a mobile home or an upper floor you do not know, or the house has rules about it.`,
    done: 'Done: it stands where it will stay',
    earliestDay: 0,
    caution: protectionCaution(protectiveDevice(subject)),
  })
}

const levelTitle = ({ stand }: StartupSubject['gear']): string => (stand ? 'Level the stand' : 'Level the support')

function level({ gear }: StartupSubject): Step {
  return stepOf('place', {
    id: 'level',
    title: levelTitle(gear),
    why: phrase`A twist puts a seam under tension that no glue was made for. Water shows every tilt for years.`,
    amounts: [
      { label: 'Over the length', value: phrase`at most 3 mm (1/8 in)` },
      { label: 'Over the depth', value: phrase`at most 1.5 mm (1/16 in)` },
    ],
    actions: [
      phrase`Lay the level along the front, the back, both ends and both diagonals.`,
      phrase`Correct at the floor, with shims as wide as the foot they carry. Never put anything under the glass to level it.`,
      phrase`Measure again with someone's weight on the stand.`,
    ],
    howLong: 'about 20 min',
    stopAndAsk: phrase`one corner stays low or it rocks corner to corner after shimming.`,
    done: 'Done: level along, across and corner to corner',
    earliestDay: 0,
    drawing: 'level',
  })
}

function bedGlass({ gear }: StartupSubject): Step {
  const style = gear.tank?.spec.style
  const action = gear.mat
    ? phrase`Lay the mat (${gear.mat.name}) flat on the dry, swept stand; trim what stands out. One piece, no folds.`
    : style === 'rimmed'
      ? phrase`No mat: the rim carries the glass, and a mat would push on its floor. Wipe the stand free of grit.`
      : phrase`A flat glass floor wants a closed-cell mat under all of it, and there is none in this plan. See the maker's sheet first.`
  return stepOf('place', {
    id: 'bed-glass',
    title: gear.mat ? 'Lay the mat' : 'Prepare what is under the glass',
    why: phrase`One grain of grit under a glass floor is a point load. A mat spreads it; a rim keeps the floor clear of it.`,
    actions: [action, phrase`Feel the whole surface with a flat hand: no grit, no screw head, no step between boards.`],
    howLong: 'about 5 min',
    stopAndAsk: phrase`the tank's maker says otherwise, or you do not know whether the base is a rim or flat glass.`,
    done: gear.mat ? 'Done: mat flat, nothing under it' : 'Done: clean, dry and flat',
    earliestDay: 0,
  })
}

function liftTank({ gear, report }: StartupSubject): Step {
  const mass = report.figures.emptyMassKg
  return stepOf('place', {
    id: 'lift-tank',
    title: 'Lift the tank on',
    why: phrase`Empty glass is heavier than it looks and gives no warning.`,
    amounts:
      mass === undefined
        ? [{ label: 'How heavy', value: phrase`read it off the box` }]
        : [
            { label: 'How heavy', value: phrase`about ${quantity(mass, 'kg', 1)} empty` },
            {
              label: 'How many people',
              value: phrase`${liftPeople(mass, gear.tank?.spec.lengthMm ?? 0)} at least, more if the way is narrow`,
            },
          ],
    actions: [
      phrase`Would a leak harm this floor or a room below? Do the leak test first where it does not, level on this stand, drain it, and then lift it on here. Else lay a plastic sheet, its edges raised, and towels round the stand, and stay beside it.`,
      phrase`Empty it of everything. Lift from below, never by the rim or a brace.`,
      phrase`Set it down flat, not on a corner, and line its edges up with the stand.`,
      phrase`Check the level again on the tank's rim.`,
    ],
    howLong: 'about 15 min',
    stopAndAsk: phrase`it hangs over the stand anywhere, or the level changed by more than the figures of the step “${levelTitle(gear)}”.`,
    done: 'Done: on the stand, edges in line, still level',
    earliestDay: 0,
    caution: caution('lifting'),
  })
}
