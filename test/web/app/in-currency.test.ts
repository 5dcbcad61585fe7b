import { expect, it } from 'vitest'
import { spellUnitPrice } from '../../../core/unit-price.ts'
import { inCurrency } from '../../../web/app/settings/in-currency.ts'

it.each(['EUR', 'JPY', 'KWD', 'E'])('keeps the figure of the price of a kilowatt hour when the currency becomes %s', (next) => {
  const changed = inCurrency({ currency: 'USD', energyPriceMinor: 17.34 }, next)
  expect(changed.currency).toBe(next)
  expect(spellUnitPrice(changed.energyPriceMinor, next, { decimal: '.' })).toMatch(/^0\.173/)
})

it('comes back to the same price', () => {
  expect(inCurrency(inCurrency({ currency: 'USD', energyPriceMinor: 17.34 }, 'JPY'), 'USD').energyPriceMinor).toBe(17.34)
})

it('keeps the figure of the saving worth waiting for, in whole coins', () => {
  expect(inCurrency({ currency: 'USD', energyPriceMinor: 17, leastSavingMinor: 500 }, 'KWD').leastSavingMinor).toBe(5000)
  expect(inCurrency({ currency: 'USD', energyPriceMinor: 17, leastSavingMinor: 550 }, 'JPY').leastSavingMinor).toBe(6)
})
