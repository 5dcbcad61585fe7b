import { describe, expect, it } from 'vitest'
import { StoreInput } from '../../../core/catalog/schema.ts'
import type { Store } from '../../../core/catalog/store.ts'
import { US } from '../../../core/units/say.ts'
import { draftOfStore, emptyStore, readStoreDraft } from '../../../web/app/stores/store-draft.ts'
import { sayDelivery, sayTax } from '../../../web/app/stores/store-words.ts'

const store: Store = {
  id: '01980000-0000-7000-8000-000000000002', name: 'Upriver Aquatics', kind: 'online', town: null, country: 'US', subdivision: 'MI', timeZone: 'America/New_York', taxBasisPoints: 625,
  pricesIncludeTax: false, deliveryTaxed: true, delivery: { kind: 'free_over', feeMinor: 995, freeOverMinor: 9900, oversizeMinor: 3500 }, returnDays: 30, note: null, archived: false, version: 2,
  taxName: 'Full', otherRates: [{ name: 'Low', basisPoints: 312.5, kinds: ['substrate'], productIds: ['01980000-0000-7000-8000-000000000009'] }], deliveryRate: 'Low', warrantyMonths: 24,
  currency: null, own: false,
} // prettier-ignore

describe('the form of a store', () => {
  it('sends back what it was given', () => {
    const { body, faults } = readStoreDraft(draftOfStore(store, 'USD', US), 'USD', US)
    const { id: _id, version: _version, ...rest } = store
    expect(faults).toEqual({})
    expect(body).toEqual(rest)
    expect(StoreInput.safeParse(body).error).toBeUndefined()
  })
  it('takes amounts of a store of another currency in that currency', () => {
    const yen: Store = { ...store, currency: 'JPY', delivery: { kind: 'flat', feeMinor: 800, oversizeMinor: 0 } }
    const draft = draftOfStore(yen, 'USD', US)
    expect(draft.fee).toBe('800')
    expect(readStoreDraft(draft, 'USD', US).body).toMatchObject({ currency: 'JPY', delivery: yen.delivery })
    expect(readStoreDraft({ ...draft, currency: 'usd', fee: '8.00' }, 'USD', US).body).toMatchObject({ currency: null })
  })
  it('names a rate without figure, name or goods by its place', () => {
    const draft = { ...draftOfStore(store, 'USD', US), rates: [{ name: ' ', percent: '', kinds: [], productIds: [] }] }
    const { faults } = readStoreDraft(draft, 'USD', US)
    expect(Object.keys(faults).toSorted()).toEqual(['otherRates.0.basisPoints', 'otherRates.0.kinds', 'otherRates.0.name'])
  })
  it('names what is missing, and never takes it for 0', () => {
    const draft = { ...emptyStore({ country: 'US', timeZone: 'America/New_York' }), deliveryKind: 'free_over' as const }
    expect(Object.keys(readStoreDraft(draft, 'USD', US).faults).toSorted()).toEqual([
      'delivery.feeMinor',
      'delivery.freeOverMinor',
      'name',
      'taxBasisPoints',
    ])
  })
  it('takes no word of an oversize surcharge for none', () => {
    const typed = { ...draftOfStore(store, 'USD', US), oversize: ' ' }
    const { body, faults } = readStoreDraft(typed, 'USD', US)
    expect([faults, body.delivery]).toEqual([{}, { ...store.delivery, oversizeMinor: 0 }])
    expect(draftOfStore({ ...store, ...body }, 'USD', US).oversize).toBe('')
  })
  it('keeps a rate with three decimals, and refuses what it could not keep', () => {
    const typed = (taxPercent: string) => readStoreDraft({ ...draftOfStore(store, 'USD', US), taxPercent }, 'USD', US)
    expect(typed('8.875').body.taxBasisPoints).toBe(887.5)
    expect(StoreInput.safeParse(typed('8.875').body).success).toBe(true)
    expect(draftOfStore({ ...store, taxBasisPoints: 887.5 }, 'USD', US).taxPercent).toBe('8.875')
    expect(typed('8.87512').faults['taxBasisPoints']).toBe('Tax has at most 4 decimals, like 8.875.')
  })
  it('spells and reads amounts with the decimal comma where the settings say so', () => {
    const comma = { ...US, decimal: ',' } as const
    const draft = draftOfStore({ ...store, taxBasisPoints: 887.5 }, 'EUR', comma)
    expect(draft).toMatchObject({ taxPercent: '8,875', fee: '9,95', freeOver: '99,00' })
    expect(readStoreDraft(draft, 'EUR', comma).body).toMatchObject({
      taxBasisPoints: 887.5,
      delivery: { feeMinor: 995, freeOverMinor: 9900 },
    })
  })
  it('says of a fee below 0 that it is below 0', () => {
    const { faults } = readStoreDraft({ ...draftOfStore(store, 'USD', US), fee: '-5' }, 'USD', US)
    expect(faults['delivery.feeMinor']).toBe('Delivery fee is below 0. The least is $0.00.')
  })
  it('refuses a tax with a slipped decimal', () => {
    expect(readStoreDraft({ ...draftOfStore(store, 'USD', US), taxPercent: '60' }, 'USD', US).faults['taxBasisPoints']).toContain(
      'The most is 30 %',
    )
  })
})

it('what a store charges is said in one line', () => {
  expect(sayDelivery(store.delivery, 'USD')).toBe('$9.95, free from $99.00; oversize $35.00 more')
  expect(sayDelivery({ kind: 'flat', feeMinor: 1200, oversizeMinor: 0 }, 'CAD', 'USD')).toBe('CAD 12.00')
  expect(sayDelivery({ kind: 'flat', feeMinor: 0, oversizeMinor: 0 }, 'USD')).toBe('free')
  expect(sayDelivery({ kind: 'pickup_only' }, 'USD')).toBe('pickup only')
  expect(sayTax(store)).toBe('6.25 % and 3.125 %, added')
  expect(sayTax({ taxBasisPoints: 887.5, pricesIncludeTax: false })).toBe('8.875 %, added')
  expect(sayTax({ taxBasisPoints: 1900, pricesIncludeTax: true })).toBe('19 %, in the price')
})
