import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { freshToLower, salinityAfter } from '../../../core/water/salt-balance.ts'

describe('salt that stays while water comes and goes', () => {
  /**
   * Published worked examples, from memory: the Mediterranean (Pickard & Emery, Descriptive Physical Oceanography): 1.75 units of water flow in at 36.3,
   * 1.68 flow out at 37.8; the Baltic (Knudsen 1900): what flows in at 17.4 takes up as much fresh water again and leaves at 8.7.
   */
  it.each([
    ['the Mediterranean', 36.3, 1.75, -0.07, 37.8],
    ['the Baltic', 17.4, 470, 470, 8.7],
  ])('makes what flows out of %s as salt as it is', (_, salinity, inflow, fresh, outflow) => {
    expect(Math.abs(salinityAfter(salinity, inflow, fresh) / outflow - 1)).toBeLessThan(2e-3)
  })

  /** Published definition: the practical salinity scale is set by weight dilution of standard sea water (UNESCO 1981): equal weights give half. */
  it('halves by an equal weight of fresh water', () => expect(salinityAfter(35, 1, 1)).toBe(17.5))

  it('keeps the salt, goes back and forth, and rises with what evaporates', () => {
    const salinity = fc.double({ min: 1, max: 42, noNaN: true })
    const kg = fc.double({ min: 5, max: 5000, noNaN: true })
    fc.assert(
      fc.property(salinity, kg, fc.double({ min: -0.9, max: 3, noNaN: true }), (start, water, share) => {
        const after = salinityAfter(start, water, water * share)
        expect(after * water * (1 + share)).toBeCloseTo(start * water, 6)
        expect(salinityAfter(after, water * (1 + share), -water * share)).toBeCloseTo(start, 9)
        expect(salinityAfter(start, water, water * (share + 0.05))).toBeLessThan(after)
        expect(freshToLower(start, water, salinityAfter(start, water, water * Math.abs(share)))).toBeCloseTo(water * Math.abs(share), 6)
      }),
    )
  })
})
