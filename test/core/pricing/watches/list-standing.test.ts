import { expect, it } from 'vitest'
import type { ListPrice } from '../../../../core/pricing/price-list.ts'
import { addDays } from '../../../../core/dates.ts'
import type { Deal } from '../../../../core/pricing/watches/deal.ts'
import { newDeals } from '../../../../core/pricing/watches/match.ts'
import { standingListPrice } from '../../../../core/pricing/watches/list-standing.ts'
import { aStore } from '../a-sighting.ts'

const from = (validFrom: string, fields: Partial<ListPrice> = {}): ListPrice => ({
  validFrom,
  priceMinor: 900,
  saleMinor: null,
  saleUntil: null,
  ...fields,
})

it('a price of the own list stands from its day on, however old, and nobody saw it', () => {
  const prices = [from('2025-01-01', { priceMinor: 950 }), from('2025-03-01'), from('2026-12-01', { priceMinor: 700 })]
  expect(standingListPrice({ stockCount: null, prices }, '2026-11-26')).toEqual({
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
  expect(standingListPrice({ stockCount: null, prices: [from('2026-12-01')] }, '2026-11-26')).toBeUndefined()
})

it('its sale stands to the last day, and the price itself after it', () => {
  const prices = [from('2026-11-01', { saleMinor: 800, saleUntil: '2026-11-26' })]
  expect(standingListPrice({ stockCount: null, prices }, '2026-11-26')).toMatchObject({
    condition: 'sale',
    priceMinor: 800,
    until: '2026-11-26',
    lastDayStated: true,
  })
  expect(standingListPrice({ stockCount: null, prices }, '2026-11-27')).toMatchObject({ condition: 'shelf', priceMinor: 900 })
})

const inSale = (validFrom: string, saleUntil: string | null): ListPrice => from(validFrom, { saleMinor: 800, saleUntil })

it('a sale that a weekly list repeats is one sale from its first day on', () => {
  const weekly = ['2026-11-02', '2026-11-09', '2026-11-16', '2026-11-23'].map((day) => inSale(day, '2026-12-31'))
  expect(standingListPrice({ stockCount: null, prices: weekly }, '2026-11-26')).toMatchObject({
    from: '2026-11-02',
    seenOn: '2026-11-23',
    shelf: [],
  })
  const prolonged = [inSale('2026-11-02', null), inSale('2026-11-09', '2026-11-15'), inSale('2026-11-16', '2026-11-30')]
  expect(standingListPrice({ stockCount: null, prices: prolonged }, '2026-11-26')).toMatchObject({ from: '2026-11-02', shelf: [] })
})

it('a sale that was over, or left out of one list, is another one when it comes again', () => {
  const lapsed = [inSale('2026-11-02', '2026-11-05'), inSale('2026-11-09', '2026-11-30')]
  expect(standingListPrice({ stockCount: null, prices: lapsed }, '2026-11-26')).toMatchObject({
    from: '2026-11-09',
    shelf: [{ seenOn: '2026-11-06', priceMinor: 900 }],
  })
  const leftOut = [inSale('2026-11-02', null), from('2026-11-09'), inSale('2026-11-16', null)]
  expect(standingListPrice({ stockCount: null, prices: leftOut }, '2026-11-26')).toMatchObject({
    from: '2026-11-16',
    shelf: [{ seenOn: '2026-11-09', priceMinor: 900 }],
  })
})

const there = aStore({ id: 'store', taxBasisPoints: 0 })
/** The days on which a watch tells something of a list that is sent anew. */
function toldDays(listOf: (day: string) => ListPrice[]): string[] {
  const told: Deal[] = []
  const days = Array.from({ length: 60 }, (_, day) => addDays('2026-11-02', day))
  return days.filter((day) => {
    const price = standingListPrice({ stockCount: null, prices: listOf(day).filter(({ validFrom }) => validFrom <= day) }, day)
    if (!price) return false
    const prices = [
      { limitMinor: 850, there: [{ productId: 'heater', kind: 'heater' as const, store: there, price, rate: null, home: 'USD' }] },
    ]
    const deals = newDeals({ conditions: ['new'], currency: 'USD', storeIds: [] }, prices, told)
    told.push(...deals)
    return deals.length > 0
  })
}

it('is told once, however often the list is sent, and again once the sale was over and another began', () => {
  const mondays = ['2026-11-02', '2026-11-09', '2026-11-16', '2026-11-23', '2026-11-30', '2026-12-07']
  expect(toldDays(() => mondays.map((day) => inSale(day, '2026-12-31')))).toEqual(['2026-11-02'])
  expect(toldDays(() => mondays.map((day) => inSale(day, null)))).toEqual(['2026-11-02'])
  expect(toldDays(() => mondays.map((day) => (day === '2026-11-16' ? from(day) : inSale(day, null))))).toEqual(['2026-11-02', '2026-11-23'])
  expect(toldDays(() => [inSale('2026-11-02', '2026-11-05'), inSale('2026-11-09', '2026-11-30')])).toEqual(['2026-11-02', '2026-11-09'])
})

it('is no price to go for where none of it is in stock, and one again once some is, counted or not', () => {
  const prices = [from('2026-11-01')]
  const at = (stockCount: number | null) => standingListPrice({ prices, stockCount }, '2026-11-26')?.priceMinor
  expect([at(0), at(1), at(null)]).toEqual([undefined, 900, 900])
})
