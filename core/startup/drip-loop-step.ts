import { dripLoop, LOOP_DROP_MM } from '../sizing/drip-loop.ts'
import type { Finding } from '../sizing/finding.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { measuredIn } from '../units/reader.ts'
import { METRIC, sayAtLeastLength, US } from '../units/say.ts'
import { protectionCaution } from './cautions.ts'
import { isControlled } from './controller-step.ts'
import { protectiveDevice } from './protective-device.ts'
import type { Step } from './setup-plan.ts'
import { stepOf, type StartupSubject } from './startup-subject.ts'
import { tankFacts, type TankFacts } from './tank-facts.ts'

/** A length to keep to, rounded up in both measures, whichever is on the tape: "4 in (10 cm)". The install's own comes first. */
function atLeast(mm: number, { install }: StartupSubject): string {
  const first = install?.units ?? METRIC
  const second = measuredIn(first).length === 'in' ? METRIC : US
  return `${sayAtLeastLength(mm, first)} (${sayAtLeastLength(mm, second)})`
}

/** What the sizing found about the cords, told apart for the hand that lays them. */
interface CordState {
  finding: Finding | undefined
  /** No loop can hang at all: an end of the cord is too near the floor. */
  noRoom: boolean
  tooShort: boolean
}

/** The report's finding of the cords. Without a loop in its figures, *does not fit* can only mean that there is no room for one. */
function cordState({ report }: StartupSubject): CordState {
  const finding = report.findings.find(({ check }) => check === 'cord_length')
  const fails = finding?.verdict === 'does_not_fit'
  const noRoom = fails && report.figures.dripLoop === undefined
  return { finding, noRoom, tooShort: fails && !noRoom }
}

/**
 * The step of the drip loops: how low each cord hangs, what cord that takes outside the water, and what to do where one does not reach.
 *
 * Units:  least lengths rounded up in both measures, the install's first; other lengths in the reader's.
 * Errors: null without an appliance that has a cord. Without the height of tank or outlet it says how to measure with a string.
 * Source: the report's finding `cord_length` (a heater's cord counts from where it leaves the water); drop of 10 cm common practice.
 *
 * @example dripLoopStep(subject)?.done // 'Done: all 4 hang below the outlet'
 */
export function dripLoopStep(subject: StartupSubject): Step | null {
  const facts = tankFacts(subject)
  if (facts.cords.length === 0) return null
  const total = facts.cords.reduce((sum, cord) => sum + cord.count, 0)
  const state = cordState(subject)
  const plug = plugOf(subject)
  const hangs = `${total === 1 ? 'it hangs' : `all ${total} hang`} below the ${plug}${goesTo(subject) === 'strip' ? ", the strip's own below the outlet" : ''}`
  return stepOf('power', {
    id: 'drip-loops',
    title: titleOf(state),
    why: phrase`Water runs down a cord. Hang each one lower than the ${plug}, and the water drips off before it gets there.`,
    amounts: [
      { label: 'How many', value: phrase`${cordList(facts.cords)}${alsoCords(subject)}` },
      ...heights(subject),
      ...lengths(subject, state),
    ],
    actions: [
      phrase`Leave everything unplugged.`,
      ...mends(state),
      phrase`Let each cord hang behind the stand, and hold it with a clip so that it cannot slide.`,
      phrase`Measure from the ${plug} down to the lowest point of each cord.`,
      phrase`Fix the power strip in a splash cover, ${STRIP_HANGS[goesTo(subject) ?? 'outlet']}, never on the floor of the cabinet. Never plug one strip into another.`,
    ],
    howLong: 'about 15 min',
    stopAndAsk: phrase`an outlet or plug is wet, a cord is cut or too short, or the strip lies on the floor. Wet plug: do not touch it. Switch off at the breaker first.`,
    done: state.noRoom ? `Done: outlet raised, ${hangs}` : state.tooShort ? `Done: every cord reaches, ${hangs}` : `Done: ${hangs}`,
    earliestDay: facts.holdDays,
    drawing: 'drip_loop',
    caution: protectionCaution(protectiveDevice(subject)),
  })
}

type LoopFigure = NonNullable<StartupSubject['report']['figures']['dripLoop']>

/** The strip that everything goes into; undefined where cords go to the wall outlet, or apart. */
const goesTo = ({ report }: StartupSubject): LoopFigure['to'] => report.figures.dripLoop?.to
const plugOf = (subject: StartupSubject): string => (goesTo(subject) ? 'strip' : 'outlet')

const NEVER = 'above the lowest point of every loop and out of the drips, never under or behind the tank'
const STRIP_HANGS = {
  outlet: 'above the water line',
  strip: `beside the tank at the height of its rim, ${NEVER}`,
  wall_strip: `on the wall beside the outlet, ${NEVER}`,
}

/** Why the loops have no figure, for the plan's list; empty where they have one. */
export function dripLoopNotComputed(subject: StartupSubject): string[] {
  if (subject.report.figures.dripLoop !== undefined || tankFacts(subject).cords.length === 0) return []
  return cordState(subject).noRoom
    ? ['Cord for the drip loops: the outlet is too low for a loop. Raise it, then measure with a string that hangs below it.']
    : ['Cord for the drip loops: heights of tank and outlet are not known. Measure with a string that hangs below the outlet.']
}

function titleOf({ noRoom, tooShort }: CordState): string {
  if (noRoom) return 'Raise the outlet, then make the drip loops'
  return tooShort ? 'A cord is too short for its drip loop' : 'Make a drip loop in every cord'
}

function cordList(cords: TankFacts['cords']): Phrase {
  const total = cords.reduce((sum, cord) => sum + cord.count, 0)
  const names = cords.map((cord) => (cord.count > 1 ? `${cord.count} ${cord.what}s` : cord.what)).join(', ')
  return phrase`${total} ${total === 1 ? 'cord' : 'cords'}: ${names}`
}

/** Cords that are no appliance's: a strip's to the outlet, and a controller's beside that of its heater. */
function alsoCords(subject: StartupSubject): string {
  const heaters = subject.gear.heaters.reduce((sum, { quantity: count }) => sum + count, 0)
  const controllers = heaters > 1 ? `those of the ${heaters} controllers` : 'that of the controller'
  return `; and the power strip's own, where there is one${isControlled(subject) ? `, and ${controllers}` : ''}`
}

/** A canister's cord leaves it near the floor, below many outlets; a filter of a kind nobody stated may be one. */
const leavesLow = ({ gear }: StartupSubject): boolean =>
  gear.filters.some(({ spec }) => spec.type === 'canister' || spec.type === 'return_pump' || spec.type === undefined)

const lowLabel = ({ gear }: StartupSubject): string =>
  gear.filters.some(({ spec }) => spec.type === 'return_pump') ? 'Return pump' : 'Canister'

function heights(subject: StartupSubject): Step['amounts'] {
  const loop = subject.report.figures.dripLoop
  const drop = atLeast(LOOP_DROP_MM, subject)
  return [
    { label: 'How low', value: phrase`lowest point at least ${drop} under the ${plugOf(subject)} it is plugged into` },
    ...(leavesLow(subject)
      ? [{ label: lowLabel(subject), value: phrase`lowest point ${drop} under where its cord leaves it as well` }]
      : []),
    ...(loop === undefined
      ? []
      : [{ label: 'Low point', value: phrase`${quantity(loop.lowPointMm, 'mm', 0)} above the floor, for cords from the rim` }]),
  ]
}

function lengths(subject: StartupSubject, { finding, noRoom }: CordState): Step['amounts'] {
  if (noRoom && finding) return [{ label: 'Outlet', value: finding.reason }]
  const loop = subject.report.figures.dripLoop
  if (loop === undefined) {
    return [
      {
        label: 'Cord needed',
        value: phrase`measure: a string from the tank to the outlet that hangs ${atLeast(LOOP_DROP_MM, subject)} below it`,
      },
    ]
  }
  const needed = { label: 'Cord needed', value: phrase`${atLeast(loop.neededMm, subject)} outside the water, from the rim` }
  const told = [needed, ...stripRows(loop, subject)]
  return finding === undefined ? told : [...told, { label: 'Does it reach', value: reach(finding, subject) }]
}

/** Whose reach it is, and what of the strip: where all go into it, the place where it hangs and its own way to the wall. */
function stripRows(loop: LoopFigure, subject: StartupSubject): Step['amounts'] {
  const drop = atLeast(LOOP_DROP_MM, subject)
  const at = phrase`${quantity(loop.outletHeightMm, 'mm', 0)} above the floor and ${quantity(loop.distanceMm, 'mm', 0)}`
  if (loop.to === undefined)
    return [
      {
        label: 'Reckoned for',
        value: phrase`the wall outlet, ${at} away. It is what a cord needs that goes there by itself`,
      },
      {
        label: 'With a strip',
        value: phrase`two ways, each with its own loop. From the tank to the strip: measure with a string that hangs ${drop} below both. From the strip to the wall outlet: the strip's own cord, which is not counted above, hangs ${drop} below the outlet`,
      },
    ]
  if (loop.to === 'wall_strip')
    return [
      {
        label: 'Reckoned for',
        value: phrase`the strip on the wall beside the outlet, ${at} away. Every cord goes into it, none into the wall`,
      },
      { label: "Strip's own cord", value: phrase`plugged in beside it; it hangs ${drop} below the outlet too` },
    ]
  const { outletHeightMm, outletDistanceMm: distanceMm } = subject.conditions
  const own = dripLoop({ exitHeightMm: loop.outletHeightMm, outletHeightMm, distanceMm })
  return [
    {
      label: 'Reckoned for',
      value: phrase`the strip beside the rim, ${at} from the middle of the tank. Every cord goes into it, none into the wall`,
    },
    ...(own === null
      ? []
      : [
          {
            label: "Strip's own cord",
            value: phrase`${atLeast(Math.round(own.neededMm), subject)} to the wall outlet, with its lowest point ${quantity(own.lowPointMm, 'mm', 0)} above the floor`,
          },
        ]),
  ]
}

/** The sizing's own sentence about the cord that falls shortest, and what it comes to. */
function reach({ verdict, reason, limit, assumed }: Finding, subject: StartupSubject): Phrase {
  const neededMm = limit?.kind === 'at_least' ? limit.low.value : null
  // A least length is told rounded up, in the sentence as in the amount above it, or the two would be different figures.
  const said = reason.map((part) =>
    typeof part !== 'string' && part.unit === 'mm' && part.value === neededMm ? atLeast(part.value, subject) : part,
  )
  const words = {
    fits: 'yes, all do.',
    marginal: 'just, without slack.',
    does_not_fit: 'no.',
    not_known: 'measure it first.',
  }[verdict]
  return phrase`${words} ${said}${assumed.length === 0 ? '' : ` Assumed, so measure: ${assumed.join(', ')}.`}`
}

function mends({ finding, noRoom, tooShort }: CordState): Phrase[] {
  if (noRoom) {
    return [
      phrase`Raise the outlet: plug into a higher one, or have a licensed electrician set one. A power strip does not mend it, since its own cord needs a loop below the same outlet. Plug nothing in before that.`,
    ]
  }
  return tooShort ? [phrase`Plug nothing in before every cord reaches.`, ...(finding?.action ? [finding.action.text] : [])] : []
}
