import { describe, expect, it } from 'vitest'
import type { SubstrateSpec } from '../../../core/catalog/spec.ts'
import { packVolumeL } from '../../../core/sizing/substrate-depth.ts'
import { actionOf, inRoundTank, isMadeInRoundTank, reasonOf } from './round-tank.ts'
import { one } from './sample-build.ts'

const bed = (specs: SubstrateSpec[], substrateDepthMm = 50, count = 1) =>
  inRoundTank('substrate_depth', { substrates: specs.map((spec) => one('Millrace', spec, count)), notNeeded: {} }, { substrateDepthMm })
const TAKES = 'a bed of 50 mm takes about 20 L'

describe('a bed of 50 mm on 0.4 m² of floor', () => {
  // 20 L; own: from nine tenths of it, 45 mm, it is as good, and from seven tenths, 35 mm, still a bed.
  it.each([
    [18, 45, 'fits'],
    [17.7, 44, 'marginal'],
    [14, 35, 'marginal'],
    [13.7, 34, 'does_not_fit'],
    [40, 100, 'fits'],
  ])('of %s L, which make %s mm: %s', (packVolumeL, mm, verdict) => {
    const found = bed([{ type: 'gravel', packVolumeL }])
    expect(found).toMatchObject({
      verdict,
      value: { value: mm, unit: 'mm' },
      limit: { kind: 'at_least', low: { value: 45 } },
      assumed: [],
      missing: [],
      source: { tag: 'common_practice' },
    })
    expect(reasonOf(found)).toBe(`The packs make a bed of about ${mm === 100 ? '10 cm' : `${mm} mm`}; ${TAKES}.`)
    expect(actionOf(found)).toBe(verdict === 'fits' ? null : `Choose as many packs as it needs: ${TAKES}.`)
    if (found.action) expect(found.action.want).toEqual({ slot: 'substrate', quantity: 1, minimum: {} })
  })

  it('adds up its packs', () => {
    expect(bed([{ packVolumeL: 4 }, { packVolumeL: 5 }], 50, 2).value?.value).toBe(45)
  })

  // Common practice: gravel of 1.5 to 1.7 kg/L. 30 kg make 17.65 to 20 L, 44.1 to 50 mm; 31 kg 45.6 mm at the least; 15 kg 25 mm at the most.
  it.each([
    [31, 'fits', 46, [], ['litres of a pack']],
    [30, 'not_known', 44, ['litres of a pack'], []],
    [15, 'does_not_fit', 22, [], ['litres of a pack']],
  ])('of %s kg: %s', (packMassKg, verdict, mm, missing, assumed) => {
    expect(bed([{ type: 'gravel', packMassKg }])).toMatchObject({ verdict, value: { value: mm }, missing, assumed })
  })
  it('rests on its litres where one pack of two states its weight alone', () =>
    expect(bed([{ packVolumeL: 20 }, { type: 'gravel', packMassKg: 9 }]).assumed).toEqual(['litres of a pack']))

  it('is not known of a pack that states nothing, be others stated or not', () => {
    for (const specs of [[{}], [{ packVolumeL: 30 }, {}]]) {
      const found = bed(specs)
      expect(found).toMatchObject({ verdict: 'not_known', missing: ['litres or weight of a pack'], limit: { low: { value: 45 } } })
      expect(reasonOf(found)).toBe(`A pack states neither litres nor weight; ${TAKES}.`)
      expect(actionOf(found)).toBe("Enter the pack's litres or weight.")
    }
  })

  it('of nothing does not fit', () => {
    const found = bed([])
    expect(found).toMatchObject({ verdict: 'does_not_fit', value: { value: 0, unit: 'mm' }, action: { want: { slot: 'substrate' } } })
    expect(reasonOf(found)).toBe(`No substrate is chosen; ${TAKES}.`)
  })
})

describe('what is asked', () => {
  it('is a millimetre at least of a bed as thin as that, and nothing of none', () => {
    expect(bed([{ packVolumeL: 1 }], 1).limit).toMatchObject({ low: { value: 1 } })
    const packs = { substrates: [one('Millrace', { packVolumeL: 1 })], notNeeded: {} }
    expect(isMadeInRoundTank('substrate_depth', packs, { substrateDepthMm: 0 })).toBe(false)
    expect(isMadeInRoundTank('substrate_depth', packs, { substrateDepthMm: 0.4 })).toBe(false)
    expect(isMadeInRoundTank('substrate_depth', packs, { substrateDepthMm: 0.5 })).toBe(true)
  })

  it('is not asked where none is needed, unless one was chosen', () => {
    expect(isMadeInRoundTank('substrate_depth')).toBe(false)
    expect(isMadeInRoundTank('substrate_depth', { substrates: [one('Millrace', { packVolumeL: 1 })] })).toBe(true)
  })

  it('names an assumed depth', () => {
    const assumed = { assumed: ['substrateDepthMm' as const] }
    const packs = (packVolumeL?: number) => ({ substrates: [one('Millrace', { packVolumeL })], notNeeded: {} })
    for (const gear of [packs(20), packs(undefined)])
      expect(inRoundTank('substrate_depth', gear, assumed).assumed).toEqual(['substrate depth'])
    const bare = { substrates: [], notNeeded: {} }
    expect(inRoundTank('substrate_depth', bare, { ...assumed, plants: 'low' }).assumed).toEqual(['substrate depth'])
  })

  it('is not asked of a bare floor that nobody wants a bed on, but where plants are to grow', () => {
    const bare = { substrates: [], notNeeded: {} }
    const assumed = ['substrateDepthMm' as const]
    expect(isMadeInRoundTank('substrate_depth', bare, { assumed, plants: 'none' })).toBe(false)
    expect(isMadeInRoundTank('substrate_depth', bare, { assumed, plants: 'low' })).toBe(true)
    expect(isMadeInRoundTank('substrate_depth', bare, { assumed: [], plants: 'none' })).toBe(true)
  })
})

/** Common practice: kilograms of a litre in bulk. */
it.each<[SubstrateSpec, number, number]>([
  [{ packVolumeL: 5, packMassKg: 99 }, 5, 5],
  [{ type: 'gravel', packMassKg: 8.5 }, 5, 8.5 / 1.5],
  [{ type: 'active_soil', packMassKg: 8.8 }, 8, 11],
  [{ packMassKg: 1.7 }, 1, 2.125],
])('reckons a pack of %j as %s to %s L', (spec, low, high) => {
  const found = packVolumeL(spec)
  expect(found?.low).toBeCloseTo(low, 12)
  expect(found?.high).toBeCloseTo(high, 12)
})
it('reckons none of a pack that states nothing', () => expect(packVolumeL({ type: 'sand' })).toBeUndefined())
