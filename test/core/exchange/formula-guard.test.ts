import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { guardText, rawText, unguardText } from '../../../core/exchange/formula-guard.ts'
import { plainNumber, writeCell } from '../../../core/exchange/write-cell.ts'

/** OWASP, CSV Injection: the signs that begin a formula, and their wide forms. */
const SIGNS = ['=', '+', '-', '@', '\t', '\r', '\uFF1D', '\uFF0B', '\uFF0D', '\uFF20']
/** Text that is mostly made of what matters here. */
const tricky = fc.oneof(
  fc.string({ unit: fc.constantFrom("'", '"', ' ', '=', '+', '-', '@', '\t', '\r', '\uFF1D', 'a', '1', ',', ';', '\n'), maxLength: 8 }),
  fc.string({ unit: 'binary', maxLength: 12 }),
)

describe('text in a cell', () => {
  it.each(SIGNS)('that begins with %j gets an apostrophe', (sign) => {
    expect(guardText(`${sign}cmd|' /C calc'!A0`).startsWith("'")).toBe(true)
    expect(guardText(`"${sign}1`).startsWith("'")).toBe(true)
    expect(guardText(` ${sign}1`).startsWith("'")).toBe(true)
  })

  it('that begins with nothing of the kind stays as it is', () => {
    for (const text of ['Torvane 150 W', "'t Zand", 'a=b', '3-2', '']) expect(guardText(text)).toBe(text)
  })

  it('comes back as it was, guarded or raw', () => {
    fc.assert(
      fc.property(tricky, (text) => {
        expect(unguardText(guardText(text))).toBe(text)
        expect(unguardText(rawText(text))).toBe(text)
      }),
      { numRuns: 5_000 },
    )
  })

  it('never begins a formula once it is guarded', () => {
    fc.assert(fc.property(tricky, (text) => !SIGNS.includes(guardText(text).replace(/^[\s"]+/, '')[0] ?? '')))
  })

  it('begins none behind what some take for the end of a cell or a row either', () => {
    for (const text of ['x;=1+1', 'a\n=1+1', 'a;b;="x"', 'a\t@sum', "a;'=1"]) {
      expect(
        guardText(text)
          .split(/[;\t\r\n]/)
          .slice(1)
          .filter((piece) => /^["\s]*[=+@-]/.test(piece)),
      ).toEqual([])
      expect(unguardText(guardText(text))).toBe(text)
    }
  })

  it('is raw as it is, but for one that looks guarded already', () => {
    expect(rawText('=1+1')).toBe('=1+1')
    expect(rawText("'=1+1")).toBe("''=1+1")
  })
})

describe('a number in a cell', () => {
  it('stays a number, below nought too, and has no exponent', () => {
    expect(writeCell({ type: 'number' }, -4.5, 'safe')).toBe('-4.5')
    expect(plainNumber(1e-7)).toBe('0.0000001')
  })
  it('is read back as the same number', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => Math.abs(Number(plainNumber(value)) - value) <= 1e-20),
    )
  })
})
