import { describe, expect, it } from 'vitest'
import { packCover, packGivesL, packNeedL, sayPackCover } from '../../../core/quote/pack-cover.ts'
import { assembleBuild } from '../../../core/quote/assemble.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { conditions, gear, group, one } from '../sizing/sample-build.ts'
import { productOf, sampleInputs, sampleTank } from './sample-inputs.ts'

const bag = one('Millrace 9 kg', { type: 'gravel' as const, packMassKg: 9, packVolumeL: 5.7 })
const salty = conditions({ livestock: group('marine-fish') })

describe('what a build needs by the pack', () => {
  it('is the inside floor times the depth: 119.92 × 43.72 cm × 5 cm for the 75 gallon reference tank', () => {
    expect(packNeedL('substrate', { gear: gear(), conditions: conditions() })).toBeCloseTo((1199.2 * 437.2 * 50) / 1e6, 3)
  })
  it('is the water in use for conditioner and for salt: 237.71 L by the reference', () => {
    expect(packNeedL('treat_water', { gear: gear(), conditions: conditions() })).toBeCloseTo(237.71, 1)
    expect(packNeedL('salt', { gear: gear(), conditions: salty })).toBeCloseTo(237.71, 1)
  })
  it('is nothing where it is not needed, or where no tank says how much', () => {
    expect(packNeedL('salt', { gear: gear(), conditions: conditions() })).toBeNull()
    expect(packNeedL('treat_water', { gear: gear(), conditions: conditions({ disinfectant: 'none' }) })).toBeNull()
    expect(packNeedL('substrate', { gear: gear(), conditions: conditions({ substrateDepthMm: 0 }) })).toBeNull()
    expect(packNeedL('substrate', { gear: gear({ tank: null }), conditions: conditions() })).toBeNull()
  })
})

describe('what a pack is good for', () => {
  it.each([
    ['substrate', { type: 'gravel', packVolumeL: 5.7 }, 5.7],
    ['conditioner', { packVolumeMl: 500, doseMlPerL: 0.25 }, 2000],
    ['salt_mix', { packMassKg: 4, gramsPerL: 40 }, 100],
  ] as const)('of %s %j is %s L', (kind, spec, litres) => {
    expect(packGivesL({ kind, spec })).toEqual({ low: litres, high: litres })
  })
  it('is a range where the label leaves it open, and nothing where it says too little', () => {
    expect(packGivesL({ kind: 'salt_mix', spec: { packMassKg: 3.6 } })).toEqual({ low: 90, high: 100 })
    expect(packGivesL({ kind: 'conditioner', spec: { packVolumeMl: 500 } })).toBeUndefined()
    expect(packGivesL({ kind: 'heater', spec: { powerW: 100 } })).toBeUndefined()
  })
})

describe('how far the chosen packs go', () => {
  const cover = (count: number) =>
    packCover('substrate', { gear: gear({ substrates: [{ ...bag, quantity: count }] }), conditions: conditions() })
  it('is told with what is missing', () => {
    const found = cover(2)
    expect(found).toMatchObject({ givenL: 11.4, short: true })
    expect(found && sayPhrase(sayPackCover('substrate', found), METRIC)).toBe('26 L for the bed, 11 L chosen, 15 L missing')
  })
  it('is enough for a bed from nine tenths on, since beds are not level', () => {
    expect([4, 5].map((count) => cover(count)?.short)).toEqual([true, false])
  })
  it('is not known where a pack does not say', () => {
    const found = packCover('substrate', { gear: gear({ substrates: [one('a bag', {})] }), conditions: conditions() })
    expect(found).toMatchObject({ givenL: null, short: false })
  })
  it('adds up packs of different sizes', () => {
    const salts = [one('small', { packMassKg: 4, gramsPerL: 40 }, 2), one('large', { packMassKg: 10, gramsPerL: 40 })]
    expect(packCover('salt', { gear: gear({ salts }), conditions: salty })).toMatchObject({ givenL: 450, missingL: 0, short: false })
  })
  it('stands on the last row of its slot', () => {
    const small = productOf('substrate', 'Millrace small', { type: 'gravel', packVolumeL: 2 })
    const large = productOf('substrate', 'Millrace large', { type: 'gravel', packVolumeL: 5 })
    const rows = assembleBuild(sampleInputs([sampleTank, small, large]), 0).rows.filter(({ slot }) => slot === 'substrate')
    expect(rows.map(({ amount }) => amount?.short)).toEqual([undefined, true])
    expect(rows[1]?.amount?.words).toBe('19 L for the bed, 7.0 L chosen, 12 L missing')
  })
})
