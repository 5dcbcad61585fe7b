import type { Store } from '../../../core/catalog/store.ts'
import type { Sighting } from '../../../core/pricing/sighting.ts'

let made = 0

/** A sighting with the fields that a test is about; each has an id of its own. */
export function aSighting(fields: Partial<Sighting> & Pick<Sighting, 'priceMinor' | 'seenOn'>): Sighting {
  made += 1
  return {
    id: `s-${String(made).padStart(6, '0')}`,
    productId: 'filter',
    storeId: 'upriver',
    condition: 'shelf',
    printedRegularMinor: null,
    lastDay: null,
    evidence: 'none',
    note: null,
    reporterId: 'noor',
    receivedAt: `${fields.seenOn}T12:00:00.000Z`,
    doubt: null,
    withdrawn: false,
    confirmations: 0,
    disputes: 0,
    ...fields,
  }
}

export function aStore(fields: Partial<Store> & Pick<Store, 'id'>): Store {
  return {
    name: fields.id,
    kind: 'local',
    town: null,
    country: 'US',
    subdivision: null,
    timeZone: 'America/New_York',
    taxBasisPoints: 0,
    pricesIncludeTax: false,
    deliveryTaxed: false,
    delivery: { kind: 'pickup_only' },
    returnDays: null,
    note: null,
    archived: false,
    version: 1,
    ...fields,
  }
}
