import { expect, it } from 'vitest'
import { listedPrice, withoutCount } from '../../../core/pricing/listed-price.ts'
import { sayInStock, sayListed, sayStock } from '../../../web/app/prices/listed-words.ts'

const own = { id: 's', name: 'Brindle Aquatics' }
const price = { validFrom: '2026-11-01', priceMinor: 3990, saleMinor: 2990, saleUntil: '2026-12-05' }
const item = { productId: 'h', name: 'Heater', kind: 'heater', stockCount: 0, prices: [price] } as const

it('our own price is told as that of a sale while one runs, with what it is under, since when, and whether any is there', () => {
  const onSale = listedPrice({ ...item, prices: [price] }, own, '2026-11-26')
  expect(onSale && sayListed(onSale, 'USD', 2026)).toEqual({
    title: 'On sale here to Dec 5: $29.90',
    words: '$10.00 under our regular price, $39.90. In our price list from Nov 1. None in stock.',
  })
  const after = listedPrice({ ...item, stockCount: null, prices: [price] }, own, '2026-12-06')
  expect(after && sayListed(after, 'USD', 2026)).toEqual({ title: '$39.90, our regular price', words: 'In our price list from Nov 1.' })
  expect(listedPrice({ ...item, prices: [price] }, own, '2026-10-31')).toBeUndefined()
})

it('how many there are is told to whoever reads the list, to others only whether any are', () => {
  const of = (stockCount: number | null) =>
    listedPrice({ ...item, stockCount, prices: [price] }, own, '2026-11-26') ?? expect.fail('no price')
  const told = [of(4), withoutCount(of(4)), withoutCount(of(0)), withoutCount(of(null))]
  expect(told.map(sayStock)).toEqual(['4', 'yes', 'none', 'not counted'])
  expect(told.map(sayInStock)).toEqual(['4 in stock', 'in stock', 'none in stock', ''])
  expect(sayListed(withoutCount(of(4)), 'USD', 2026).words).toMatch(/from Nov 1\. In stock\.$/)
})
