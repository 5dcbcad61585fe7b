import { describe, expect, it } from 'vitest'
import { quantity } from '../../../core/units/quantity.ts'
import { rulePlaces, ruleWithPointer } from '../../../web/plots/rule.ts'

const watts = (value: number) => quantity(value, 'W', 0)

describe('a pointer on a rule', () => {
  it('puts a value of half the limit halfway to it', () => {
    const places = rulePlaces({ kind: 'at_most', high: watts(1000) })
    expect(places.place(500)).toBeCloseTo((places.limits[0] ?? NaN) / 2, 10)
    expect(places.place(0)).toBe(0)
  })
  it('allows below a highest limit, above a lowest one, and between two', () => {
    expect(rulePlaces({ kind: 'at_most', high: watts(10) }).allowed.from).toBe(0)
    expect(rulePlaces({ kind: 'at_least', low: watts(10) }).allowed.to).toBe(1)
    const between = rulePlaces({ kind: 'between', low: watts(30), high: watts(60) })
    expect(between.place(45)).toBeCloseTo(0.5, 10)
    expect([between.place(30), between.place(60)]).toEqual([between.allowed.from, between.allowed.to])
  })
  it('measures temperatures from the limit, not from zero: one kelvin is a twentieth of the rule', () => {
    const places = rulePlaces({ kind: 'at_most', high: quantity(32, 'degC', 1) })
    expect(places.place(33) - places.place(32)).toBeCloseTo(1 / 20, 10)
  })
  it('keeps a value far outside at the end and doubles its pointer', () => {
    const finding = {
      verdict: 'does_not_fit',
      value: quantity(80, 'degC', 1),
      limit: { kind: 'at_most', high: quantity(32, 'degC', 1) },
    } as const
    const far = ruleWithPointer(finding)
    const near = ruleWithPointer({ ...finding, value: quantity(33, 'degC', 1) })
    expect(far.match(/l-4\.6-8h9\.2z/g)).toHaveLength(2)
    expect(near.match(/l-4\.6-8h9\.2z/g)).toHaveLength(1)
  })
  it('draws nothing without a value or a limit', () => {
    expect(ruleWithPointer({ verdict: 'not_known' })).toBe('')
    expect(ruleWithPointer({ verdict: 'fits', value: watts(3) })).toBe('')
  })
  it('puts the pointer where the rule says, in the width it was given', () => {
    const svg = ruleWithPointer({ verdict: 'fits', value: watts(500), limit: { kind: 'at_most', high: watts(1000) } }, { width: 210 })
    // own arithmetic: 5 + 0.5 × 0.65 × 200
    expect(svg).toContain('M70 ')
  })
})
