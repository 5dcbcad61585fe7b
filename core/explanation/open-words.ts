import type { ConditionField } from '../sizing/conditions.ts'
import type { Finding } from '../sizing/finding.ts'
import { openInputs } from '../sizing/open-inputs.ts'
import type { OpenInput } from '../sizing/open-input.ts'
import type { SizingSubject } from '../sizing/report.ts'
import { MEDIA_M2_PER_L, FLOW_SHARE, MEDIA_L, LIGHT_ABOVE_RIM_MM, STAND_HEIGHT_MM } from '../sizing/typical-ranges.ts'
import { controllerCutOffC } from '../sizing/heater-stuck.ts'
import { feedGrams, stockFeed } from '../sizing/stock-feed.ts'
import { conditionWords, startOf } from '../sizing/words.ts'
import { phrase, quantity, stated, type Phrase } from '../units/quantity.ts'
import { stripPlace } from './cord-rows.ts'
import type { ExplainedInput } from './explanation.ts'
import { roomValue } from './room-inputs.ts'

const NOT_STATED = phrase`not stated`

/** What stands for an input that no field of a form asks for. */
const STOOD_IN: Record<string, (subject: SizingSubject) => Phrase> = {
  'clarity of the water and height of the light': () =>
    phrase`clear to tinted, ${quantity(LIGHT_ABOVE_RIM_MM.low, 'mm', 0)} to ${quantity(LIGHT_ABOVE_RIM_MM.high, 'mm', 0)} above the rim`,
  'flow that media leave': () => phrase`${FLOW_SHARE.low} to ${FLOW_SHARE.high} of what is printed`,
  'resistance of the media': () => phrase`rinsed to loaded`,
  'film area of the media': () => phrase`${MEDIA_M2_PER_L.low} to ${MEDIA_M2_PER_L.high} m² a litre`,
  'movement of the surface': () => phrase`a hundredth to a tenth of the power of the return`,
  'cut-off of the controller': ({ conditions }) => phrase`${stated(controllerCutOffC(conditions.livestock), 'degC', 1)}`,
  'volume of the media': () => phrase`by the filter's kind and flow, ${MEDIA_L.unknown.low} to ${MEDIA_L.unknown.high} L in all`,
  'feed a day of the group': (subject) => feedOf(subject),
  'feed a day by the size of the animals': (subject) => feedOf(subject),
  'form of the pump’s curve': () => phrase`a straight line to a parabola`,
  'place of the heater': () => phrase`in the sump`,
  'place of the strip': (subject) =>
    stripPlace(subject) === 'wall_strip'
      ? phrase`on the wall beside the outlet`
      : phrase`at the rim beside the tank, ${quantity((subject.gear.tank?.spec.lengthMm ?? 0) / 2, 'mm', 0)} from its middle`,
  'length of the hoses': () => phrase`about twice the height from the floor to the rim`,
  'height of the stand': () => phrase`${quantity(STAND_HEIGHT_MM.low, 'mm', 0)} to ${quantity(STAND_HEIGHT_MM.high, 'mm', 0)}`,
  'sides of the sump': () => phrase`a cube to a flat box of its litres`,
  'the sump': () => phrase`one of usual height, two fifths to three quarters full`,
  'fittings in the hoses': () => phrase`few to many`,
  'litres of a pack': () => phrase`by the usual density of its kind`,
  'length and depth of the stand’s top': () => phrase`those of the tank`,
  'how the tank lies on the joists': () => phrase`the way that loads one joist most`,
  'use of the room': () => phrase`a bedroom, which is built for less`,
  'how the stand meets the floor': () => phrase`two end panels`,
  'whether a rim or braces hold the top': () => phrase`nothing holds it, and a rim does`,
  'photon flux of the light': () => phrase`by its power`,
}

function feedOf(subject: SizingSubject): Phrase {
  const { low, high } = stockFeed(subject).grams
  return low === high ? phrase`${feedGrams(high)} of dry feed` : phrase`${feedGrams(low)} to ${feedGrams(high)} of dry feed`
}

function endsOf({ ends }: OpenInput): Phrase {
  const [first, last] = [ends[0]?.says ?? [], ends.at(-1)?.says ?? []]
  return ends.length > 2
    ? ends.flatMap(({ says }, at) => (at === 0 ? says : [at === ends.length - 1 ? ' or ' : ', ', ...says]))
    : phrase`${first} to ${last}`
}

/** What was taken for one open input: the default with how far it was tried, or the typical range. Undefined where nothing stands for it. */
function takenFor(name: string, subject: SizingSubject, open: readonly OpenInput[]): Phrase | undefined {
  const field = subject.conditions.assumed.find((each) => conditionWords(each) === name)
  const found = open.find((each) => each.name === name)
  const value = field && roomValue(subject.conditions, field)
  if (value !== undefined) return found && isFigure(field) ? phrase`${value}; may be ${endsOf(found)}` : value
  if (found) return endsOf(found)
  return STOOD_IN[name]?.(subject)
}

const CHOICES: ReadonlySet<ConditionField> = new Set(['plants', 'floor', 'disinfectant', 'circuitProtected'])
const isFigure = (field: ConditionField | undefined): boolean => field !== undefined && !CHOICES.has(field)

/** What nobody stated: assumed with what stands for it, or missing. Names are the finding's own. */
export function openInputsOf(finding: Finding, subject: SizingSubject): ExplainedInput[] {
  const names = [...finding.assumed, ...finding.missing.filter((name) => !finding.assumed.includes(name))]
  if (names.length === 0) return []
  const open = openInputs(subject)
  return names.map((name) => {
    const taken = takenFor(name, subject, open)
    const isMissing = finding.missing.includes(name)
    if (taken === undefined) return { name: startOf(name), value: NOT_STATED, from: isMissing ? 'missing' : 'assumed' }
    return { name: startOf(name), value: isMissing ? phrase`${taken}, which decides` : taken, from: isMissing ? 'missing' : 'assumed' }
  })
}
