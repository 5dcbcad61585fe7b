import { describe, expect, it } from 'vitest'
import { priceViews } from '../../../core/pricing/price-views.ts'
import { judgePrice, type StandingInput } from '../../../core/pricing/standing.ts'
import { aSighting, aStore } from './a-sighting.ts'

const asOf = '2026-10-20'
const sightings = [
  aSighting({ storeId: 'saltcote', priceMinor: 19_500, seenOn: '2026-10-03' }),
  aSighting({ storeId: 'upriver', priceMinor: 18_999, seenOn: '2026-09-22' }),
  aSighting({ storeId: 'upriver', condition: 'sale', priceMinor: 15_199, seenOn: '2026-10-16', lastDay: '2026-10-25' }),
]
const stores = [
  aStore({ id: 'saltcote', name: 'Saltcote' }),
  aStore({ id: 'upriver', name: 'Upriver' }),
  aStore({ id: 'kettle', name: 'Kettle Lane' }),
]
const judge = (fields: Partial<StandingInput> = {}) =>
  judgePrice({
    priceMinor: 15_900,
    condition: 'sale',
    printedRegularMinor: null,
    storeId: 'saltcote',
    views: priceViews(sightings, asOf),
    stores,
    currency: 'USD',
    asOf,
    ...fields,
  })

describe('how good a price is', () => {
  it('is told against the shelf price here and the lowest elsewhere', () => {
    expect(judge()).toEqual({
      word: 'good',
      title: 'A good price',
      words: '$36.00 under the shelf price here, $195.00. Less today at Upriver: $151.99 to Oct 25.',
      marks: [
        { label: 'lowest', priceMinor: 15_199 },
        { label: 'regular', priceMinor: 19_500 },
      ],
      lowerToday: { storeId: 'upriver', storeName: 'Upriver', priceMinor: 15_199, holdsUntil: '2026-10-25' },
    })
  })

  it('calls no price usual where no regular price is known', () => {
    expect(judge({ storeId: 'kettle', priceMinor: 95_000 })).toMatchObject({ word: 'first', title: 'The first price here' })
    expect(judge({ storeId: 'kettle', priceMinor: 15_000 }).word).toBe('lowest')
  })

  it.each([
    [15_199, 'lowest'],
    [15_200, 'good'],
    [18_525, 'good'],
    [18_526, 'usual'],
    [19_890, 'usual'],
    [19_891, 'high'],
  ])('%s is %s', (priceMinor, word) => {
    expect(judge({ priceMinor }).word).toBe(word)
  })

  it('is the first where nothing is known, and says so', () => {
    expect(judge({ views: [] })).toMatchObject({ word: 'first', words: 'No regular price is known here yet.', marks: [], lowerToday: null })
  })

  it('takes the regular price on the tag where none is known here', () => {
    expect(judge({ storeId: 'kettle', printedRegularMinor: 20_000 }).word).toBe('good')
  })

  it('compares with tax and says what is printed', () => {
    const taxed = stores.map((store) => (store.id === 'upriver' ? { ...store, taxBasisPoints: 1000 } : store))
    // 151.99 + 10 % is 167.19, more than 159.00 without tax.
    expect(judge({ stores: taxed }).lowerToday).toBeNull()
    expect(judge({ stores: taxed }).word).toBe('lowest')
  })

  it('does not hold used goods against new ones', () => {
    expect(judge({ condition: 'used', priceMinor: 5000 }).word).toBe('used')
  })
})
