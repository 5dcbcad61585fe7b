import { describe, expect, it } from 'vitest'
import { LIVESTOCK_GROUPS } from '../../../core/catalog/livestock.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import type { Kind } from '../../../core/catalog/kinds.ts'
import { explainFinding } from '../../../core/explanation/explain-finding.ts'
import { CONDITION_FIELDS } from '../../../core/sizing/condition-fields.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { CHECKS, type Finding } from '../../../core/sizing/finding.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import type { SizingSubject } from '../../../core/sizing/report.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { SOURCES } from '../../../core/sizing/sources.ts'
import { conditions, gear, group, one } from '../sizing/sample-build.ts'

const open: Conditions['assumed'] = [
  'coldestRoomC', 'warmestRoomC', 'waterBelowRimMm', 'substrateDepthMm', 'otherLoadW', 'outletHeightMm', 'outletDistanceMm', 'circuitProtected',
  'lightHoursPerDay', 'plants', 'floor', 'disinfectant',
] // prettier-ignore
const { glassMm: _glass, bottomMm: _bottom, material: _material, ...bareTank } = gear().tank!.spec
const canister = { type: 'canister', ratedFlowLph: 1400, maxHeadM: 1.9, hoseMm: 16, powerW: 20 } as const
const joists = { joistSpanMm: 3600, joistSpacingMm: 400, joistLie: 'across', floorUse: 'other' } as const
const salt: SizingSubject = {
  gear: gear({
    filters: [one('Pellick canister', { ...canister, midHeadM: 1, midFlowLph: 800, hoseLengthMm: 3000, fittings: 'usual' })],
    appliances: [
      { ...one('Orrin pump', { ratedFlowLph: 3000, powerW: 8, cordMm: 2500 }, 2), kind: 'circulation_pump' },
      { ...one('Fellan skimmer', { ratedVolumeL: 400, powerW: 15 }), kind: 'skimmer' },
      { ...one('Maddoc chiller', { coolingW: 300, powerW: 180 }), kind: 'chiller' },
    ],
    animals: [one('Clown', { adultLengthMm: 80 }, 2)],
    tank: { ...one('Old box', { ...gear().tank!.spec, lengthMm: 1000, style: 'braced' }), owned: true },
  }),
  conditions: conditions({ livestock: group('soft-coral-reef'), ...joists, altitudeM: 800 }),
}

/** Builds that between them are asked every check. */
const SUBJECTS: Record<string, SizingSubject> = {
  'everything stated': { gear: gear(), conditions: conditions() },
  'nothing stated of the room or the panes': { gear: gear({ tank: one('Wendlemere', bareTank) }), conditions: conditions({ assumed: open }) },
  'salt water': salt,
  'bare parts': {
    gear: gear({
      tank: one('Plain', { lengthMm: 900, widthMm: 400, heightMm: 450, shape: 'bow_front' }),
      stand: one('Bench', { topLengthMm: 900, topWidthMm: 400, surface: 'particle_board' }),
      lid: one('Lid', { lengthMm: 890, widthMm: 390 }),
      filters: [one('Canister', { type: 'canister', ratedFlowLph: 1400, maxHeadM: 1.9, hoseMm: 16 })],
      heaters: [one('Heater', {})],
      lights: [one('Light', { lengthMm: 800, powerW: 20 })],
      substrates: [one('Sand', { type: 'sand', packMassKg: 9 }, 4)],
      testKits: [one('Tests', { measuresAmmonia: true, measuresNitrite: true })],
      conditioners: [one('Conditioner', { packVolumeMl: 100, doseMlPerL: 0.2 })],
      mat: one('Mat', { lengthMm: 900, widthMm: 400 }),
    }),
    conditions: conditions({ assumed: open, livestock: group('labyrinth') }),
  },
  'a cylinder': {
    gear: gear({ tank: one('Round', { lengthMm: 500, widthMm: 500, heightMm: 600, shape: 'cylinder', glassMm: 10, bottomMm: 12, material: 'acrylic' }) }),
    conditions: conditions({ ...joists, livestock: group('labyrinth') }),
  },
  'over a sump': {
    gear: gear({
      filters: [one('Pellick return', { type: 'return_pump', ratedFlowLph: 3000, maxHeadM: 3, midHeadM: 2, midFlowLph: 1500, hoseMm: 20, hoseLengthMm: 1500, fittings: 'usual', powerW: 22 })],
      sump: one('Osmere sump', { lengthMm: 600, widthMm: 380, heightMm: 400, wallMm: 6, material: 'glass', operatingVolumeL: 40 }),
    }),
    conditions: conditions({ livestock: group('soft-coral-reef'), siphonBelowMm: 30, pipeVolumeL: 1 }),
  },
  'over a sump of which nothing is stated': {
    gear: gear({ filters: [one('Pellick return', { type: 'return_pump', ratedFlowLph: 3000 })], sump: one('Osmere sump', {}) }),
    conditions: conditions({ assumed: open }),
  },
  'nothing chosen': {
    gear: { tank: null, stand: null, mat: null, lid: null, filters: [], heaters: [], lights: [], substrates: [], conditioners: [], testKits: [], power: [], notNeeded: {} },
    conditions: conditions({ assumed: open }),
  },
} // prettier-ignore

const reportOf = (subject: SizingSubject) => sizingReport(subject)
const explained = (finding: Finding, subject: SizingSubject) => explainFinding(finding, subject, reportOf(subject).figures)
const told = (finding: Finding, subject: SizingSubject): string[] =>
  explained(finding, subject)
    .inputs.filter(({ from }) => from !== 'reckoned')
    .map(({ name, value }) => `${name}: ${sayPhrase(value, METRIC)}`)

describe('the explanation of a finding', () => {
  it('is there for every check', () => {
    const made = new Set(Object.values(SUBJECTS).flatMap((subject) => reportOf(subject).findings.map(({ check }) => check)))
    expect(CHECKS.filter((check) => !made.has(check))).toEqual([])
  })

  it.each(Object.entries(SUBJECTS))('says the formula and what went in, of each finding with a value: %s', (_, subject) => {
    for (const finding of reportOf(subject).findings) {
      const { formula, inputs } = explained(finding, subject)
      expect(`${finding.check}: ${sayPhrase(formula, METRIC)}`).toMatch(/: .{30,}$/)
      if (finding.value !== undefined) expect([finding.check, inputs.length > 0]).toEqual([finding.check, true])
      for (const input of inputs) expect([finding.check, input.name, sayPhrase(input.value, METRIC)]).not.toContain('')
    }
  })

  it.each(Object.entries(SUBJECTS))(
    'lists what is assumed as assumed and what is missing as missing, under the same names: %s',
    (_, subject) => {
      for (const finding of reportOf(subject).findings) {
        const { inputs } = explained(finding, subject)
        const names = (from: string) => inputs.filter((input) => input.from === from).map(({ name }) => name.toLowerCase())
        const missing = finding.missing.map((name) => name.toLowerCase())
        const assumed = finding.assumed.map((name) => name.toLowerCase()).filter((name) => !missing.includes(name))
        expect([finding.check, names('missing')]).toEqual([finding.check, missing])
        expect([finding.check, assumed.filter((name) => !names('assumed').includes(name))]).toEqual([finding.check, []])
      }
    },
  )

  it('of a tank on a slab or on concrete speaks of no joists', () => {
    for (const floor of ['ground_slab', 'concrete_upper', 'unknown'] as const) {
      const subject = { gear: gear(), conditions: conditions({ floor }) }
      const finding = reportOf(subject).findings.find(({ check }) => check === 'floor_load') as Finding
      const { formula, inputs } = explained(finding, subject)
      const words = [sayPhrase(formula, METRIC), SOURCES.floor_load.text, ...inputs.map(({ name }) => name)].join(' ')
      expect([floor, words]).toEqual([floor, expect.not.stringMatching(/joist/i)])
      expect(words).toContain('450 kg')
    }
  })

  // 85 L and 45 L are 22.45 and 11.89 US gallons; the room is their difference, 10.57.
  it('tells what a sump holds to the tenth that its room is told to', () => {
    const subject = { gear: gear({ sump: one('Osmere sump', { totalVolumeL: 85, operatingVolumeL: 45 }) }), conditions: conditions() }
    const finding = reportOf(subject).findings.find(({ check }) => check === 'drain_down') as Finding
    const held = explained(finding, subject).inputs.find(({ name }) => name.includes('sump'))
    expect(sayPhrase(finding.reason, US)).toContain('room for 10.6 gal')
    expect(sayPhrase(held?.value ?? [], US)).toBe('volume to the rim 22.5 gal, water while the pump runs 11.9 gal')
  })

  it('has something in words for whatever is assumed', () => {
    for (const subject of Object.values(SUBJECTS))
      for (const finding of reportOf(subject).findings)
        for (const { name, value, from } of explained(finding, subject).inputs)
          if (from === 'assumed') expect([finding.check, name, sayPhrase(value, METRIC)]).not.toContain('not stated')
  })
})

/** Every figure of one part changed by a little. */
function* changedGear({ gear: from, conditions: room }: SizingSubject): Generator<[string, SizingSubject]> {
  const kinds = { tank: 'tank', stand: 'stand', lid: 'lid', mat: 'mat', filters: 'filter', heaters: 'heater', lights: 'light', substrates: 'substrate', conditioners: 'conditioner', testKits: 'test_kit', power: 'power', animals: 'livestock', sump: 'sump', appliances: null } as const // prettier-ignore
  for (const [key, kind] of Object.entries(kinds) as Array<[keyof Gear, Kind | null]>) {
    const held = from[key]
    const items = (Array.isArray(held) ? held : [held]).filter((each) => typeof each === 'object' && each !== null)
    for (const [index, item] of items.entries()) {
      const part = item as unknown as { kind?: Kind; spec: Record<string, unknown> }
      for (const field of SPEC_FIELDS[kind ?? part.kind!]) {
        const value = part.spec[field.key]
        if (typeof value !== 'number' || field.type !== 'number') continue
        const changed = { ...part, spec: { ...part.spec, [field.key]: value * 1.13 } }
        const gear = { ...from, [key]: Array.isArray(held) ? held.map((each, at) => (at === index ? changed : each)) : changed }
        yield [`${key}.${field.key}`, { gear, conditions: room }]
      }
    }
  }
}

function* changedRoom({ gear: from, conditions: room }: SizingSubject): Generator<[string, SizingSubject]> {
  for (const field of CONDITION_FIELDS) {
    const value = (room as unknown as Record<string, unknown>)[field.key]
    if (field.type === 'number' && typeof value === 'number')
      yield [field.key, { gear: from, conditions: { ...room, [field.key]: value * 1.13 + 1 } }]
    if (field.type === 'choice')
      for (const option of field.options)
        if (value !== undefined && option.value !== value)
          yield [`${field.key} ${option.value}`, { gear: from, conditions: { ...room, [field.key]: option.value } }]
  }
  const marks = ['targetC', 'lowestC', 'highestC', 'dangerC', 'flowFloorPerHour', 'smallestVolumeL', 'feedGramsPerDay'] as const
  for (const mark of marks)
    yield [mark, { gear: from, conditions: { ...room, livestock: { ...room.livestock, [mark]: room.livestock[mark] * 1.2 } } }]
  for (const livestock of LIVESTOCK_GROUPS.slice(0, 4)) yield [livestock.id, { gear: from, conditions: { ...room, livestock } }]
}

describe('what moves a finding', () => {
  const moved = (a: Finding, b: Finding): boolean => JSON.stringify([a.value, a.limit]) !== JSON.stringify([b.value, b.limit])

  it.each(Object.entries(SUBJECTS))('is among its inputs, figure by figure and answer by answer: %s', (_, subject) => {
    const before = reportOf(subject)
    let seen = 0
    const unlisted: string[] = []
    for (const [what, changed] of [...changedGear(subject), ...changedRoom(subject)]) {
      const after = reportOf(changed)
      for (const finding of before.findings) {
        const now = after.findings.find(({ check }) => check === finding.check)
        if (now === undefined || !moved(finding, now)) continue
        seen += 1
        if (told(finding, subject).join('\n') === told(now, changed).join('\n')) unlisted.push(`${finding.check} moves with ${what}`)
      }
    }
    expect(unlisted).toEqual([])
    // Without a tank nothing has a figure that could move.
    expect(seen > 20 || subject.gear.tank === null).toBe(true)
  })
})
