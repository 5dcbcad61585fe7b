import { expect, it } from 'vitest'
import type { ListPrice } from '../../../../core/pricing/price-list.ts'
import { standingListPrice } from '../../../../core/pricing/watches/list-standing.ts'

const from = (validFrom: string, fields: Partial<ListPrice> = {}): ListPrice => ({
  validFrom,
  priceMinor: 900,
  saleMinor: null,
  saleUntil: null,
  ...fields,
})

it('a price of the own list stands from its day on, however old, and nobody saw it', () => {
  const prices = [from('2025-01-01', { priceMinor: 950 }), from('2025-03-01'), from('2026-12-01', { priceMinor: 700 })]
  expect(standingListPrice({ prices }, '2026-11-26')).toEqual({
    condition: 'shelf',
    priceMinor: 900,
    sightingId: null,
    seenOn: '2025-03-01',
    from: '2025-03-01',
    until: '2027-01-25',
    lastDayStated: false,
    shelf: [
      { seenOn: '2025-01-01', priceMinor: 950 },
      { seenOn: '2025-03-01', priceMinor: 900 },
    ],
  })
  expect(standingListPrice({ prices: [from('2026-12-01')] }, '2026-11-26')).toBeUndefined()
})

it('its sale stands to the last day, and the price itself after it', () => {
  const prices = [from('2026-11-01', { saleMinor: 800, saleUntil: '2026-11-26' })]
  expect(standingListPrice({ prices }, '2026-11-26')).toMatchObject({
    condition: 'sale',
    priceMinor: 800,
    until: '2026-11-26',
    lastDayStated: true,
  })
  expect(standingListPrice({ prices }, '2026-11-27')).toMatchObject({ condition: 'shelf', priceMinor: 900 })
})
