import { expect, it } from 'vitest'
import { sayDeal } from '../../../../core/pricing/watches/say-deal.ts'

const deal = {
  productName: 'Rimless 60',
  storeName: 'Harbour Aquatics',
  condition: 'sale' as const,
  totalMinor: 12_900,
  totalCurrency: 'USD',
  listed: false,
  seenOn: '2026-11-26',
  lastDay: null,
}

it('says what a deal costs and where, and since or until when', () => {
  expect(sayDeal(deal, 2026)).toEqual({ what: 'Rimless 60: $129.00', where: 'Harbour Aquatics, seen Nov 26' })
  expect(sayDeal({ ...deal, lastDay: '2027-01-03' }, 2026).where).toBe('Harbour Aquatics, until Jan 3, 2027')
})

it('says of the store’s own list that it stands in it: nobody saw it', () => {
  expect(sayDeal({ ...deal, listed: true }, 2026).where).toBe('Harbour Aquatics, in its price list from Nov 26')
  expect(sayDeal({ ...deal, listed: true, lastDay: '2026-12-05' }, 2026).where).toBe('Harbour Aquatics, until Dec 5')
})

it('never tells used goods as new', () => {
  expect(sayDeal({ ...deal, condition: 'used' }, 2026).what).toBe('Rimless 60, used: $129.00')
  expect(sayDeal({ ...deal, condition: 'clearance' }, 2026).what).toBe('Rimless 60, clearance: $129.00')
})
