import { describe, expect, it } from 'vitest'
import type { Check, Finding } from '../../../core/sizing/finding.ts'
import { makeFinding } from '../../../core/sizing/make-finding.ts'
import type { OpenInput } from '../../../core/sizing/open-input.ts'
import { openQuestions } from '../../../core/sizing/open-questions.ts'
import { conditions, gear } from './sample-build.ts'

const subject = { gear: gear(), conditions: conditions() }
const finding = (check: Check, { turns = [], missing = [] }: { turns?: string[]; missing?: string[] } = {}): Finding =>
  makeFinding(check, {
    verdict: 'not_known',
    reason: ['It is open.'],
    source: { tag: 'own', text: 'Tarnwick.' },
    missing,
    turns: turns.map((input) => ({ input, at: ['so'], verdict: 'fits' })),
  })
const input = (name: string, place: OpenInput['place'] = { at: 'need', field: 'coldestRoomC' }): OpenInput => ({
  name,
  question: `What of ${name}?`,
  place,
  ends: [],
})
const asked = (findings: Finding[], inputs: OpenInput[] = [], of = subject) =>
  openQuestions(findings, inputs, of).map(({ text, checks }) => [text, ...checks])

describe('what is asked next', () => {
  // Ranks: heater stuck 1, protective device 2, power 3, drain-down 4, stand load 5, floor 6, stand size 8, the warmest room 14, lid 26, light level 30.
  it('comes first where it can hurt soonest, and then where it bears on most', () => {
    const cold = input('cold', { at: 'need', field: 'coldestRoomC' })
    const warm = input('warm', { at: 'need', field: 'warmestRoomC' })
    const plants = input('plants', { at: 'need', field: 'plants' })
    expect(
      asked(
        [
          finding('light_level', { turns: ['plants', 'warm'] }),
          finding('warm_room', { turns: ['warm', 'cold'] }),
          finding('lid', { turns: ['plants', 'cold', 'warm'] }),
        ],
        [plants, cold, warm],
      ),
    ).toEqual([
      ['What of warm?', 'warm_room', 'lid', 'light_level'],
      ['What of cold?', 'warm_room', 'lid'],
      ['What of plants?', 'lid', 'light_level'],
    ])
  })

  it('comes first where it keeps a check of harm open, before what would turn one that fits', () => {
    const fitting = (check: Check, turns: string[]): Finding => ({ ...finding(check, { turns }), verdict: 'fits' })
    const other = input('other load', { at: 'need', field: 'otherLoadW' })
    const joists = finding('floor_load', { missing: ['span and spacing of the joists'] })
    const light = finding('light_level', { missing: ['photon flux of the light'] })
    expect(asked([fitting('electrical_load', ['other load']), light, { ...joists, wording: 'ask before you place it' }], [other])).toEqual([
      ['How long and how far apart are the joists under the floor?', 'floor_load'],
      ['What of other load?', 'electrical_load'],
      ['What photon flux does the light’s maker state (Photon flux)?', 'light_level'],
    ])
    // A floor within its usual allowance is told as marginal and settles nothing soon; a load that no longer fits does.
    const within: Finding = { ...finding('floor_load', { turns: ['floor'] }), verdict: 'marginal', wording: 'within the usual allowance' }
    const floor = input('floor', { at: 'need', field: 'floor' })
    const spread: Finding = { ...finding('electrical_load', { turns: ['other load'] }), verdict: 'marginal' }
    expect(asked([fitting('heater_stuck', ['warm']), within, spread], [other, floor, input('warm')])).toEqual([
      ['What of other load?', 'electrical_load'],
      ['What of warm?', 'heater_stuck'],
      ['What of floor?', 'floor_load'],
    ])
  })

  it('is not about gear that is not chosen', () => {
    const bare = {
      ...subject,
      gear: gear({ stand: null, lights: [], conditioners: [], testKits: [], substrates: [], filters: [], lid: null }),
    }
    const missing = [
      'stated load of the stand',
      'length of the light',
      'what the test kit measures',
      'flow of the filter',
      'size of the lid',
      'litres of a pack',
    ]
    expect(asked([finding('stand_load', { missing })], [], bare)).toEqual([])
    expect(asked([finding('stand_load', { missing })])).toHaveLength(3)
    expect(
      asked([finding('outlets', { missing: ['outlets within reach'] })], [], { ...bare, gear: { ...bare.gear, power: [] } }),
    ).toHaveLength(1)
  })

  it('is three things at the most', () => {
    const fields = ['coldestRoomC', 'warmestRoomC', 'plants', 'floor'] as const
    const inputs = fields.map((field) => input(field, { at: 'need', field }))
    expect(asked([finding('lid', { turns: [...fields] })], inputs).length).toBe(3)
  })

  it('is for one thing that a check cannot be made without, where there is any', () => {
    const fields = ['coldestRoomC', 'warmestRoomC', 'plants'] as const
    const inputs = fields.map((field) => input(field, { at: 'need', field }))
    const [siphon, pipes] = [
      input('siphon level', { at: 'need', field: 'siphonBelowMm' }),
      input('water in the pipes', { at: 'need', field: 'pipeVolumeL' }),
    ]
    const turned = finding('electrical_load', { turns: [...fields] })
    const runsOver = finding('drain_down', { missing: ['siphon level', 'water in the pipes'] })
    expect(asked([turned, runsOver], [...inputs, siphon, pipes])).toEqual([
      ['What of coldestRoomC?', 'electrical_load'],
      ['What of warmestRoomC?', 'electrical_load'],
      ['What of siphon level?', 'drain_down'],
    ])
    // One of the first three settles something already: none gives way.
    expect(asked([finding('heater_stuck', { missing: ['plants'] }), turned, runsOver], [...inputs, siphon, pipes])).toEqual([
      ['What of plants?', 'heater_stuck', 'electrical_load'],
      ['What of coldestRoomC?', 'electrical_load'],
      ['What of warmestRoomC?', 'electrical_load'],
    ])
  })

  it('is asked once however often it turns a check, and at one place once', () => {
    const glass = input('glass', { at: 'slot', slot: 'hold_water' })
    expect(asked([finding('lid', { turns: ['glass', 'glass'] }), finding('stand_load', { turns: ['glass'] })], [glass])).toEqual([
      ['What of glass?', 'stand_load', 'lid'],
    ])
    // Its kind and its bearing are one question about the floor.
    const floor = input('kind of floor', { at: 'need', field: 'floor' })
    expect(asked([finding('floor_load', { turns: ['kind of floor'], missing: ['how the floor bears'] })], [floor])).toEqual([
      ['What of kind of floor?', 'floor_load'],
    ])
  })

  it('leaves out what has no question', () => {
    expect(asked([finding('lid', { turns: ['something'], missing: ['something else'] })])).toEqual([])
    expect(asked([finding('lid')], [input('idle')])).toEqual([])
    const { turns: _turns, ...plain } = finding('lid', { missing: ['size of the lid'] })
    expect(asked([plain])).toEqual([['How long and how deep is the lid?', 'lid']])
  })
})

describe('what a finding misses', () => {
  it.each([
    ['style of the tank: rimmed or rimless', 'Has the tank a rim, braces, or neither?', 'hold_water'],
    ['whether a rim or braces hold the top', 'Has the tank a rim, braces, or neither?', 'hold_water'],
    ['flow of the filter', 'What flow is printed on the filter?', 'filter'],
    ['size of the lid', 'How long and how deep is the lid?', 'cover'],
    ['shape of the lid', 'Has the lid the shape of the tank?', 'cover'],
    ['size of the mat', 'How large is the mat?', 'bed_glass'],
    ['length of the light', 'How long is the light?', 'light'],
    ['stated load of the stand', 'What load does the stand’s maker state?', 'carry_tank'],
    ['length and depth of the stand’s top', 'How large is the stand’s top?', 'carry_tank'],
    ['how the stand meets the floor', 'Does the stand rest on feet, on end panels, or all over?', 'carry_tank'],
    ['dose and content of the conditioner', 'What does the conditioner’s label say of its dose?', 'treat_water'],
    ['whether the conditioner binds ammonia', 'Does the conditioner bind ammonia?', 'treat_water'],
    ['what the test kit measures', 'What does the test kit measure?', 'test_water'],
    ['protective device of the strip', 'Has the power strip a protective device?', 'protect_circuit'],
    ['outlets of the strip', 'How many outlets has the power strip?', 'protect_circuit'],
    ['litres or weight of a pack', 'How many litres or kilograms has a pack of substrate?', 'substrate'],
    ['litres of a pack', 'How many litres has a pack of substrate?', 'substrate'],
    ['cooling power of the chiller', 'How much heat does the chiller take out?', 'cool'],
  ])('%s: "%s" of the slot %s', (name, text, slot) => {
    expect(openQuestions([finding('lid', { missing: [name] })], [], subject)).toEqual([
      { text, input: name, place: { at: 'slot', slot }, checks: ['lid'] },
    ])
  })

  it.each([
    ['span and spacing of the joists', 'How long and how far apart are the joists under the floor?', 'joistSpanMm'],
    ['how the floor bears', 'Who can say what the floor bears: the owner, the plans, an engineer?', 'floor'],
    ['thickness of the slab and what lies under it', 'How thick is the slab, and what lies under it?', 'floor'],
  ])('%s: "%s" of the need', (name, text, field) => {
    expect(openQuestions([finding('floor_load', { missing: [name] })], [], subject)).toEqual([
      { text, input: name, place: { at: 'need', field }, checks: ['floor_load'] },
    ])
  })

  it('is the tank alone where there is none, asked by the check that hurts soonest', () => {
    const none = { ...subject, gear: gear({ tank: null }) }
    const missing = ['length, depth and height of the tank']
    const all = [finding('heater_stuck', { missing }), finding('stand_load', { missing }), finding('lid', { missing: ['size of the lid'] })]
    expect(asked(all, [], none)).toEqual([
      ['Which tank will it be?', 'heater_stuck'],
      ['How long and how deep is the lid?', 'lid'],
    ])
    expect(asked(all)).toEqual([
      ['Which tank will it be?', 'heater_stuck', 'stand_load'],
      ['How long and how deep is the lid?', 'lid'],
    ])
  })
})

it.each([
  ['photon flux of the light', { at: 'slot', slot: 'light' }],
  ['disinfectant in the tap water', { at: 'need', field: 'disinfectant' }],
  ['word of the maker', { at: 'slot', slot: 'hold_water' }],
  ['flow of the circulation pump', { at: 'slot', slot: 'circulate' }],
  ['tank size on the skimmer’s box', { at: 'slot', slot: 'skim' }],
  ['volume of the sump', { at: 'slot', slot: 'sump' }],
  ['sides of the sump', { at: 'slot', slot: 'sump' }],
  ['the sump', { at: 'slot', slot: 'sump' }],
  ['outlets within reach', { at: 'slot', slot: 'protect_circuit' }],
  ['whether the stand has a full board', { at: 'slot', slot: 'carry_tank' }],
  ['a top of the tank’s own shape', { at: 'slot', slot: 'carry_tank' }],
  ['length and depth that are the same', { at: 'slot', slot: 'hold_water' }],
  ['bow of the front that leaves its ends', { at: 'slot', slot: 'hold_water' }],
  ['depth of the ends that leaves a front', { at: 'slot', slot: 'hold_water' }],
  ['thickness of glass and bottom that leaves room inside', { at: 'slot', slot: 'hold_water' }],
  ['style of the tank: rimmed or rimless', { at: 'slot', slot: 'hold_water' }],
  ['water level below the rim that leaves water in the tank', { at: 'need', field: 'waterBelowRimMm' }],
  ['substrate depth that leaves water above it', { at: 'need', field: 'substrateDepthMm' }],
])('asks for %s where it is entered', (missing, place) => {
  const [question] = openQuestions([finding('lid', { missing: [missing] })], [], subject)
  expect(question).toMatchObject({ input: missing, place })
  expect(question?.text).toMatch(/\?$/)
})
