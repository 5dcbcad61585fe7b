import { describe, expect, it } from 'vitest'
import { bareGtin, gtinCheckDigit, isGtin } from '../../../core/catalog/gtin.ts'

describe('the check digit of a trade item number', () => {
  // The digits alone, with who worked them out, are in test/reference/values/chemistry.ts.
  it.each(['6291041500213', '7300011000017', '5012345678900', '036000291452', '96385074', '10614141000415'])(
    'of %s is its last',
    (full) => {
      expect(isGtin(full)).toBe(true)
      expect(gtinCheckDigit(full.slice(0, -1))).toBe(Number(full.at(-1)))
    },
  )

  it('is not changed by padding to 14 digits', () => {
    expect(isGtin('036000291452'.padStart(14, '0'))).toBe(true)
  })

  it('catches every single wrong digit', () => {
    const right = '6291041500213'
    for (let at = 0; at < right.length; at += 1) {
      for (let digit = 0; digit < 10; digit += 1) {
        if (String(digit) !== right[at]) expect(isGtin(`${right.slice(0, at)}${digit}${right.slice(at + 1)}`)).toBe(false)
      }
    }
  })

  it.each(['', '6291041500214', '629104150021', 'x291041500213', '12345', '6.29104E+12'])('refuses "%s"', (text) => {
    expect(isGtin(text)).toBe(false)
  })

  it('is read through the spaces and hyphens of a label', () => {
    expect(bareGtin(' 6 291041-500213 ')).toBe('6291041500213')
  })
})
