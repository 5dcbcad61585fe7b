import { describe, expect, it } from 'vitest'
import type { Sighting } from '../../../../core/pricing/sighting.ts'
import { dealFor, totalThere } from '../../../../core/pricing/watches/deal.ts'
import { roomLeft } from '../../../../core/pricing/watches/match.ts'
import { standingPrices } from '../../../../core/pricing/watches/standing-price.ts'
import { aSighting, aStore } from '../a-sighting.ts'
import { anyCondition, look } from './told-so-far.ts'

const today = '2026-10-20'
const shelf = aSighting({ priceMinor: 18999, seenOn: '2026-09-22' })
const sale = (fields: Partial<Sighting> = {}) => aSighting({ condition: 'sale', priceMinor: 15199, seenOn: '2026-10-18', ...fields })
const doubt = { code: 'too_deep', words: '' } as const

describe('a deal', () => {
  it('is a price at or under the limit, tax in it, with the days it stands', () => {
    const [deal] = look([shelf, sale({ lastDay: '2026-10-25' })], [], today, 15199)
    expect(deal).toMatchObject({ condition: 'sale', totalMinor: 15199, from: '2026-10-18', until: '2026-10-25', lastDayStated: true })
    expect(look([shelf, sale()], [], today, 15198)).toEqual([])
  })

  it('counts the tax that the store adds, at the rate that the product takes there', () => {
    const store = aStore({
      id: 'upriver',
      taxBasisPoints: 600,
      otherRates: [{ name: 'Reduced', basisPoints: 200, kinds: ['substrate'], productIds: [] }],
    })
    const there = { productId: 'p', store, rate: null, home: 'USD' }
    expect(totalThere({ ...there, kind: 'filter' }, 10000)).toBe(10600)
    expect(totalThere({ ...there, kind: 'substrate' }, 10000)).toBe(10200)
    expect(totalThere({ ...there, kind: 'filter', store: { ...store, pricesIncludeTax: true } }, 10000)).toBe(10000)
  })

  it('of a store in another currency is told at the rate of exchange, and without a rate not at all', () => {
    const store = aStore({ id: 'upriver', currency: 'CAD' })
    const there = { productId: 'p', kind: 'filter' as const, store, home: 'USD' }
    const rate = { currency: 'CAD', rate: 0.75, seenOn: today, source: 'noon rate' }
    expect(totalThere({ ...there, rate }, 20000)).toBe(15000)
    expect(totalThere({ ...there, rate: null }, 20000)).toBeNull()
  })

  it('is none at a store that is archived or reaches nobody, that was not named, or in a condition that was not asked for', () => {
    const [price] = standingPrices([sale()], today)
    const store = aStore({ id: 'upriver' })
    const at = (change: object, watch: object = {}, region: ReadonlySet<string> | null = null) =>
      dealFor(
        { ...anyCondition, ...watch },
        16000,
        { productId: 'p', kind: 'filter', store: { ...store, ...change }, price: price!, rate: null, home: 'USD' },
        region,
      )
    expect(at({})).not.toBeNull()
    expect(at({ archived: true })).toBeNull()
    expect(at({ kind: 'online' })).toBeNull()
    expect(at({}, { storeIds: ['kettle'] })).toBeNull()
    expect(at({}, { conditions: ['used'] })).toBeNull()
    expect(at({}, { currency: 'EUR' })).toBeNull()
    expect(at({}, {}, new Set(['kettle']))).toBeNull()
    expect(at({}, {}, new Set(['upriver']))).not.toBeNull()
  })

  it.each([
    ['doubted', { doubt }],
    ['withdrawn', { withdrawn: true }],
    ['disputed', { disputes: 1 }],
    ['over', { lastDay: '2026-10-19' }],
    ['of a day to come', { seenOn: '2026-10-21' }],
  ])('is none where the report is %s', (_, change) => {
    expect(look([shelf, sale(change)], [], today)).toEqual([])
  })

  it('counts once a second member has confirmed a doubted report', () => {
    expect(look([shelf, sale({ doubt, confirmations: 1 })], [], today)).toHaveLength(1)
  })

  it('may be the regular price, seen within 60 days', () => {
    expect(look([aSighting({ priceMinor: 15000, seenOn: '2026-08-21' })], [], today)).toMatchObject([{ condition: 'shelf' }])
    expect(look([aSighting({ priceMinor: 15000, seenOn: '2026-08-20' })], [], today)).toEqual([])
  })

  it('may be a used one, for five days', () => {
    const used = (seenOn: string) => [aSighting({ condition: 'used', priceMinor: 9000, seenOn })]
    expect(look(used('2026-10-15'), [], today)).toMatchObject([{ condition: 'used', until: '2026-10-20' }])
    expect(look(used('2026-10-14'), [], today)).toEqual([])
  })
})

describe('what was told', () => {
  const first = look([shelf, sale()], [], today)

  it('is not told again when others report the same sale, on that day or a later one', () => {
    const others = [
      sale({ reporterId: 'tom' }),
      sale({ reporterId: 'ada', seenOn: '2026-10-20' }),
      sale({ reporterId: 'ida', seenOn: '2026-10-24' }),
    ]
    expect(look([shelf, sale(), ...others], first, '2026-10-24')).toEqual([])
  })

  it('is told again once the price has fallen by a further 2 %, and not before', () => {
    const fallsTo = (priceMinor: number) => look([shelf, sale(), sale({ priceMinor, seenOn: '2026-10-20' })], first, today)
    // 2 % of 151.99 are 3.0398: 148.95 is the dearest price that is so much lower.
    expect(fallsTo(14896)).toEqual([])
    expect(fallsTo(14895)).toMatchObject([{ priceMinor: 14895 }])
  })

  it('is told again once the sale has ended and another has begun', () => {
    const back = aSighting({ priceMinor: 18999, seenOn: '2026-10-21' })
    expect(look([shelf, sale(), back, sale({ seenOn: '2026-10-23' })], first, '2026-10-23')).toMatchObject([{ from: '2026-10-23' }])
    // Nobody saw it end: the eight days that an undated sale is taken to hold are over, and a day more.
    expect(look([shelf, sale(), sale({ seenOn: '2026-10-27' })], first, '2026-10-27')).toMatchObject([{ from: '2026-10-27' }])
    expect(look([shelf, sale(), sale({ seenOn: '2026-10-26' })], first, '2026-10-26')).toEqual([])
  })

  it('is not told again as a clearance at the same price', () => {
    expect(look([shelf, sale(), sale({ condition: 'clearance', seenOn: '2026-10-20' })], first, today)).toEqual([])
  })

  it('of a regular price is told again only after one over the limit was seen', () => {
    const at = (priceMinor: number, seenOn: string) => aSighting({ priceMinor, seenOn })
    const told = look([at(15500, '2026-10-01')], [], '2026-10-01')
    expect(told).toHaveLength(1)
    expect(look([at(15500, '2026-10-01'), at(15600, '2026-10-09')], told, '2026-10-09')).toEqual([])
    expect(look([at(15500, '2026-10-01'), at(17000, '2026-10-05'), at(15500, '2026-10-09')], told, '2026-10-09')).toHaveLength(1)
  })

  it('at one store is no reason against another', () => {
    expect(look([shelf, sale(), sale({ storeId: 'kettle' })], first, today)).toMatchObject([{ storeId: 'kettle' }])
  })

  it('is at most twenty deals a day, the cheapest first, and less where some were told or the owner’s other watches told many', () => {
    const many = Array.from({ length: 30 }, (_, index) => sale({ storeId: `store ${index}`, priceMinor: 15000 - index }))
    const told = look(many, [], today)
    expect(told.map(({ priceMinor }) => priceMinor)).toEqual(Array.from({ length: 20 }, (_, index) => 14971 + index))
    expect([roomLeft(0, 0), roomLeft(12, 12), roomLeft(12, 95), roomLeft(20, 20), roomLeft(3, 130)]).toEqual([20, 8, 5, 0, 0])
  })
})
