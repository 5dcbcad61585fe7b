import { describe, expect, it } from 'vitest'
import { toldFinding } from '../../../core/sizing/told-report.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import type { ConditionerSpec, LidSpec, TestKitSpec } from '../../../core/catalog/spec.ts'
import type { Finding } from '../../../core/sizing/finding.ts'
import { actionOf, inRoundTank, isMadeInRoundTank, reasonOf } from './round-tank.ts'
import { findingOf, gear, group, one, reportOf } from './sample-build.ts'

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

  it.each([
    // A 40 breeder, 36 × 18 × 16 in: 169.9 L outside and 40 gal on its label.
    [151.4, 151.4],
    // A label never makes a box larger than it is.
    [400, 54],
  ])('with %s L on the label counts %s L', (labelVolumeL, counted) => {
    const large = labelVolumeL < 200
    const tank = one('Wendlemere', {
      lengthMm: large ? 914.4 : 600,
      widthMm: large ? 457.2 : 300,
      heightMm: large ? 406.4 : 300,
      glassMm: 5,
      bottomMm: 5,
      labelVolumeL,
    })
    expect(findingOf('smallest_volume', { tank }).value?.value).toBe(counted)
  })
  it('says whether it took the label or the outside', () => {
    const tank = one('Wendlemere', { lengthMm: 600, widthMm: 300, heightMm: 300, glassMm: 5, bottomMm: 5 })
    const labelled = { ...tank, spec: { ...tank.spec, labelVolumeL: 53 } }
    expect(reasonOf(findingOf('smallest_volume', { tank }))).toContain('The tank is 54 L by its outside; ')
    expect(reasonOf(findingOf('smallest_volume', { tank: labelled }))).toContain('The tank is 53 L by its label; ')
    const wrong = { ...tank, spec: { ...tank.spec, labelVolumeL: 400 } }
    expect(reasonOf(findingOf('smallest_volume', { tank: wrong }))).toContain(
      'The tank is 54 L by its outside, which cannot hold the 400 L of its label; ',
    )
    // How far a bow stands out is not stated: its label lies between what the outside holds at the least and at the most.
    const bowed = { ...tank, spec: { ...tank.spec, shape: 'bow_front' as const, labelVolumeL: 49 } }
    expect(reasonOf(findingOf('smallest_volume', { tank: bowed }))).toMatch(/The tank is 4\d L by its outside; /)
  })

  // 197.064 L outside, told as 197.1. Own: a tenth less is marginal.
  it.each([
    [197.1, 'fits', 0],
    [197, 'fits', 0.1],
    [198, 'marginal', -0.9],
    [219, 'marginal', -21.9],
    [220, 'does_not_fit', -22.9],
  ])('of 197.1 L where the trade names %s L as the smallest: %s', (smallestVolumeL, verdict, margin) => {
    const found = inRoundTank('smallest_volume', {}, { livestock: { ...group('small-tropical'), smallestVolumeL } })
    const told = Math.round(smallestVolumeL)
    expect(found).toMatchObject({
      verdict,
      assumed: [],
      value: { value: 197.1, unit: 'L' },
      limit: { kind: 'at_least', low: { value: told } },
    })
    expect(found.margin?.value).toBeCloseTo(told === smallestVolumeL ? margin : 0.1, 9)
    expect(reasonOf(found)).toBe(
      `The tank is 197 L by its outside; for this group (Small tropical community) the trade's smallest is labelled ${told} L.`,
    )
    expect(actionOf(found)).toBe(verdict === 'fits' ? null : `Choose a tank of at least ${told} L, or animals for a smaller one.`)
    expect(toldFinding(found).source.tag).toBe('common_practice')
  })
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
    // The tank is 1219.2 × 457.2 mm with a rim; a lid may be 40 mm smaller.
    const lid = (lengthMm: number, widthMm: number) => findingOf('lid', { lid: one('Lid', { lengthMm, widthMm, cover: 'glass' }) })
    const told = (found: Finding) => [found.verdict, sayPhrase(found.reason, METRIC)]
    const tank = '121.9 cm by 45.7 cm'
    expect(told(lid(1269, 430))).toEqual(['does_not_fit', `The lid is 126.9 cm by 43 cm and the tank ${tank}: 50 mm too long.`])
    expect(told(lid(1200, 400))).toEqual(['does_not_fit', `The lid is 120 cm by 40 cm and the tank ${tank}: 57 mm not deep enough.`])
    expect(told(lid(1210, 430))).toEqual(['fits', `The lid, 121 cm by 43 cm, closes the top of the tank, ${tank}.`])
    expect([lid(1269, 430).value, lid(1269, 430).limit]).toEqual([undefined, undefined])
  })
})

/** Own: 48 × 18 in are 1219 × 457 mm; on a frame nothing lies flat that is larger than it by more than a quarter of an inch. */
describe('a lid larger than the tank', () => {
  const lid = (lengthMm: number, widthMm: number, style?: 'rimmed' | 'rimless' | 'braced') => {
    const { tank } = gear()
    if (tank === null) throw new Error('the sample has a tank')
    const { style: _, ...spec } = tank.spec
    const changed = { ...tank, spec: style === undefined ? spec : { ...spec, style } }
    return findingOf('lid', { tank: changed, lid: one('Lid', { lengthMm, widthMm, cover: 'glass' }) })
  }

  it.each([
    [1194, 493, 'does_not_fit', '36 mm too deep'],
    [1223, 463, 'fits', 'closes the top'],
    [1226, 450, 'does_not_fit', '7 mm too long'],
    [1181, 465, 'does_not_fit', '8 mm too deep'],
  ] as const)('of %d × %d mm on a frame: %s, %s', (lengthMm, widthMm, verdict, words) => {
    expect(lid(lengthMm, widthMm, 'rimmed').verdict).toBe(verdict)
    expect(reasonOf(lid(lengthMm, widthMm, 'rimmed'))).toContain(words)
  })

  it('lies on bare panes, and asks for the rim where nobody stated it', () => {
    expect(lid(1194, 493, 'rimless').verdict).toBe('fits')
    expect(lid(1194, 493)).toMatchObject({ verdict: 'not_known', missing: ['style of the tank: rimmed or rimless'] })
    expect(lid(1210, 450).verdict).toBe('fits')
  })
})

/** 1020 × 420 mm of tank; common practice: a lid may differ by 40 mm either way. */
describe('a lid over a tank of 1020 × 420 mm', () => {
  const lid = (spec: LidSpec | null, more: Parameters<typeof inRoundTank>[1] = {}, lidNeeded = false) =>
    inRoundTank('lid', { lid: spec && one('a cover', spec), ...more }, { livestock: { ...group('small-tropical'), lidNeeded } })
  const want = { slot: 'cover', quantity: 1, minimum: { lengthMm: 980, widthMm: 380 } }

  it.each([
    [980, 380, 'fits', ''],
    [1060, 460, 'fits', ''],
    [979, 420, 'does_not_fit', '41 mm too short'],
    [1061, 420, 'does_not_fit', '41 mm too long'],
    [1020, 379, 'does_not_fit', '41 mm not deep enough'],
    [1020, 461, 'does_not_fit', '41 mm too deep'],
    [970, 370, 'does_not_fit', '50 mm too short'],
    [970, 369, 'does_not_fit', '51 mm not deep enough'],
    [1070, 370, 'does_not_fit', '50 mm too long'],
  ])('of %s × %s mm %s %s', (lengthMm, widthMm, verdict, off) => {
    const found = lid({ lengthMm, widthMm })
    const size = `${lengthMm / 10} cm by ${widthMm / 10} cm`
    expect(found.verdict).toBe(verdict)
    expect(reasonOf(found)).toBe(
      verdict === 'fits'
        ? `The lid, ${size}, closes the top of the tank, 102 cm by 42 cm.`
        : `The lid is ${size} and the tank 102 cm by 42 cm: ${off}.`,
    )
    expect(actionOf(found)).toBe(verdict === 'fits' ? null : 'Choose a lid for 102 cm by 42 cm.')
    if (found.action) expect(found.action.want).toEqual(want)
    expect(found.source).toMatchObject({ tag: 'common_practice', text: expect.stringMatching(/^The keeping trade’s marks/) as string })
  })

  it('is not known where a side of it is not stated', () => {
    for (const spec of [{ lengthMm: 1000 }, { widthMm: 400 }]) {
      const found = lid(spec)
      expect(found).toMatchObject({ verdict: 'not_known', missing: ['size of the lid'] })
      expect(reasonOf(found)).toBe('The size of a cover is not stated; the tank is 102 cm by 42 cm.')
      expect(actionOf(found)).toBe("Enter the lid's length and depth.")
    }
  })

  it('is missed by animals that leave an open tank, and by no others', () => {
    const found = lid(null, {}, true)
    expect(found).toMatchObject({ verdict: 'does_not_fit', action: { want }, source: { tag: 'common_practice' } })
    expect(reasonOf(found)).toBe('Animals of this group (Small tropical community) leave an open tank; no lid is chosen.')
    expect(actionOf(found)).toBe('Add a lid for 102 cm by 42 cm.')
    expect(isMadeInRoundTank('lid')).toBe(false)
  })

  it('has the shape of a tank that is no rectangle', () => {
    const round = {
      tank: one('Wendlemere', { lengthMm: 500, widthMm: 500, heightMm: 460, glassMm: 10, bottomMm: 10, shape: 'cylinder' as const }),
    }
    const of = (spec: LidSpec) => lid({ lengthMm: 500, widthMm: 500, ...spec }, round)
    const open = of({})
    expect(open).toMatchObject({ verdict: 'not_known', missing: ['shape of the lid'], source: { tag: 'common_practice' } })
    expect(reasonOf(open)).toBe("The tank's top is no rectangle (cylinder); what shape a cover has is not stated.")
    expect(actionOf(open)).toBe("Enter the lid's shape.")
    const other = of({ shape: 'rectangular' })
    expect([other.verdict, other.missing]).toEqual(['does_not_fit', []])
    expect(reasonOf(other)).toBe("The lid is made for another top (rectangular) than the tank's (cylinder).")
    expect(actionOf(other)).toBe("Choose a lid of the tank's own shape.")
    expect(reasonOf(lid({ lengthMm: 1020, widthMm: 420, shape: 'hexagon' }))).toBe(
      "The lid is made for another top (hexagon) than the tank's (rectangular).",
    )
    expect(of({ shape: 'cylinder' }).verdict).toBe('fits')
    expect(of({ lengthMm: 400 }).verdict).toBe('does_not_fit')
    expect(reasonOf(of({ lengthMm: 400 }))).toContain('too short')
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
