import { describe, expect, it } from 'vitest'
import { parseUnitPrice, sayUnitPrice, spellUnitPrice } from '../../core/unit-price.ts'

const POINT = { decimal: '.' } as const
const COMMA = { decimal: ',' } as const

describe('the price of a kilowatt hour', () => {
  it.each([
    ['0.1734', 'USD', 17.34],
    ['$0.1734', 'USD', 17.34],
    ['0.17', 'USD', 17],
    ['0.175', 'USD', 17.5],
    ['0,3021', 'EUR', 30.21],
    ['0.03418', 'KWD', 34.18],
    ['31', 'JPY', 31],
    ['31.27', 'JPY', 31.27],
  ])('reads %s in %s', (text, currency, minor) => {
    expect(parseUnitPrice(text, currency, POINT)).toEqual({ ok: true, value: minor })
  })

  it.each([
    [17.34, 'USD', '$0.1734'],
    [17, 'USD', '$0.17'],
    [17.5, 'USD', '$0.175'],
    [0, 'USD', '$0.00'],
    [31.27, 'JPY', '¥31.27'],
    [34.18, 'KWD', 'KWD 0.03418'],
  ])('says %s minor units of %s as it is printed on a bill', (minor, currency, words) => expect(sayUnitPrice(minor, currency)).toBe(words))

  it('is spelled with the reader’s decimal sign and read back the same', () => {
    expect(spellUnitPrice(17.34, 'EUR', COMMA)).toBe('0,1734')
    expect(parseUnitPrice('0,1734', 'EUR', COMMA)).toEqual({ ok: true, value: 17.34 })
    expect(parseUnitPrice('1,234', 'EUR', COMMA)).toEqual({ ok: true, value: 123.4 })
  })

  it.each([
    ['1,234', 'can be read two ways'],
    ['-0.17', 'is below 0'],
    ['seventeen', 'is not a price'],
    ['0.1.7', 'is not a price'],
    ['0.173456', 'At most 5 decimals, like 0.1734.'],
  ])('refuses %s in words', (text, words) => {
    const read = parseUnitPrice(text, 'USD', POINT)
    expect(read.ok ? '' : read.refusal.words).toContain(words)
  })
})
