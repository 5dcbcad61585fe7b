import { expect, it } from 'vitest'
import { listedPrice } from '../../../core/pricing/listed-price.ts'
import { sayListed } from '../../../web/app/prices/listed-words.ts'

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
