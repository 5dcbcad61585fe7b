import { phrase, quantity, type Phrase, type Unit } from '../units/quantity.ts'
import type { ConditionField, Conditions, OnlyStated } from './conditions.ts'
import { boughtBedKg } from './laden-bed.ts'
import type { InputEnd, OpenInput } from './open-input.ts'
import { assumedOf } from './words.ts'

type FigureField = 'coldestRoomC' | 'warmestRoomC' | 'waterBelowRimMm' | 'substrateDepthMm' | 'otherLoadW' | 'outletHeightMm' | 'outletDistanceMm' | 'lightHoursPerDay' // prettier-ignore
type ChoiceField = 'plants' | 'floor' | 'disinfectant' | 'circuitProtected'

/**
 * What a default may turn out to be in nearly every home, tried one end at a time. Common practice; wider than what is usual and narrower than what a form
 * accepts: a bedroom by an open window and an attic in July, a tank filled to a finger's width and one kept low, a bare bottom and a planted one, an idle
 * circuit and one with a kettle on it, an outlet at the skirting and one over a worktop, a lamp for a display and one for plants.
 */
const FIGURES: Record<FigureField, { low: number; high: number; unit: Unit; question: string }> = {
  coldestRoomC: { low: 12, high: 21, unit: 'degC', question: 'How cold does the room get on a winter night?' },
  warmestRoomC: { low: 22, high: 33, unit: 'degC', question: 'How warm does the room get on a summer afternoon?' },
  waterBelowRimMm: { low: 10, high: 80, unit: 'mm', question: 'How far below the rim will the water stand?' },
  substrateDepthMm: { low: 0, high: 100, unit: 'mm', question: 'How deep will the substrate be?' },
  otherLoadW: { low: 0, high: 1500, unit: 'W', question: 'What else runs on the same circuit?' },
  outletHeightMm: { low: 150, high: 1200, unit: 'mm', question: 'How high above the floor is the outlet?' },
  outletDistanceMm: { low: 0, high: 2000, unit: 'mm', question: 'How far from the tank is the outlet?' },
  lightHoursPerDay: { low: 6, high: 12, unit: 'h', question: 'How many hours a day will the light be on?' },
}

/** Every answer that settles something; "not known" settles nothing. */
const CHOICES: { [Field in ChoiceField]: { question: string; answers: ReadonlyArray<readonly [Conditions[Field], string]> } } = {
  plants: {
    question: 'Which plants will grow in it?',
    answers: [['none', 'none'], ['low', 'of low light'], ['medium', 'of medium light'], ['high', 'of high light']],
  },
  floor: {
    question: 'What is the floor: on the ground, wood, or concrete over a room?',
    answers: [['ground_slab', 'a slab on the ground'], ['timber_upper', 'wood'], ['concrete_upper', 'concrete over a room']],
  },
  disinfectant: {
    question: 'What does the waterworks put into the tap water?',
    answers: [['chlorine', 'chlorine'], ['chloramine', 'chloramine'], ['none', 'nothing']],
  },
  circuitProtected: {
    question: 'Does a GFCI or residual-current device protect the circuit?',
    answers: [[true, 'protected'], [false, 'not protected']],
  },
} // prettier-ignore

/** An end with the room's two temperatures kept in order: what was stated stays, and the end gives way. */
function inOrder(field: FigureField, value: number, { coldestRoomC, warmestRoomC }: Conditions): number {
  if (field === 'coldestRoomC') return Math.min(value, warmestRoomC)
  return field === 'warmestRoomC' ? Math.max(value, coldestRoomC) : value
}

const stateAs =
  <Field extends ConditionField>(field: Field, value: Conditions[Field]): InputEnd['state'] =>
  (subject) => {
    // Bags that are bought for no stated depth go on weighing what they weigh, whatever depth is tried.
    const bought = field === 'substrateDepthMm' && boughtBedKg(subject.gear) !== undefined
    const assumed = bought ? subject.conditions.assumed : subject.conditions.assumed.filter((each) => each !== field)
    return { ...subject, conditions: { ...subject.conditions, [field]: value, assumed } }
  }

const figureSays = (value: number, unit: Unit): Phrase => phrase`${quantity(value, unit, 0)}`

function endsOf(field: ConditionField, conditions: Conditions): { question: string; ends: InputEnd[] } | null {
  if (Object.hasOwn(FIGURES, field)) {
    const { low, high, unit, question } = FIGURES[field as FigureField]
    const values = [low, high].map((value) => inOrder(field as FigureField, value, conditions))
    const ends = values.map((value) => ({ says: figureSays(value, unit), state: stateAs(field as FigureField, value) }))
    return { question, ends }
  }
  if (!Object.hasOwn(CHOICES, field)) return null
  const { question, answers } = CHOICES[field as ChoiceField]
  return { question, ends: answers.map(([value, says]) => ({ says: phrase`${says}`, state: stateAs(field as ChoiceField, value) })) }
}

/**
 * The defaults of a room that a person could replace by an answer, each with its ends. What an install's manager set stands for no question.
 *
 * @example roomInputs({ ...conditions, assumed: ['floor'] }).map(({ name }) => name) // ['kind of floor']
 */
export function roomInputs(conditions: Conditions): OpenInput[] {
  return [...defaultInputs(conditions), ...statedInputs(conditions)]
}

/** What no default is filled in for and a check takes something for all the same, by the words of its finding. */
function statedInputs({ altitudeM, floor, joistSpanMm, joistSpacingMm, joistLie, floorUse }: Conditions): OpenInput[] {
  const joists = floor === 'timber_upper' && joistSpanMm !== undefined && joistSpacingMm !== undefined
  const inputs: Array<OpenInput | false> = [
    altitudeM === undefined && {
      name: 'height above the sea',
      question: 'How high above the sea is the place (Height above the sea)?',
      place: { at: 'need', field: 'altitudeM' },
      // From the coast to the high plains where people live. Common practice.
      ends: [0, 2000].map((value) => ({ says: figureSays(value, 'm'), state: statedAs('altitudeM', value) })),
    },
    joists &&
      joistLie === undefined && {
        name: 'how the tank lies on the joists',
        question: 'How does the tank lie on the joists (Tank and joists)?',
        place: { at: 'need', field: 'joistLie' },
        ends: LIES.map(([value, says]) => ({ says: phrase`${says}`, state: statedAs('joistLie', value) })),
      },
    joists &&
      floorUse === undefined && {
        name: 'use of the room',
        question: 'Is the room a bedroom (Room is)?',
        place: { at: 'need', field: 'floorUse' },
        ends: USES.map(([value, says]) => ({ says: phrase`${says}`, state: statedAs('floorUse', value) })),
      },
  ]
  return inputs.filter((each) => each !== false)
}

const LIES = [['bearing_wall', 'against the wall that carries them'], ['across', 'across them'], ['along', 'along them']] as const // prettier-ignore
const USES = [
  ['bedroom', 'a bedroom'],
  ['other', 'no bedroom'],
] as const

const statedAs =
  <Field extends keyof OnlyStated>(field: Field, value: OnlyStated[Field]): InputEnd['state'] =>
  (subject) => ({ ...subject, conditions: { ...subject.conditions, [field]: value } })

function defaultInputs(conditions: Conditions): OpenInput[] {
  return conditions.assumed.flatMap((field): OpenInput[] => {
    const found = endsOf(field, conditions)
    const [name] = assumedOf(conditions, [field])
    return found === null || name === undefined ? [] : [{ name, place: { at: 'need', field }, ...found }]
  })
}
