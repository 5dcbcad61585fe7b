import { describe, expect, it } from 'vitest'
import { listView, saleOn, type ListPrice } from '../../../core/pricing/price-list.ts'
import { StockItemInput } from '../../../core/pricing/schema.ts'

const price = (change: Partial<ListPrice> = {}): ListPrice => ({
  validFrom: '2026-11-01',
  priceMinor: 900,
  saleMinor: null,
  saleUntil: null,
  ...change,
})
const on = (prices: ListPrice[], day: string) => listView({ productId: 'p', prices }, 's', day)

describe('the own list on a day', () => {
  it('asks the sale price to the last day of the sale, and the price again after it; the full price stays the price', () => {
    const prices = [price({ saleMinor: 800, saleUntil: '2026-11-14' })]
    expect(on(prices, '2026-10-31')).toBeUndefined()
    expect(on(prices, '2026-11-14')).toMatchObject({
      regular: { priceMinor: 900, from: 'list' },
      today: { priceMinor: 800, condition: 'sale', holdsUntil: '2026-11-14', lastDayStated: true },
    })
    expect(on(prices, '2026-11-15')?.today).toMatchObject({ priceMinor: 900, condition: 'shelf', holdsUntil: null })
  })

  it('ends a sale without a last day where the next price begins', () => {
    const prices = [price({ saleMinor: 800 }), price({ validFrom: '2026-12-01', priceMinor: 950 })]
    expect(on(prices, '2026-11-30')?.today).toMatchObject({ priceMinor: 800, condition: 'sale', holdsUntil: null, lastDayStated: false })
    expect(on(prices, '2026-12-01')?.today).toMatchObject({ priceMinor: 950, condition: 'shelf' })
    expect(saleOn(price(), '2026-11-01')).toBeUndefined()
  })
})

describe('an entry of the list', () => {
  it('is taken as it was before there were sales', () => {
    const read = StockItemInput.parse({ prices: [{ validFrom: '2026-11-01', priceMinor: 900 }] })
    expect(read.prices).toEqual([price()])
  })

  it.each<[Partial<ListPrice>, string]>([
    [{ saleMinor: 900 }, 'saleMinor'],
    [{ saleUntil: '2026-11-02' }, 'saleMinor'],
    [{ saleMinor: 800, saleUntil: '2026-10-31' }, 'saleUntil'],
    [{ saleMinor: 800, saleUntil: '2027-11-03' }, 'saleUntil'],
    [{ saleMinor: 0 }, 'saleMinor'],
  ])('with %o is refused by its field', (change, field) => {
    const read = StockItemInput.safeParse({ prices: [price(change)] })
    expect(read.error?.issues.map(({ path }) => path.join('.'))).toEqual([`prices.0.${field}`])
  })
})
