import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ALKALINITY_G_PER_N, ammoniaOfFeed, NITRATE_G_PER_N, OXYGEN_G_PER_N } from '../../../core/water/nitrogen.ts'
import { shareToHold, steadyUnderChanges } from '../../../core/water/steady-change.ts'

/** IUPAC standard atomic weights. */
const [N, O, C, CA] = [14.0067, 15.9994, 12.0107, 40.078]

describe('what ammonia becomes', () => {
  /** Timmons & Ebeling, from memory: 4.57 g of oxygen and 7.14 g of calcium carbonate; by weights, NH4 + 2 O2 → NO3 + H2O + 2 H. */
  it('takes the oxygen and the alkalinity of its equation', () => {
    expect(OXYGEN_G_PER_N).toBeCloseTo((4 * O) / N, 2)
    expect(Math.abs(ALKALINITY_G_PER_N - (CA + C + 3 * O) / N)).toBeLessThan(0.01)
    expect(NITRATE_G_PER_N).toBeCloseTo((N + 3 * O) / N, 3)
    // 0.207 g a day: 0.9460 g of oxygen.
    expect(0.207 * OXYGEN_G_PER_N).toBeCloseTo(0.946, 3)
  })

  it('never holds more nitrogen than the protein it came from', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1000, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (feed, protein) => {
        // Protein is 16 % nitrogen (Kjeldahl’s factor 6.25, published).
        expect(ammoniaOfFeed(feed, protein)).toBeLessThanOrEqual((feed * protein) / 6.25)
        expect(ammoniaOfFeed(2 * feed, protein)).toBeCloseTo(2 * ammoniaOfFeed(feed, protein), 9)
      }),
    )
  })
})

describe('nitrate under weekly changes', () => {
  /** Own: 0.8708 mg N/L a day for seven days, a quarter changed: 24.382 and 18.287 mg N/L; tolerance 1e-4. */
  it('settles between two concentrations', () => {
    const { peak, trough } = steadyUnderChanges(0.8708 * 7, 0.25)
    expect(Math.abs(peak / 24.382 - 1)).toBeLessThan(1e-4)
    expect(Math.abs(trough / 18.287 - 1)).toBeLessThan(1e-4)
  })

  it('is what a tank comes to that is changed week by week, and what goes out is what was made', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 50, noNaN: true }), fc.double({ min: 0.05, max: 1, noNaN: true }), (made, share) => {
        let now = 0
        let out = 0
        for (let week = 0; week < 800; week++) {
          now += made
          out = now * share
          now -= out
        }
        expect(now).toBeCloseTo(steadyUnderChanges(made, share).trough, 6)
        expect(now + made).toBeCloseTo(steadyUnderChanges(made, share).peak, 6)
        expect(out).toBeCloseTo(made, 6)
        expect(steadyUnderChanges(made, shareToHold(made, 40)).peak).toBeCloseTo(40, 9)
      }),
    )
  })
})
