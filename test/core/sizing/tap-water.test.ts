import { describe, expect, it } from 'vitest'
import type { RoUnitSpec } from '../../../core/catalog/appliance-spec.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { packNeedL } from '../../../core/quote/pack-cover.ts'
import { workBuild } from '../../../core/quote/worked-build.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { disinfectantIn, isPurified } from '../../../core/sizing/tap-water.ts'
import { productOf, sampleInputs, sampleTank } from '../quote/sample-inputs.ts'
import { actionsIn, amountIn, stepFor, textOf } from '../startup/said.ts'
import { sampleSubject } from '../startup/sample-subject.ts'

const sample = sampleSubject()
const sea = { livestock: { ...sample.conditions.livestock, water: 'salt' as const } }
const unit = (spec: RoUnitSpec) => ({ purifiers: [{ name: 'Stillwell RO 190', quantity: 1, spec }], conditioners: [] })
const subject = (spec: RoUnitSpec | null, more: Partial<typeof sample.conditions> = sea) =>
  sampleSubject({ gear: spec ? unit(spec) : { conditioners: [] }, conditions: more })

describe('water through a reverse-osmosis unit', () => {
  // Common practice: carbon before the membrane takes chlorine; chloramine leaves ammonia that only a resin stage behind it takes.
  it('is free of what the tap carries: of chlorine by its carbon, of chloramine by its resin stage alone', () => {
    const left = (disinfectant: 'chlorine' | 'chloramine' | 'unknown', spec: RoUnitSpec) =>
      disinfectantIn(subject(spec, { ...sea, disinfectant }))
    expect(left('chlorine', {})).toBe('none')
    expect(left('chloramine', { deionising: true })).toBe('none')
    expect(left('unknown', { deionising: true })).toBe('none')
    expect(left('chloramine', {})).toBe('chloramine')
    expect(left('unknown', { deionising: false })).toBe('unknown')
    expect(disinfectantIn(subject(null))).toBe('chlorine')
  })
  it('is all the water of a salt tank, and only a part of a freshwater one', () => {
    expect(isPurified(subject({ deionising: true }))).toBe(true)
    expect(isPurified(subject({ deionising: true }, {}))).toBe(false)
  })
  it('takes no conditioner: none is asked for, checked or dosed, and the water is tested for chlorine instead', () => {
    const pure = subject({ deionising: true })
    const checks = ({ gear, conditions }: typeof pure) => sizingReport({ gear, conditions }).findings.map(({ check }) => check)
    expect(checks(pure)).not.toContain('conditioner_dose')
    expect(checks(subject(null))).toContain('conditioner_dose')
    expect(packNeedL('treat_water', pure)).toBeNull()
    expect(packNeedL('treat_water', subject(null))).toBeGreaterThan(0)
    expect(amountIn(stepFor(pure, 'fill'), 'Conditioner')).toBe('none: the reverse-osmosis unit makes the water')
    expect(actionsIn(stepFor(pure, 'fill'))).not.toContain('conditioner')
    expect(textOf(stepFor(pure, 'fill'))).not.toContain('conditioned')
    expect(actionsIn(stepFor(pure, 'mix-salt'))).toContain('test it for chlorine first')
    expect(actionsIn(stepFor(subject(null), 'fill'))).toContain('Put the conditioner in')
  })
  it('makes the slot of the conditioner superfluous in a build, and says why', () => {
    const ro = productOf('ro_unit', 'Stillwell RO 190', { deionising: true, stages: 4 })
    const slot = (products: Product[], livestockId: string) =>
      workBuild(sampleInputs(products, { livestockId }), 0).rows.find((row) => row.slot === 'treat_water')
    const reef = 'marine-fish'
    expect(slot([sampleTank, ro], reef)).toMatchObject({
      required: false,
      answer: 'not_needed',
      text: 'the reverse-osmosis unit makes the water',
    })
    expect(slot([sampleTank], reef)).toMatchObject({ required: true })
    expect(slot([sampleTank, ro], 'small-tropical')).toMatchObject({ required: true })
  })
})

it('misses no test kit before there is a tank: the tank is what is missed', () => {
  const { findings } = sizingReport({ gear: { ...sample.gear, tank: null, testKits: [] }, conditions: sample.conditions })
  expect(findings.map(({ check }) => check)).not.toContain('ammonia_tests')
  expect(findings.find(({ check }) => check === 'smallest_volume')?.missing).toEqual(['length, depth and height of the tank'])
})
