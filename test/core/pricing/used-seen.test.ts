import { expect, it } from 'vitest'
import { usedSeen } from '../../../core/pricing/used-seen.ts'
import { aSighting } from './a-sighting.ts'

const ASOF = '2026-11-26'
const used = (seenOn: string, priceMinor: number) => aSighting({ productId: 'a', condition: 'used', seenOn, priceMinor })

it('of used goods the newest is told, of one day the lowest, whatever the order', () => {
  const seen = [used('2026-11-20', 4500), used('2026-11-20', 4000), used('2026-10-01', 3000)]
  for (const order of [seen, seen.toReversed()]) expect(usedSeen(order, ASOF).get('a')).toEqual({ priceMinor: 4000, seenOn: '2026-11-20' })
})

it('what is new, withdrawn, over 180 days old or not seen yet is none of them', () => {
  const none = [
    aSighting({ productId: 'a', seenOn: '2026-11-20', priceMinor: 4500 }),
    { ...used('2026-11-20', 4500), withdrawn: true },
    used('2026-05-29', 4500),
    used('2026-11-27', 4500),
  ]
  expect(usedSeen(none, ASOF).size).toBe(0)
  expect(usedSeen([used('2026-05-30', 4500)], ASOF).size).toBe(1)
})
