import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { currencyExponent, divideRounded, MOST_MINOR, parseMoney, sayMoney, sayWholeMoney, taxOn, taxWithin } from '../../core/money.ts'

const value = (text: string, currency = 'USD'): number | string => {
  const read = parseMoney(text, currency)
  return read.ok ? read.value : read.refusal.code
}

describe('money', () => {
  it('keeps the decimals of ISO 4217 where the runtime does not', () => {
    // ISO 4217 list one: minor units.
    expect(['USD', 'JPY', 'KWD', 'HUF', 'IDR', 'COP'].map(currencyExponent)).toEqual([2, 0, 3, 2, 2, 2])
  })

  // Own arithmetic; the decimals are those of ISO 4217.
  it.each([
    [110_760, 'USD', '$1,108'],
    [110_649, 'USD', '$1,106'],
    [4_321, 'JPY', '¥4,321'],
    [12_500, 'KWD', 'KWD 13'],
    [0, 'EUR', '€0'],
  ])('says %i of %s in whole units, whatever its decimals', (minor, currency, words) => expect(sayWholeMoney(minor, currency)).toBe(words))

  it('groups thousands and writes the minus as U+2212', () => {
    expect(sayMoney(110703, 'USD')).toBe('$1,107.03')
    expect(sayMoney(-550, 'USD')).toBe('\u2212$5.50')
    expect(sayMoney(7, 'USD', { symbol: false })).toBe('0.07')
    expect(sayMoney(123456, 'JPY')).toBe('¥123,456')
  })

  it.each([
    ['159', 15900],
    ['$1,107.03', 110703],
    ['1.107,03', 110703],
    ['159,5', 15950],
    ['1,234,567', 123456700],
    ['0.10', 10],
  ])('reads %s', (text, minor) => expect(value(text)).toBe(minor))

  it.each([
    ['12a', 'not_a_price'],
    ['', 'not_a_price'],
    ['1,234', 'ambiguous'],
    ['2.000', 'ambiguous'],
    ['1.500', 'ambiguous'],
    ['1.9999', 'too_many_decimals'],
    ['99999999999', 'too_large'],
    ['1,2,3', 'ambiguous'],
  ])('refuses %s with a reason', (text, code) => expect(value(text)).toBe(code))

  // Own: screens and paper group with the sign that is not the reader's decimal one.
  it('reads the sign that is not the decimal one, before exactly three digits, as a sign of thousands', () => {
    const read = (text: string) => parseMoney(text, 'USD', '.')
    for (const [text, minor] of [
      ['2,500', 250_000],
      ['$1,234', 123_400],
      ['123,456', 12_345_600],
    ] as const)
      expect(read(text), text).toEqual({ ok: true, value: minor })
    expect(parseMoney('2.500', 'EUR', ',')).toEqual({ ok: true, value: 250_000 })
    for (const text of ['2.500', '0,500', '1234,500']) expect(read(text), text).toMatchObject({ ok: false, refusal: { code: 'ambiguous' } })
  })

  it('takes three digits after a separator where the currency leaves one reading', () => {
    expect(value('1,234', 'JPY')).toBe(1234)
    expect(value('1.234', 'KWD')).toBe(1234)
    expect(value('1,234', 'KWD')).toBe('ambiguous')
  })

  it('reads back every amount it writes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: MOST_MINOR }), fc.constantFrom('USD', 'JPY', 'KWD', 'EUR'), (minor, currency) => {
        const text = sayMoney(minor, currency)
        const read = parseMoney(text, currency)
        return read.ok && read.value === minor
      }),
    )
  })

  it('rounds tax half away from zero, once', () => {
    expect(taxOn(101135, 600)).toBe(6068)
    expect(divideRounded(25, 10)).toBe(3)
    expect(divideRounded(-25, 10)).toBe(-3)
    expect(taxWithin(10600, 600)).toBe(600)
  })

  // By hand: 100.00 x 0.08875 = 8.875, 40.00 x 0.08875 = 3.55, 1.99 x 0.08875 = 0.1766; own arithmetic with a rate of three decimals.
  it.each([
    [10_000, 888],
    [4_000, 355],
    [199, 18],
    [-4_000, -355],
  ])('puts 8.875 %% on %i', (net, tax) => expect(taxOn(net, 887.5)).toBe(tax))

  it('takes 8.875 % out of what contains it, and half of the last unit goes up', () => {
    // 108.875 / 1.08875 = 100, so 8.875 of it is tax; in minor units of a currency with three decimals.
    expect(taxWithin(108_875, 887.5)).toBe(8_875)
    // 20.00 x 0.08875 = 1.775: exactly between 1.77 and 1.78.
    expect(taxOn(2_000, 887.5)).toBe(178)
  })

  it('is exact for the largest amount at the highest rate', () => {
    expect(taxOn(MOST_MINOR, 3000)).toBe(300_000_000)
    expect(taxWithin(1_300_000_000, 3000)).toBe(300_000_000)
    // 9 999 999.99 x 0.29999 = 2 999 899.997 0001, in whole cents 2 999 900.00.
    expect(taxOn(999_999_999, 2999.9)).toBe(299_990_000)
  })

  it('finds the same tax inside an amount as was put on it, within one unit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 50_000_000 }), fc.integer({ min: 0, max: 3000 }), (net, rate) => {
        const tax = taxOn(net, rate)
        return Math.abs(taxWithin(net + tax, rate) - tax) <= 1
      }),
    )
  })
})
