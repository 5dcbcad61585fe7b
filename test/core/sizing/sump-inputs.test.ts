import { describe, expect, it } from 'vitest'
import type { SumpSpec } from '../../../core/catalog/appliance-spec.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { sumpInputs } from '../../../core/sizing/sump-inputs.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { conditions, gear, one } from './sample-build.ts'

const returnPump = one('Pellick Return', { type: 'return_pump' as const, ratedFlowLph: 3000 })
const build = (spec: SumpSpec, changes: Partial<Gear> = {}, count = 1) =>
  gear({ heaters: [], sump: { ...one('Osmere Sump', spec), quantity: count }, ...changes })
const MEASURED: Partial<Conditions> = { siphonBelowMm: 30, pipeVolumeL: 1 }
const inputsOf = (of: Gear, room: Partial<Conditions> = MEASURED) => sumpInputs(of, conditions(room))
/** Each open input with its ends as they are told. */
const asked = (of: Gear, room?: Partial<Conditions>) =>
  inputsOf(of, room).map(({ name, ends }) => [name, ...ends.map(({ says }) => sayPhrase(says, METRIC).replaceAll('\u00a0', ' '))])

/** Common practice (typical-ranges.ts): 10 to 75 mm, 0.3 to 3 L; a tenth to a half of the tank's outside of 297.33 L; two fifths to three quarters of it run; 300 to 450 mm. */
describe('what nobody entered of a sump', () => {
  it('is nothing of a build without one, nor without a tank', () => {
    expect(inputsOf(gear(), {})).toEqual([])
    expect(inputsOf(build({}, { tank: null }), {})).toEqual([])
  })

  it('is the siphon and the pipes of one that is stated, until they are measured', () => {
    const stated: SumpSpec = { lengthMm: 600, widthMm: 380, heightMm: 400, wallMm: 6, operatingVolumeL: 40 }
    expect(asked(build(stated), {})).toEqual([
      ['siphon level', '10 mm', '75 mm'],
      ['water in the pipes', '0.3 L', '3.0 L'],
    ])
    expect(asked(build(stated))).toEqual([])
    expect(inputsOf(build(stated), {}).map(({ place }) => place)).toEqual([
      { at: 'need', field: 'siphonBelowMm' },
      { at: 'need', field: 'pipeVolumeL' },
    ])
  })

  it('is its volume and the water in it, of several for each', () => {
    expect(asked(build({}))).toEqual([
      ['volume of the sump', '30 L', '149 L'],
      ['water in the sump', '12 L', '111 L'],
    ])
    expect(asked(build({}, {}, 2))[0]).toEqual(['volume of the sump', '15 L', '74 L'])
    expect(asked(build({ lengthMm: 600, widthMm: 380, heightMm: 400, wallMm: 6 })).map(([name]) => name)).toEqual(['water in the sump'])
  })

  it('is its height where a return pump, a heater or a skimmer stands in it', () => {
    const lifts = { filters: [one('Pellick', { type: 'canister' as const, ratedFlowLph: 900 }), returnPump] }
    expect(asked(build({}, lifts)).at(-1)).toEqual(['height of the sump', '30 cm', '45 cm'])
    expect(asked(build({ heightMm: 400 }, lifts)).map(([name]) => name)).toEqual(['volume of the sump', 'water in the sump'])
    for (const stands of [
      { heaters: [one('Torvane', { powerW: 100 })] },
      { appliances: [{ kind: 'skimmer' as const, ...one('Corbelle foam', { place: 'in_sump' as const }) }] },
    ])
      expect(asked(build({}, stands)).at(-1)).toEqual(['height of the sump', '30 cm', '45 cm'])
    const wanted = inputsOf(gear(lifts))
    expect(wanted).toEqual([])
  })

  it('are its sides where its volume alone is stated: a cube of 64 L is 400 mm and two walls of 6', () => {
    const [sides] = inputsOf(build({ totalVolumeL: 64, operatingVolumeL: 30, wallMm: 6 }))
    expect(sides).toMatchObject({ name: 'sides of the sump', place: { at: 'slot', slot: 'sump' } })
    expect(sides?.ends).toHaveLength(2)
    const stated = sides?.ends[0]?.state({ gear: build({ totalVolumeL: 64, wallMm: 6 }), conditions: conditions() }).gear.sump?.spec
    expect(stated).toMatchObject({ totalVolumeL: 64, wallMm: 6 })
    for (const [side, mm] of [
      ['lengthMm', 412],
      ['widthMm', 412],
      ['heightMm', 406],
    ] as const)
      expect(stated?.[side]).toBeCloseTo(mm, 6)
    expect(asked(build({ totalVolumeL: 64, operatingVolumeL: 30, wallMm: 6, lengthMm: 412, widthMm: 412, heightMm: 406 }))).toEqual([])
  })

  it('is stated by each of its ends', () => {
    const subject = { gear: build({}, { filters: [returnPump] }), conditions: conditions() }
    for (const { name, ends } of sumpInputs(subject.gear, subject.conditions))
      for (const { state } of ends) {
        const now = state(subject)
        expect(sumpInputs(now.gear, now.conditions).map((input) => input.name)).not.toContain(name)
      }
  })
})
