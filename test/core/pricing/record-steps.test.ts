import { describe, expect, it } from 'vitest'
import { recordSteps } from '../../../core/pricing/record-steps.ts'
import { aSighting } from './a-sighting.ts'

const asOf = '2026-10-20'

describe('the drawn record', () => {
  it('joins shelf prices that agree, and steps where one changes', () => {
    const sightings = [
      aSighting({ priceMinor: 19_900, seenOn: '2026-05-01' }),
      aSighting({ priceMinor: 19_900, seenOn: '2026-06-01' }),
      aSighting({ priceMinor: 20_400, seenOn: '2026-07-01' }),
    ]
    expect(recordSteps(sightings, asOf)[0]?.steps).toEqual([
      { from: '2026-05-01', until: '2026-06-30', priceMinor: 19_900 },
      { from: '2026-07-01', until: '2026-10-20', priceMinor: 20_400 },
    ])
  })

  it('leaves a gap after 180 days without a shelf price', () => {
    const sightings = [aSighting({ priceMinor: 100, seenOn: '2025-10-01' }), aSighting({ priceMinor: 100, seenOn: '2026-10-01' })]
    expect(recordSteps(sightings, asOf)[0]?.steps).toEqual([
      { from: '2025-10-01', until: '2026-03-30', priceMinor: 100 },
      { from: '2026-10-01', until: '2026-10-20', priceMinor: 100 },
    ])
  })

  it('dips by the depth against the regular price then, not the highest ever', () => {
    const sightings = [
      aSighting({ priceMinor: 30_000, seenOn: '2026-01-01' }),
      aSighting({ priceMinor: 20_000, seenOn: '2026-06-01' }),
      aSighting({ condition: 'sale', priceMinor: 16_000, seenOn: '2026-07-04', lastDay: '2026-07-06' }),
    ]
    expect(recordSteps(sightings, asOf)[0]?.dips).toEqual([
      { from: '2026-07-04', until: '2026-07-06', priceMinor: 16_000, condition: 'sale', regularMinor: 20_000, depth: 1 - 16_000 / 20_000 },
    ])
  })

  it('ends a running dip at the day asked for', () => {
    expect(
      recordSteps([aSighting({ condition: 'sale', priceMinor: 16_000, seenOn: '2026-10-19', lastDay: '2026-10-31' })], asOf)[0]?.dips[0],
    ).toMatchObject({ until: asOf, depth: null })
  })

  it('marks what is not accepted, drops what was withdrawn, and keeps stores apart', () => {
    const waiting = aSighting({
      storeId: 'saltcote',
      priceMinor: 9900,
      seenOn: '2026-10-09',
      condition: 'sale',
      doubt: { code: 'too_deep', words: '' },
    })
    const record = recordSteps(
      [
        waiting,
        aSighting({ priceMinor: 1, seenOn: '2026-10-01', withdrawn: true }),
        aSighting({ priceMinor: 18_999, seenOn: '2026-10-01' }),
      ],
      asOf,
    )
    expect(record.map(({ storeId, points }) => [storeId, points.map(({ priceMinor, accepted }) => [priceMinor, accepted])])).toEqual([
      ['saltcote', [[9900, false]]],
      ['upriver', [[18_999, true]]],
    ])
    expect(record[0]?.dips).toEqual([])
  })
})
