import { describe, expect, it } from 'vitest'
import { ammoniaSolutionMl, ammoniumChlorideG, PER_NITROGEN } from '../../../core/startup/ammonia-dose.ts'
import { unionisedShare } from '../../../core/startup/ammonia-fraction.ts'
import { ammoniaFromChloramine } from '../../../core/startup/disinfectant.ts'
import { afterWaterChanges, waterChangesNeeded } from '../../../core/startup/water-change.ts'

const within = (value: number, expected: number, relative: number) => expect(Math.abs(value / expected - 1)).toBeLessThanOrEqual(relative)

describe('ammonia dose', () => {
  // Own computation from IUPAC atomic weights, done apart from this code; tolerance 1e-5.
  it.each([
    ['ammoniumChloride', 3.81899],
    ['ammonia', 1.21588],
    ['ammonium', 1.28785],
    ['nitrite', 3.28454],
    ['nitrate', 4.4268],
  ] as const)('carries one part of nitrogen in %s as %f parts', (substance, expected) => within(PER_NITROGEN[substance], expected, 1e-5))

  // Own computation; densities from a handbook table, from memory. 237.7 L to 2 mg/L; tolerance 1e-4.
  it('weighs ammonium chloride for 2 mg/L as nitrogen', () => within(ammoniumChlorideG(237.7, 2, 1), 1.81555, 1e-4))
  it('measures a 10 % solution for 2 mg/L as nitrogen', () => within(ammoniaSolutionMl(237.7, 2, 0.1), 6.0369, 1e-4))
  it('measures a 28 % solution for 2 mg/L as nitrogen', () => within(ammoniaSolutionMl(237.7, 2, 0.28), 2.2989, 1e-4))
  it('doubles the weight of a salt that is half pure', () => within(ammoniumChlorideG(237.7, 2, 0.5), 3.6311, 1e-4))
})

describe('un-ionised ammonia', () => {
  // Trussell (1972), as reproduced in a published table; 3 % since the constants differ.
  it.each([
    [20, 7, 0.4],
    [20, 8, 3.83],
    [25, 7, 0.55],
    [25, 8, 5.28],
    [10, 8, 1.83],
  ])('agrees with the table of Trussell at %d °C and pH %d', (t, ph, percent) => within(unionisedShare(t, ph) * 100, percent, 0.03))

  // Emerson et al. (1975), table values from memory; 0.6 % since the paper tabulated with T = t + 273.2.
  it.each([
    [20, 7, 0.396],
    [20, 8, 3.82],
    [25, 7, 0.566],
    [25, 8, 5.38],
    [25, 9, 36.3],
  ])('agrees with the table of Emerson at %d °C and pH %d', (t, ph, percent) => within(unionisedShare(t, ph) * 100, percent, 0.006))

  // Own computation, done apart from this code.
  it.each([
    [20, 7, 0.3942],
    [20, 8, 3.807],
    [25, 7, 0.5639],
    [25, 8, 5.366],
    [10, 8, 1.822],
    [25, 9, 36.19],
  ])('has our own value at %d °C and pH %d', (t, ph, percent) => within(unionisedShare(t, ph) * 100, percent, 2e-4))
})

describe('disinfectant', () => {
  // Stoichiometry: 14.0067 / 70.906; residual 4 mg/L is the limit of 40 CFR 141.65.
  it('leaves 0.7902 mg/L of nitrogen when 4 mg/L of chloramine is broken', () => within(ammoniaFromChloramine(4), 0.7902, 1e-4))
})

describe('water change', () => {
  // Own computation from the mass balance, done apart from this code; tolerance 1e-4.
  it('takes 40 down to 19.6 in two changes of 30 %', () => within(afterWaterChanges(40, 0.3, 2), 19.6, 1e-4))
  it('needs five changes of 25 % from 40 to 10', () => expect(waterChangesNeeded(40, 10, 0.25)).toBe(5))
  it('needs none where it is low already', () => expect(waterChangesNeeded(5, 10, 0.25)).toBe(0))
})
