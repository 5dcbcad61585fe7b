import { describe, expect, it } from 'vitest'
import type { AmmoniaSourceSpec } from '../../../core/catalog/spec.ts'
import { startupPlan } from '../../../core/startup/startup-plan.ts'
import { actionsIn, amountIn, stepFor, textOf } from './said.ts'
import { sampleSubject } from './sample-subject.ts'

const source = (name: string, spec: AmmoniaSourceSpec) => ({ name, quantity: 1, spec })
const strong = source('Strong drops', { form: 'ammonia_solution', strength: 0.25 })
const salt = source('Stillwell salt', { form: 'ammonium_chloride', strength: 1 })
const subjectWith = (...ammoniaSources: (typeof salt)[]) => sampleSubject({ gear: { ammoniaSources } })
const idsOf = (subject: ReturnType<typeof sampleSubject>) => startupPlan(subject).steps.map((step) => step.id)

describe('a liquid above 10 %', () => {
  const subject = subjectWith(strong)

  it('stays closed, and ammonium chloride is got before the first dose', () => {
    const step = stepFor(subject, 'get-ammonia')
    expect(actionsIn(step)).toContain('Do not open Strong drops.')
    expect(actionsIn(step)).toContain('Get pure ammonium chloride')
    expect(actionsIn(step)).not.toMatch(/pour|draw up/i)
    expect(step.done).toBe('Done: ammonium chloride is here, the liquid still closed')
    expect(idsOf(subject).indexOf('get-ammonia')).toBe(idsOf(subject).indexOf('first-ammonia') - 1)
  })

  it.each(['first-ammonia', 'second-dose'])('is not what %s doses', (id) => {
    const step = stepFor(subject, id)
    expect(amountIn(step, 'How much')).toBe('1.8 g of pure ammonium chloride')
    expect(textOf(step)).not.toContain('Strong drops')
  })

  it('gives way to a second source that may be used', () => {
    const both = subjectWith(strong, salt)
    expect(idsOf(both)).not.toContain('get-ammonia')
    expect(amountIn(stepFor(both, 'first-ammonia'), 'How much')).toBe('1.8 g of Stillwell salt')
    expect(actionsIn(stepFor(both, 'first-ammonia'))).toContain('Leave Strong drops closed')
  })

  it('may be a solution of just 10 %', () =>
    expect(idsOf(subjectWith(source('Drops', { form: 'ammonia_solution', strength: 0.1 })))).not.toContain('get-ammonia'))
})

it('has as much salt ready as the stock takes, where ten doses would be less', () => {
  const few = (waterVolumeL: number) => sampleSubject({ gear: { ammoniaSources: [] }, figures: { waterVolumeL } })
  expect(amountIn(stepFor(few(18.3), 'get-ammonia'), 'Have ready')).toBe('5.0 g, for the stock')
  expect(amountIn(stepFor(few(100), 'get-ammonia'), 'Have ready')).toBe('about 7.6 g, for 10 doses')
})

describe('no ammonia source', () => {
  const subject = subjectWith()

  it('is got first, ten doses of it', () => {
    expect(stepFor(subject, 'get-ammonia').done).toBe('Done: ammonium chloride is here')
    expect(amountIn(stepFor(subject, 'get-ammonia'), 'Have ready')).toBe('about 18.2 g, for 10 doses')
    expect(startupPlan(subject).notComputed).toEqual([
      'Ammonia dose: no ammonia source is part of this plan. Reckoned for pure ammonium chloride.',
    ])
  })

  it('is never dosed as "none"', () => {
    for (const id of ['first-ammonia', 'second-dose']) expect(amountIn(stepFor(subject, id), 'How much')).not.toMatch(/none|^no /)
  })
})

it.each([{ form: 'ammonia_solution' }, {}, { strength: 0.3 }] satisfies AmmoniaSourceSpec[])('reads the label before it opens %o', (spec) =>
  expect(actionsIn(stepFor(subjectWith(source('Nameless', spec)), 'first-ammonia'))).toContain('A liquid above 10 % stays closed'),
)

describe('less salt than a scale weighs', () => {
  // Own: 18.3 L × 2 mg/L × 3.81899 is 0.1398 g of ammonium chloride; at 5 g in 500 mL that is 13.98 mL.
  const small = (waterVolumeL: number) => sampleSubject({ gear: { ammoniaSources: [salt] }, figures: { waterVolumeL } })

  it('is measured as a stock solution', () => {
    const step = stepFor(small(18.3), 'first-ammonia')
    expect(amountIn(step, 'How much')).toBe('14.0 mL of a stock of 5 g of Stillwell salt in 500 mL of water (0.14 g is in it)')
    expect(actionsIn(step)).toContain('Make the stock once, label it')
    expect(amountIn(stepFor(small(18.3), 'second-dose'), 'How much')).toContain('14.0 mL of a stock')
  })

  it('is weighed from one gram on', () => {
    expect(amountIn(stepFor(small(130), 'first-ammonia'), 'How much')).toMatch(/ mL of a stock/)
    expect(amountIn(stepFor(small(132), 'first-ammonia'), 'How much')).toBe('1.0 g of Stillwell salt')
  })
})
