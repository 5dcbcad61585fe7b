import type { Sighting } from '../../../../core/pricing/sighting.ts'
import type { Deal } from '../../../../core/pricing/watches/deal.ts'
import { newDeals } from '../../../../core/pricing/watches/match.ts'
import { standingPrices } from '../../../../core/pricing/watches/standing-price.ts'
import type { Watch } from '../../../../core/pricing/watches/watch.ts'
import { aStore } from '../a-sighting.ts'

export const anyCondition: Pick<Watch, 'conditions' | 'currency' | 'storeIds'> = {
  conditions: ['new', 'clearance', 'used'],
  currency: 'USD',
  storeIds: [],
}

/** What one look tells of a record, everything told before in hand. */
export function look(
  record: readonly Sighting[],
  told: readonly Deal[],
  asOf: string,
  limitMinor = 16000,
  watch: Pick<Watch, 'conditions' | 'currency' | 'storeIds'> = anyCondition,
): Deal[] {
  const pairs = [...Map.groupBy(record, ({ productId, storeId }) => `${productId} ${storeId}`).values()]
  const there = pairs.flatMap((pair) =>
    standingPrices(pair, asOf).map((price) => ({
      productId: pair[0]?.productId ?? '',
      kind: 'filter' as const,
      store: aStore({ id: pair[0]?.storeId ?? '' }),
      price,
      rate: null,
      home: 'USD',
    })),
  )
  return newDeals(watch, [{ limitMinor, there }], told)
}
