import { describe, expect, it } from 'vitest'
import { bestSeen } from '../../../core/pricing/best-seen.ts'
import { aSighting } from './a-sighting.ts'

const asOf = '2026-10-20'

describe('the best price seen', () => {
  it('is the lowest accepted price of 365 days, and its newest day', () => {
    const low = aSighting({ condition: 'sale', priceMinor: 15199, seenOn: '2026-07-04' })
    const older = aSighting({ condition: 'sale', priceMinor: 15199, seenOn: '2025-11-28' })
    expect(bestSeen([older, low, aSighting({ priceMinor: 18999, seenOn: '2026-10-01' })], asOf)).toEqual({
      priceMinor: 15199,
      seenOn: '2026-07-04',
      sightingId: low.id,
    })
  })

  it('forgets after 365 days', () => {
    expect(bestSeen([aSighting({ priceMinor: 100, seenOn: '2025-10-20' })], asOf)?.priceMinor).toBe(100)
    expect(bestSeen([aSighting({ priceMinor: 100, seenOn: '2025-10-19' })], asOf)).toBeUndefined()
  })

  it('leaves out used goods, doubted and withdrawn sightings, and days to come', () => {
    const odd = { seenOn: '2026-10-01', priceMinor: 1 }
    const sightings = [
      aSighting({ ...odd, condition: 'used' }),
      aSighting({ ...odd, doubt: { code: 'too_deep', words: '' } }),
      aSighting({ ...odd, withdrawn: true }),
      aSighting({ ...odd, seenOn: '2026-10-21' }),
    ]
    expect(bestSeen(sightings, asOf)).toBeUndefined()
  })
})
