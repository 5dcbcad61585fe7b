import { describe, expect, it } from 'vitest'
import type { Limit } from '../../../core/sizing/finding.ts'
import { makeFinding, namesOf } from '../../../core/sizing/make-finding.ts'
import { quantity, type Quantity } from '../../../core/units/quantity.ts'

const SOURCE = { tag: 'own', text: 'Tarnwick tables.' } as const
const found = (value?: Quantity, limit?: Limit) =>
  makeFinding('lid', { verdict: 'fits', reason: ['It closes.'], source: SOURCE, ...(value ? { value } : {}), ...(limit ? { limit } : {}) })

describe('a finding', () => {
  it('has its check’s rank, and asks and assumes nothing unless it is told to', () => {
    expect(found()).toEqual({
      check: 'lid',
      hurtRank: 26,
      verdict: 'fits',
      reason: ['It closes.'],
      source: SOURCE,
      action: null,
      assumed: [],
      missing: [],
    })
  })

  it('is as far from its limit as the nearer end, and beyond it below nought', () => {
    const [low, high] = [quantity(4, 'per_hour', 0), quantity(10, 'per_hour', 0)]
    const between = { kind: 'between', low, high } as const
    expect(found(quantity(6.5, 'per_hour', 1), between).margin).toEqual(quantity(2.5, 'per_hour', 1))
    expect(found(quantity(9.5, 'per_hour', 1), between).margin).toEqual(quantity(0.5, 'per_hour', 1))
    expect(found(quantity(11, 'per_hour', 0), { kind: 'at_most', high }).margin).toEqual(quantity(-1, 'per_hour', 0))
    expect(found(quantity(3, 'per_hour', 0), { kind: 'at_least', low }).margin).toEqual(quantity(-1, 'per_hour', 0))
  })

  it('tells the distance to the digits of whichever has more', () => {
    const fine = quantity(4.25, 'kg', 2)
    expect(found(quantity(6, 'kg', 0), { kind: 'at_least', low: fine }).margin).toEqual(quantity(1.75, 'kg', 2))
    expect(found(quantity(4, 'kg', 0), { kind: 'at_most', high: fine }).margin).toEqual(quantity(0.25, 'kg', 2))
    expect(found(quantity(5.125, 'kg', 3), { kind: 'at_least', low: fine }).margin).toEqual(quantity(0.875, 'kg', 3))
  })

  it('tells a distance between temperatures in kelvins', () => {
    expect(found(quantity(36.4, 'degC', 1), { kind: 'at_most', high: quantity(32, 'degC', 1) }).margin).toEqual(quantity(-4.4, 'K', 1))
  })

  it('has none where value or limit is missing', () => {
    expect(found(quantity(6, 'kg', 0)).margin).toBeUndefined()
    expect(found(undefined, { kind: 'at_most', high: quantity(9, 'kg', 0) }).margin).toBeUndefined()
  })
})

it('names each thing once, in order', () => {
  expect(namesOf(['a'], ['b', 'a'], [])).toEqual(['a', 'b'])
})
