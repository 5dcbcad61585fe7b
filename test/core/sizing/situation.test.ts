import { describe, expect, it } from 'vitest'
import type { TankSpec } from '../../../core/catalog/spec.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { bedDepthMm, situationOf } from '../../../core/sizing/situation.ts'
import { conditions, gear, one } from './sample-build.ts'

const BOX: TankSpec = { lengthMm: 900, widthMm: 450, heightMm: 450, glassMm: 8, bottomMm: 10, material: 'glass' }
function of(tank: Partial<TankSpec> = {}, changes: Partial<Gear> = {}, room: Partial<Conditions> = {}) {
  const found = situationOf({ gear: gear({ tank: one('Wendlemere', { ...BOX, ...tank }), ...changes }), conditions: conditions(room) })
  if (!found.ok) throw new Error(found.refusal.code)
  return found.value
}
const panels = (tank: Partial<TankSpec>) =>
  of(tank).corners.map(({ shape }) => [shape.material, shape.glassMm, Math.round(shape.bottomMm * 100) / 100])

describe('tanks that the stated figures allow', () => {
  // Common practice: glass of 5 to 12 mm at 450 mm of height, a bottom to 1.34 of it, acrylic to half as thick again.
  it.each<[string, Partial<TankSpec>, Array<[string, number, number]>, string[]]>([
    ['everything stated', {}, [['glass', 8, 10]], []],
    [
      'no thickness of the glass',
      { glassMm: undefined },
      [
        ['glass', 5, 10],
        ['glass', 12, 10],
      ],
      ['glass thickness'],
    ],
    [
      'none of the bottom',
      { bottomMm: undefined },
      [
        ['glass', 8, 8],
        ['glass', 8, 10.72],
      ],
      ['bottom thickness'],
    ],
    [
      'neither, of acrylic',
      { glassMm: undefined, bottomMm: undefined, material: 'acrylic' },
      [
        ['acrylic', 5, 5],
        ['acrylic', 18, 24.12],
      ],
      ['glass thickness', 'bottom thickness'],
    ],
    [
      'no material',
      { material: undefined },
      [
        ['glass', 8, 10],
        ['acrylic', 8, 10],
      ],
      ['tank material'],
    ],
    [
      'neither material nor thickness',
      { material: undefined, glassMm: undefined },
      [
        ['glass', 5, 10],
        ['glass', 12, 10],
        ['acrylic', 5, 10],
        ['acrylic', 18, 10],
      ],
      ['tank material', 'glass thickness'],
    ],
  ])('with %s', (_what, tank, corners, unstated) => {
    expect(panels(tank)).toEqual(corners)
    expect(of(tank).tankUnstated).toEqual(unstated)
  })

  it('have both ends of a plan that is not stated', () => {
    const found = of({ shape: 'bow_front' })
    expect(found.corners.map(({ shape }) => shape.bowMm)).toEqual([45, 180])
    expect(found.tankUnstated).toEqual(['bow of the front'])
  })

  it('weigh what the maker states, empty', () => {
    expect(of({ emptyMassKg: 31 }).corners[0]?.mass.emptyKg).toBe(31)
  })

  it('are none without a tank, or where one of them holds no water', () => {
    expect(situationOf({ gear: gear({ tank: null }), conditions: conditions() })).toEqual({ ok: false, refusal: { code: 'no_tank' } })
    const flat = situationOf({ gear: gear({ tank: one('Flat', BOX) }), conditions: conditions({ waterBelowRimMm: 440 }) })
    expect(flat).toMatchObject({ ok: false, refusal: { code: 'no_water', insideHeightMm: 440 } })
  })
})

describe('the top', () => {
  it('is open, closed by what is stated, or by any of three', () => {
    expect(of({}, { lid: null })).toMatchObject({ covers: ['open'], coverUnstated: [] })
    expect(of({}, { lid: one('a lid', { cover: 'mesh' }) })).toMatchObject({ covers: ['mesh'], coverUnstated: [] })
    expect(of({}, { lid: one('a lid', {}) })).toMatchObject({
      covers: ['mesh', 'glass', 'plastic'],
      coverUnstated: ['what the lid is made of'],
    })
  })
})

describe('the bed', () => {
  const bag = (type?: 'gravel' | 'active_soil') => one('Millrace', { type, packVolumeL: 5 })
  it('is of quartz unless all of it is active soil', () => {
    const grain = (...substrates: Array<ReturnType<typeof bag>>) => of({}, { substrates }).grain
    expect(grain()).toBe('quartz')
    expect(grain(bag('gravel'))).toBe('quartz')
    expect(grain(bag('active_soil'))).toBe('active_soil')
    expect(grain(bag('active_soil'), bag('gravel'))).toBe('quartz')
    expect(grain(bag('active_soil'), bag())).toBe('quartz')
  })

  it('is none where none is needed and none was chosen', () => {
    const depth = (changes: Partial<Gear>) => bedDepthMm({ gear: gear(changes), conditions: conditions({ substrateDepthMm: 60 }) })
    expect(depth({ substrates: [], notNeeded: { substrate: 'bare bottom' } })).toBe(0)
    expect(depth({ substrates: [], notNeeded: {} })).toBe(60)
    expect(depth({ notNeeded: { substrate: 'bare bottom' } })).toBe(60)
    const bare = of({}, { substrates: [], notNeeded: { substrate: 'bare bottom' } })
    expect(bare.corners[0]?.mass.substrateKg).toBe(0)
  })
})

it('names the defaults that its volumes rest on', () => {
  const assumed = ['coldestRoomC', 'substrateDepthMm', 'waterBelowRimMm'] as const
  expect(of({}, {}, { assumed: [...assumed] }).fillDefaults).toEqual(['water level below the rim', 'substrate depth'])
})
