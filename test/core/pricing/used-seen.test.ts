import { expect, it } from 'vitest'
import { usedSeen } from '../../../core/pricing/used-seen.ts'
import { aSighting } from './a-sighting.ts'

const ASOF = '2026-11-26'
const LINE = { productId: 'a', storeIds: ['upriver'] }
const used = (seenOn: string, priceMinor: number) => aSighting({ productId: 'a', condition: 'used', seenOn, priceMinor })

it('of used goods the newest is told, of one day the lowest, whatever the order', () => {
  const seen = [used('2026-11-20', 4500), used('2026-11-20', 4000), used('2026-10-01', 3000)]
  for (const order of [seen, seen.toReversed()]) expect(usedSeen(LINE, order, ASOF)).toEqual({ priceMinor: 4000, seenOn: '2026-11-20' })
})

it('what is new, withdrawn, doubted, over 180 days old, not seen yet or of another store or product is none of them', () => {
  const none = [
    aSighting({ productId: 'a', seenOn: '2026-11-20', priceMinor: 4500 }),
    { ...used('2026-11-20', 4500), withdrawn: true },
    { ...used('2026-11-20', 4500), doubt: { code: 'too_deep' as const, words: 'deep' } },
    { ...used('2026-11-20', 4500), disputes: 1 },
    { ...used('2026-11-20', 4500), storeId: 'downriver' },
    { ...used('2026-11-20', 4500), productId: 'b' },
    used('2026-05-29', 4500),
    used('2026-11-27', 4500),
  ]
  for (const one of none) expect(usedSeen(LINE, [one], ASOF), JSON.stringify(one)).toBeUndefined()
  expect(usedSeen(LINE, [used('2026-05-30', 4500)], ASOF)).toBeDefined()
})
