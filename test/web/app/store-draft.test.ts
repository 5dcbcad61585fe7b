import { describe, expect, it } from 'vitest'
import { StoreInput } from '../../../core/catalog/schema.ts'
import type { Store } from '../../../core/catalog/store.ts'
import { US } from '../../../core/units/say.ts'
import { draftOfStore, emptyStore, readStoreDraft } from '../../../web/app/stores/store-draft.ts'
import { sayDelivery, sayTax } from '../../../web/app/stores/store-words.ts'

const store: Store = {
  id: '01980000-0000-7000-8000-000000000002', name: 'Upriver Aquatics', kind: 'online', town: null, country: 'US', subdivision: 'MI', timeZone: 'America/New_York', taxBasisPoints: 625,
  pricesIncludeTax: false, deliveryTaxed: true, delivery: { kind: 'free_over', feeMinor: 995, freeOverMinor: 9900, oversizeMinor: 3500 }, returnDays: 30, note: null, archived: false, version: 2,
} // prettier-ignore

describe('the form of a store', () => {
  it('sends back what it was given', () => {
    const { body, faults } = readStoreDraft(draftOfStore(store, 'USD'), 'USD', US)
    const { id: _id, version: _version, ...rest } = store
    expect(faults).toEqual({})
    expect(body).toEqual(rest)
    expect(StoreInput.safeParse(body).error).toBeUndefined()
  })
  it('names what is missing, and never takes it for 0', () => {
    const draft = { ...emptyStore({ country: 'US', timeZone: 'America/New_York' }), deliveryKind: 'free_over' as const }
    expect(Object.keys(readStoreDraft(draft, 'USD', US).faults).toSorted()).toEqual([
      'delivery.feeMinor',
      'delivery.freeOverMinor',
      'delivery.oversizeMinor',
      'name',
      'taxBasisPoints',
    ])
  })
  it('refuses a tax with a slipped decimal', () => {
    expect(readStoreDraft({ ...draftOfStore(store, 'USD'), taxPercent: '60' }, 'USD', US).faults['taxBasisPoints']).toContain(
      'The most is 30 %',
    )
  })
})

it('what a store charges is said in one line', () => {
  expect(sayDelivery(store.delivery, 'USD')).toBe('$9.95, free from $99.00; oversize $35.00 more')
  expect(sayDelivery({ kind: 'flat', feeMinor: 0, oversizeMinor: 0 }, 'USD')).toBe('free')
  expect(sayDelivery({ kind: 'pickup_only' }, 'USD')).toBe('pickup only')
  expect(sayTax(store)).toBe('6.25 %, added')
  expect(sayTax({ taxBasisPoints: 1900, pricesIncludeTax: true })).toBe('19 %, in the price')
})
