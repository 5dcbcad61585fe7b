import fc from 'fast-check'
import { expect, it } from 'vitest'
import { ammoniaOfFeed, NITRATE_G_PER_N } from '../../../core/water/nitrogen.ts'
import { findingOf, group, reportOf } from './sample-build.ts'

/** mg/L of nitrate that the weekly change is to hold: common practice, as the finding's own sentence says. */
const HELD_MG_L = 40

const week = fc.record({ feedG: fc.double({ min: 0, max: 50, noNaN: true }), share: fc.double({ min: 0, max: 1, noNaN: true }) })

it('nitrogen: what feed brings in is what changes carry out and what is left in the water, week after week', () => {
  fc.assert(
    fc.property(fc.array(week, { minLength: 1, maxLength: 60 }), fc.double({ min: 10, max: 1000, noNaN: true }), (weeks, waterL) => {
      let nitrateMgL = 0
      let [inG, outG] = [0, 0]
      for (const { feedG, share } of weeks) {
        const madeN = ammoniaOfFeed(feedG)
        inG += madeN
        nitrateMgL += (madeN * NITRATE_G_PER_N * 1000) / waterL
        outG += (nitrateMgL * share * waterL) / 1000 / NITRATE_G_PER_N
        nitrateMgL *= 1 - share
      }
      const storedG = (nitrateMgL * waterL) / 1000 / NITRATE_G_PER_N
      expect(Math.abs(inG - outG - storedG)).toBeLessThanOrEqual(1e-9 * Math.max(1, inG))
    }),
  )
})

it('nitrogen: the weekly change that is asked for carries out what the feed of a week brings in, to half a percent', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.2, max: 20, noNaN: true }), (feedGramsPerDay) => {
      const livestock = { ...group('small-tropical'), feedGramsPerDay }
      const percent = findingOf('weekly_change', {}, { livestock }).value?.value ?? NaN
      const { waterVolumeL = NaN } = reportOf({}, { livestock }).figures
      const broughtG = ammoniaOfFeed(7 * feedGramsPerDay)
      const carriedG = (share: number) => (share * HELD_MG_L * waterVolumeL) / 1000 / NITRATE_G_PER_N
      // The finding rounds to whole percents.
      expect(carriedG((percent + 0.5) / 100)).toBeGreaterThanOrEqual(broughtG * (1 - 1e-3))
      expect(carriedG((percent - 0.5) / 100)).toBeLessThan(broughtG * (1 + 1e-3))
    }),
    { numRuns: 60 },
  )
})
