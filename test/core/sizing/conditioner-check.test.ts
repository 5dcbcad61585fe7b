import { describe, expect, it } from 'vitest'
import type { ConditionerSpec } from '../../../core/catalog/spec.ts'
import { findingOf, one, reportOf } from './sample-build.ts'
import { figuresOf, told } from './told.ts'

/** The tank of 75 gallons runs 237.3 L (own worked value), so 0.13 mL for each litre is 30.8 mL. */
const bottle = (spec: ConditionerSpec, quantity = 1) =>
  one('Stillwell', { packVolumeMl: 500, doseMlPerL: 0.13, bindsAmmonia: true, ...spec }, quantity)
const found = (...conditioners: ReturnType<typeof bottle>[]) => findingOf('conditioner_dose', { conditioners })
const WANT = { slot: 'treat_water', quantity: 1, minimum: {} }
const BINDING = 'Choose a conditioner that binds ammonia as well.'

describe('the dose for the first fill', () => {
  it('is told beside what there is', () => {
    expect(told(found(bottle({})))).toEqual({
      verdict: 'fits',
      reason: 'The first fill takes 31 mL of it; there are 500 mL.',
      action: null,
      assumed: [],
      missing: [],
    })
    expect(figuresOf(found(bottle({})))).toEqual({ value: 500, low: 31, high: undefined, margin: 469 })
    expect(found(bottle({}))).toMatchObject({ source: { tag: 'published' } })
  })

  it('is there where there is just as much, and not with a millilitre less', () => {
    expect(found(bottle({ packVolumeMl: 31 })).verdict).toBe('fits')
    expect(found(bottle({ packVolumeMl: 30 }))).toMatchObject({ verdict: 'does_not_fit', margin: { value: -1 } })
  })

  it('is told to a tenth of a millilitre below 10 mL', () => {
    // 237.3 L × 0.03 mL: 7.1 mL. A pack of 10 mL is told in whole ones.
    expect(told(found(bottle({ packVolumeMl: 10, doseMlPerL: 0.03 }))).reason).toBe('The first fill takes 7.1 mL of it; there are 10 mL.')
  })

  it('says how many packs of a kind it takes', () => {
    const short = found(bottle({ packVolumeMl: 10 }))
    expect(told(short)).toMatchObject({ verdict: 'does_not_fit', action: 'Take 4 packs in all.' })
    expect(short.action?.want).toEqual({ ...WANT, quantity: 4 })
  })

  it('is the mean of what a mixed lot treats, and of its packs', () => {
    // Two of 5 mL at 0.13 mL/L and one of 10 mL at 0.26: 20 mL treat 76.9 + 38.5 = 115.4 L, so 237.3 L take 41 mL, 6.2 packs of 6.7 mL.
    const mixed = found(bottle({ packVolumeMl: 5 }, 2), bottle({ packVolumeMl: 10, doseMlPerL: 0.26 }))
    expect(told(mixed)).toMatchObject({ reason: 'The first fill takes 41 mL of it; there are 20 mL.', action: 'Take 7 packs in all.' })
  })

  it.each([{ doseMlPerL: undefined }, { packVolumeMl: undefined }])('is asked for where the label was not read: %o', (spec) =>
    expect(told(found(bottle({}), bottle(spec)))).toEqual({
      verdict: 'not_known',
      reason: 'The conditioner states no dose or no content.',
      action: 'Enter the dose for a litre and the content, both on the label.',
      assumed: [],
      missing: ['dose and content of the conditioner'],
    }),
  )

  it('asks for a conditioner where none is chosen, unless it was answered as not needed', () => {
    const none = found()
    expect(told(none)).toMatchObject({
      verdict: 'does_not_fit',
      reason: 'Chlorine or chloramine in tap water kills; no conditioner is chosen.',
      action: 'Choose a conditioner.',
    })
    expect(none.action?.want).toEqual(WANT)
    const made = (conditioners: ReturnType<typeof bottle>[]) =>
      reportOf({ conditioners, notNeeded: { treat_water: 'rain water' } }).findings.some(({ check }) => check === 'conditioner_dose')
    expect(made([])).toBe(false)
    expect(made([bottle({})])).toBe(true)
  })
})

describe('ammonia that chloramine sets free', () => {
  const dose = 'The first fill takes 31 mL of it; there are 500 mL.'
  it('is bound or not, as every bottle says', () => {
    const loose = found(bottle({}), bottle({ bindsAmmonia: false }))
    expect(told(loose)).toMatchObject({
      verdict: 'does_not_fit',
      reason: expect.stringMatching(
        /^The first fill takes 31 mL of it; there are 1,000 mL\. Breaking chloramine sets ammonia free, and this conditioner does not bind it\.$/,
      ),
      action: BINDING,
      missing: [],
    })
    expect(loose.action?.want).toEqual(WANT)
    expect(found(bottle({}), bottle({})).verdict).toBe('fits')
  })

  it('is not known where one bottle says nothing', () => {
    const open = found(bottle({ bindsAmmonia: undefined }), bottle({}))
    expect(told(open)).toMatchObject({ verdict: 'not_known', action: BINDING, missing: ['whether the conditioner binds ammonia'] })
    expect(told(open).reason).toMatch(/Breaking chloramine sets ammonia free; whether this conditioner binds it is not stated\.$/)
    expect(figuresOf(open)).toEqual({ value: undefined, low: undefined, high: undefined, margin: undefined })
  })

  it('is a question for the water supplier where nobody knows what the tap holds', () => {
    const asked = findingOf(
      'conditioner_dose',
      { conditioners: [bottle({ bindsAmmonia: false })] },
      { disinfectant: 'unknown', assumed: ['disinfectant'] },
    )
    expect(told(asked)).toEqual({
      verdict: 'not_known',
      reason: `${dose} Whether the tap water holds chlorine or chloramine is not known; chloramine needs a conditioner that binds ammonia.`,
      action: 'Ask the water supplier, or choose a conditioner that binds ammonia.',
      assumed: ['disinfectant in the tap water'],
      missing: ['disinfectant in the tap water'],
    })
    expect(asked.action?.want).toEqual(WANT)
  })
})
