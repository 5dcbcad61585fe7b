import { describe, expect, it } from 'vitest'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import type { ConditionerSpec, TestKitSpec } from '../../../core/catalog/spec.ts'
import type { Finding } from '../../../core/sizing/finding.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'

describe('room for the animals', () => {
  const boxed = (lengthMm: number) => ({
    tank: one('Wendlemere', {
      lengthMm,
      widthMm: 300,
      heightMm: 300,
      glassMm: 5,
      bottomMm: 5,
      material: 'glass' as const,
      style: 'rimmed' as const,
    }),
  })
  /** Small tropical community: 54 L by the outside, as the trade names its sizes. */
  it.each([
    [600, 'fits'],
    [590, 'marginal'],
    [545, 'marginal'],
    [535, 'does_not_fit'],
  ])('in a tank of %s × 300 × 300 mm: %s', (lengthMm, verdict) =>
    expect(findingOf('smallest_volume', boxed(lengthMm)).verdict).toBe(verdict),
  )
})

describe('lid', () => {
  it('is needed for animals that jump', () => {
    const livestock = group('cool-stream')
    expect(findingOf('lid', { lid: null }, { livestock }).verdict).toBe('does_not_fit')
    expect(findingOf('lid', {}, { livestock }).verdict).toBe('fits')
    expect(reportOf({ lid: null }).findings.some(({ check }) => check === 'lid')).toBe(false)
  })

  it('closes the top: neither short nor over the edge', () => {
    expect(findingOf('lid', { lid: one('Lid', { lengthMm: 900, widthMm: 450, cover: 'glass' }) }).verdict).toBe('does_not_fit')
    expect(findingOf('lid', { lid: one('Lid', { lengthMm: 1300, widthMm: 450, cover: 'glass' }) }).verdict).toBe('does_not_fit')
    expect(findingOf('lid', { lid: one('Lid', { cover: 'glass' }) }).verdict).toBe('not_known')
  })

  it('tells both sizes and what is off by more, and no reading that nobody could measure', () => {
    // The tank is 1219.2 × 457.2 mm; a lid may differ by 40 mm either way.
    const lid = (lengthMm: number, widthMm: number) => findingOf('lid', { lid: one('Lid', { lengthMm, widthMm, cover: 'glass' }) })
    const told = (found: Finding) => [found.verdict, sayPhrase(found.reason, METRIC)]
    const tank = '121.9 cm by 45.7 cm'
    expect(told(lid(1269, 430))).toEqual(['does_not_fit', `The lid is 126.9 cm by 43 cm and the tank ${tank}: 50 mm too long.`])
    expect(told(lid(1200, 400))).toEqual(['does_not_fit', `The lid is 120 cm by 40 cm and the tank ${tank}: 57 mm not deep enough.`])
    expect(told(lid(1210, 430))).toEqual(['fits', `The lid, 121 cm by 43 cm, closes the top of the tank, ${tank}.`])
    expect([lid(1269, 430).value, lid(1269, 430).limit]).toEqual([undefined, undefined])
  })
})

describe('substrate depth', () => {
  /** Own: inside floor 1199.2 × 437.2 mm; 50 mm takes 26.2 L. */
  it.each([
    [5, 'fits'],
    [4, 'marginal'],
    [3, 'does_not_fit'],
  ])('of %s packs of 5.7 L: %s', (packs, verdict) => {
    expect(findingOf('substrate_depth', { substrates: [one('Millrace', { type: 'gravel', packVolumeL: 5.7 }, packs)] }).verdict).toBe(
      verdict,
    )
  })

  it('reckons a pack by its weight at both ends of the bulk density', () => {
    const byWeight = (packs: number) =>
      findingOf('substrate_depth', { substrates: [one('Millrace', { type: 'gravel', packMassKg: 9 }, packs)] })
    expect(byWeight(6)).toMatchObject({ verdict: 'fits', assumed: ['litres of a pack'] })
    expect(byWeight(4)).toMatchObject({ verdict: 'not_known', missing: ['litres of a pack'] })
    expect(byWeight(3)).toMatchObject({ verdict: 'does_not_fit' })
  })

  it('is not asked where substrate is not needed, and lowers the bed then', () => {
    const bare = reportOf({ substrates: [], notNeeded: { substrate: 'bare bottom' } })
    expect(bare.findings.some(({ check }) => check === 'substrate_depth')).toBe(false)
    expect(bare.figures.substrateMassKg).toBe(0)
    expect(bare.figures.waterVolumeL).toBe(253.44)
  })

  it('measures its reserve from nine tenths of the wanted depth, which is as good', () => {
    const found = findingOf('substrate_depth', { substrates: [one('Millrace', { type: 'gravel', packVolumeL: 24.2 })] })
    expect(found).toMatchObject({ verdict: 'fits', value: { value: 46 }, limit: { low: { value: 45 } }, margin: { value: 1 } })
  })

  it('does not fit where a bed was asked for and none is chosen', () => {
    expect(findingOf('substrate_depth', { substrates: [] }).verdict).toBe('does_not_fit')
  })
})

describe('conditioner', () => {
  const bottle = (spec: ConditionerSpec, packs = 1) => ({ conditioners: [one('Stillwell', spec, packs)] })

  /** Own: 237.71 L of water in use at 0.2 mL/L is 47.5 mL; by the label's 283.9 L it would be 57 mL. */
  it('doses the water in use and not the label', () => {
    const found = findingOf('conditioner_dose', bottle({ packVolumeMl: 500, doseMlPerL: 0.2, bindsAmmonia: true }))
    expect(found).toMatchObject({ verdict: 'fits', limit: { low: { value: 48, unit: 'mL' } }, value: { value: 500 } })
  })

  it('does not fit where the packs are too small, and says how many it takes', () => {
    const found = findingOf('conditioner_dose', bottle({ packVolumeMl: 20, doseMlPerL: 0.2, bindsAmmonia: true }))
    expect(found).toMatchObject({ verdict: 'does_not_fit', action: { want: { quantity: 3 } } })
  })

  it('must bind ammonia where the water holds chloramine', () => {
    const plain = bottle({ packVolumeMl: 500, doseMlPerL: 0.2, bindsAmmonia: false })
    expect(findingOf('conditioner_dose', plain, { disinfectant: 'chloramine' }).verdict).toBe('does_not_fit')
    // There is enough of it: a reserve beside "does not fit" would mislead.
    expect(findingOf('conditioner_dose', plain, { disinfectant: 'chloramine' }).margin).toBeUndefined()
    expect(findingOf('conditioner_dose', plain, { disinfectant: 'chlorine' }).verdict).toBe('fits')
    expect(findingOf('conditioner_dose', plain, { disinfectant: 'unknown' })).toMatchObject({
      verdict: 'not_known',
      missing: ['disinfectant in the tap water'],
    })
    const unstated = bottle({ packVolumeMl: 500, doseMlPerL: 0.2 })
    expect(findingOf('conditioner_dose', unstated, { disinfectant: 'chloramine' }).missing).toEqual([
      'whether the conditioner binds ammonia',
    ])
  })

  it('is not asked of water without a disinfectant', () => {
    expect(reportOf({}, { disinfectant: 'none' }).findings.some(({ check }) => check === 'conditioner_dose')).toBe(false)
  })

  it('warns of ammonia and bleach, and guesses no dose', () => {
    expect(findingOf('conditioner_dose').caution).toMatch(/bleach, acid or chlorine .*near ammonia/)
    expect(findingOf('conditioner_dose', bottle({ packVolumeMl: 500 })).verdict).toBe('not_known')
    expect(findingOf('conditioner_dose', { conditioners: [] }).verdict).toBe('does_not_fit')
  })
})

describe('water tests', () => {
  const kit = (spec: TestKitSpec) => ({ testKits: [one('Lockridge', spec)] })
  it('must measure ammonia and nitrite down to the step that says ready', () => {
    expect(findingOf('ammonia_tests', kit({ measuresAmmonia: true, measuresNitrite: true, lowestAmmoniaMgL: 0.25 })).verdict).toBe('fits')
    expect(findingOf('ammonia_tests', kit({ measuresAmmonia: true, measuresNitrite: true, lowestAmmoniaMgL: 0.5 })).verdict).toBe(
      'marginal',
    )
    expect(findingOf('ammonia_tests', kit({ measuresAmmonia: true, measuresNitrite: false })).verdict).toBe('does_not_fit')
    expect(sayPhrase(findingOf('ammonia_tests', kit({ measuresAmmonia: false, measuresNitrite: true })).reason, METRIC)).toContain(
      'ammonia',
    )
    expect(findingOf('ammonia_tests', kit({ measuresAmmonia: true })).verdict).toBe('not_known')
    expect(findingOf('ammonia_tests', { testKits: [] }).verdict).toBe('does_not_fit')
  })

  it('is not known where the kit states no lowest step: strips stop above what says ready', () => {
    const found = findingOf('ammonia_tests', kit({ measuresAmmonia: true, measuresNitrite: true }))
    expect(found).toMatchObject({ verdict: 'not_known', missing: ['lowest step of the ammonia test'] })
    expect(found.action).not.toBeNull()
  })

  it('needs no step of a second kit where the first is fine enough', () => {
    const fine = one('A', { measuresAmmonia: true, measuresNitrite: true, lowestAmmoniaMgL: 0.25 })
    const coarse = one('C', { measuresAmmonia: true, measuresNitrite: true, lowestAmmoniaMgL: 0.5 })
    const unstated = one('B', { measuresAmmonia: true, measuresNitrite: true })
    expect(findingOf('ammonia_tests', { testKits: [fine, unstated] })).toMatchObject({ verdict: 'fits', value: { value: 0.25 } })
    expect(findingOf('ammonia_tests', { testKits: [coarse, unstated] }).verdict).toBe('not_known')
  })

  it('may come from two kits', () => {
    const testKits = [
      one('A', { measuresAmmonia: true, measuresNitrite: false, lowestAmmoniaMgL: 0.25 }),
      one('B', { measuresAmmonia: false, measuresNitrite: true }),
    ]
    expect(findingOf('ammonia_tests', { testKits }).verdict).toBe('fits')
  })
})
