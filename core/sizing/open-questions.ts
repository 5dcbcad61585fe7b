import type { AnswerPlace } from './answer-place.ts'
import { signOf } from './count-words.ts'
import { hurtRankOf, isOfHarm } from './hurt-rank.ts'
import type { Gear } from './gear.ts'
import type { Check, Finding } from './finding.ts'
import type { OpenInput } from './open-input.ts'
import type { OpenQuestion, SizingSubject } from './report.ts'

/** A report asks for three things at a time: a longer list is answered by nobody. Own. */
export const MOST_QUESTIONS = 3

/** What a finding misses that has no range to try, and where it is answered. */
const MISSED: Readonly<Record<string, { text: string; place: AnswerPlace }>> = {
  'length, depth and height of the tank': { text: 'Which tank will it be?', place: { at: 'slot', slot: 'hold_water' } },
  'style of the tank: rimmed or rimless': { text: 'Has the tank a rim, braces, or neither?', place: { at: 'slot', slot: 'hold_water' } },
  'whether a rim or braces hold the top': { text: 'Has the tank a rim, braces, or neither?', place: { at: 'slot', slot: 'hold_water' } },
  'flow of the filter': { text: 'What flow is printed on the filter?', place: { at: 'slot', slot: 'filter' } },
  'size of the lid': { text: 'How long and how deep is the lid?', place: { at: 'slot', slot: 'cover' } },
  'shape of the lid': { text: 'Has the lid the shape of the tank?', place: { at: 'slot', slot: 'cover' } },
  'size of the mat': { text: 'How large is the mat?', place: { at: 'slot', slot: 'bed_glass' } },
  'length of the light': { text: 'How long is the light?', place: { at: 'slot', slot: 'light' } },
  'stated load of the stand': { text: 'What load does the stand’s maker state?', place: { at: 'slot', slot: 'carry_tank' } },
  'length and depth of the stand’s top': { text: 'How large is the stand’s top?', place: { at: 'slot', slot: 'carry_tank' } },
  'how the stand meets the floor': { text: 'Does the stand rest on feet, on end panels, or all over?', place: { at: 'slot', slot: 'carry_tank' } },
  'dose and content of the conditioner': { text: 'What does the conditioner’s label say of its dose?', place: { at: 'slot', slot: 'treat_water' } },
  'whether the conditioner binds ammonia': { text: 'Does the conditioner bind ammonia?', place: { at: 'slot', slot: 'treat_water' } },
  'what the test kit measures': { text: 'What does the test kit measure?', place: { at: 'slot', slot: 'test_water' } },
  'protective device of the strip': { text: 'Has the power strip a protective device?', place: { at: 'slot', slot: 'protect_circuit' } },
  'outlets of the strip': { text: 'How many outlets has the power strip?', place: { at: 'slot', slot: 'protect_circuit' } },
  'litres or weight of a pack': { text: 'How many litres or kilograms has a pack of substrate?', place: { at: 'slot', slot: 'substrate' } },
  'litres of a pack': { text: 'How many litres has a pack of substrate?', place: { at: 'slot', slot: 'substrate' } },
  'cooling power of the chiller': { text: 'How much heat does the chiller take out?', place: { at: 'slot', slot: 'cool' } },
  'span and spacing of the joists': { text: 'How long and how far apart are the joists under the floor?', place: { at: 'need', field: 'joistSpanMm' } },
  'how the floor bears': { text: 'Who can say what the floor bears: the owner, the plans, an engineer?', place: { at: 'need', field: 'floor' } },
  'thickness of the slab and what lies under it': { text: 'How thick is the slab, and what lies under it?', place: { at: 'need', field: 'floor' } },
  'photon flux of the light': { text: 'What photon flux does the light’s maker state (Photon flux)?', place: { at: 'slot', slot: 'light' } },
  'disinfectant in the tap water': { text: 'What does the waterworks put into the tap water?', place: { at: 'need', field: 'disinfectant' } },
  'word of the maker': { text: 'What does the tank’s maker say of its panes?', place: { at: 'slot', slot: 'hold_water' } },
  'flow of the circulation pump': { text: 'What flow is printed on the circulation pump (Rated flow)?', place: { at: 'slot', slot: 'circulate' } },
  'tank size on the skimmer’s box': { text: 'For what size of tank does the skimmer’s box say it is?', place: { at: 'slot', slot: 'skim' } },
  'volume of the sump': { text: 'How much does the sump hold to its rim (Volume to the rim)?', place: { at: 'slot', slot: 'sump' } },
  'sides of the sump': { text: 'How long, deep and high is the sump outside (Length, Width, Height)?', place: { at: 'slot', slot: 'sump' } },
  'the sump': { text: 'Which sump will stand below the tank?', place: { at: 'slot', slot: 'sump' } },
  'outlets within reach': { text: 'How many outlets are within reach of the tank?', place: { at: 'slot', slot: 'protect_circuit' } },
  'whether the stand has a full board': { text: 'Is the stand’s top a full board or a frame?', place: { at: 'slot', slot: 'carry_tank' } },
  'a top of the tank’s own shape': { text: 'Which stand has a top of the tank’s own shape?', place: { at: 'slot', slot: 'carry_tank' } },
  'length and depth that are the same': { text: 'How wide across is the round tank (Length, Depth)?', place: { at: 'slot', slot: 'hold_water' } },
  'bow of the front that leaves its ends': { text: 'How far does the middle of the front stand out before its ends?', place: { at: 'slot', slot: 'hold_water' } },
  'depth of the ends that leaves a front': { text: 'How deep are the short ends beside the cut front?', place: { at: 'slot', slot: 'hold_water' } },
  'thickness of glass and bottom that leaves room inside': { text: 'How thick are glass and bottom?', place: { at: 'slot', slot: 'hold_water' } },
  'water level below the rim that leaves water in the tank': { text: 'How far below the rim will the water stand?', place: { at: 'need', field: 'waterBelowRimMm' } },
  'substrate depth that leaves water above it': { text: 'How deep will the substrate be?', place: { at: 'need', field: 'substrateDepthMm' } },
} // prettier-ignore

/** What of a build a slot's question is about; of others something is asked although nothing is chosen: "Which sump will stand below the tank?". */
const CHOSEN: Partial<Record<string, (gear: Gear) => boolean>> = {
  carry_tank: ({ stand }) => stand !== null,
  cover: ({ lid }) => lid !== null,
  filter: ({ filters }) => filters.length > 0,
  light: ({ lights }) => lights.length > 0,
  substrate: ({ substrates }) => substrates.length > 0,
  treat_water: ({ conditioners }) => conditioners.length > 0,
  test_water: ({ testKits }) => testKits.length > 0,
}

/** Nobody can answer for gear that is not chosen. */
const isChosen = (gear: Gear, place: AnswerPlace): boolean => place.at === 'need' || (CHOSEN[place.slot]?.(gear) ?? true)

const keyOf = (place: AnswerPlace, text: string): string => (place.at === 'need' ? place.field : `${place.slot} ${text}`)

/** Behind every check of harm. */
const BEHIND_HARM = 1000

/**
 * How soon a question should be asked, least first: by the check of harm that it keeps from fitting, else, behind all of those, by the first check that it bears on.
 *
 * @example urgencyOf({ checks: ['floor_load'] }, findings) // 6 where somebody is to be asked before it is placed
 */
export function urgencyOf({ checks }: Pick<OpenQuestion, 'checks'>, findings: readonly Finding[]): number {
  const open = findings.filter((finding) => checks.includes(finding.check) && isOfHarm(finding.check) && signOf(finding) !== 'fits')
  if (open.length > 0) return Math.min(...open.map(({ check }) => hurtRankOf(check)))
  return BEHIND_HARM + Math.min(...checks.map(hurtRankOf))
}

/**
 * The three questions whose answers would settle or change most: first what keeps a check of harm from fitting, then what bears on the check that can hurt
 * soonest, then on most checks; none about gear that is not chosen. Where all three would only turn a verdict, the last one gives way to the first that a check cannot be made without.
 *
 * `findings` have their turns. An open floor is asked for once, whether its kind or its bearing is open.
 *
 * @example openQuestions(findings, inputs, subject)[0]?.text // 'How warm does the room get on a summer afternoon?'
 */
export function openQuestions(findings: readonly Finding[], inputs: readonly OpenInput[], { gear }: SizingSubject): OpenQuestion[] {
  const asked = new Map<string, OpenQuestion>()
  const settling = new Set<string>()
  const ask = (text: string, input: string, place: AnswerPlace, check: Check, settles = true) => {
    const key = keyOf(place, text)
    const question = asked.get(key) ?? { text, input, place, checks: [] }
    if (!question.checks.includes(check)) question.checks.push(check)
    asked.set(key, question)
    if (settles) settling.add(question.text)
  }
  const named = new Map(inputs.map((input) => [input.name, input]))
  for (const { check, turns = [], missing } of findings) {
    for (const { input } of turns) {
      const open = named.get(input)
      if (open) ask(open.question, input, open.place, check, false)
    }
    if (gear.tank === null && check !== 'heater_stuck' && missing[0] === 'length, depth and height of the tank') continue
    for (const name of missing) {
      const [missed, open] = [MISSED[name], named.get(name)]
      if (open) ask(open.question, name, open.place, check)
      else if (missed && isChosen(gear, missed.place)) ask(missed.text, name, missed.place, check)
    }
  }
  const rank = hurtRankOf
  const questions = [...asked.values()].map((each) => ({ ...each, checks: each.checks.toSorted((a, b) => rank(a) - rank(b)) }))
  const urgency = (question: OpenQuestion) => urgencyOf(question, findings)
  questions.sort((a, b) => urgency(a) - urgency(b) || b.checks.length - a.checks.length)
  const first = questions.slice(0, MOST_QUESTIONS)
  const settled = first.some(({ text }) => settling.has(text)) ? undefined : questions.find(({ text }) => settling.has(text))
  return settled ? [...first.slice(0, -1), settled] : first
}
