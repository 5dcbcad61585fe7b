import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { paperFonts } from '../../../api/pdf/fonts.ts'
import { coveredByAll } from '../../../api/pdf/glyph-coverage.ts'
import { printable, printableTree, UNCOVERED } from '../../../api/pdf/printable.ts'
import { qrSvg } from '../../../api/pdf/qr-code.ts'
import { rangeWords } from '../../../api/pdf/findings-on-paper.ts'

const covered = coveredByAll(paperFonts())

describe('glyphs of our fonts', () => {
  // By the makers' own tables of the two families: Latin with its signs is there; no Hebrew, no emoji, no geometric shapes.
  it.each(['A', 'é', 'ß', '×', '°', 'µ', '²', '−', '’', '½', '€'])('has %s', (sign) => expect(covered.has(sign.codePointAt(0)!)).toBe(true))
  it.each(['א', '水', '\u{1f41f}', UNCOVERED])('does not have %s', (sign) => expect(covered.has(sign.codePointAt(0)!)).toBe(false))
})

describe('printable text', () => {
  it('puts a square for what no font covers', () => expect(printable('Ines \u{1f41f}', covered)).toBe(`Ines ${UNCOVERED}`))
  it('takes control and direction marks away', () => expect(printable('a\u0000\u202eb\u200dc\u00ad', covered)).toBe('abc'))
  it('turns line ends into spaces', () => expect(printable('a\r\nb\tc', covered)).toBe('a b c'))
  it('mends half a surrogate', () => expect(printable('x\ud83dy', covered)).toBe(`x${UNCOVERED}y`))
  it('composes accents, so that a decomposed one is covered', () => expect(printable('e\u0301', covered)).toBe('é'))
  it('leaves runs of 17 alone and breaks those of 18', () => {
    expect(printable('x'.repeat(17), covered)).toBe('x'.repeat(17))
    expect(printable('x'.repeat(18), covered)).toBe(`${'x'.repeat(9)}\u200b${'x'.repeat(9)}`)
  })
  it('keeps a figure and its unit on one line', () => {
    expect(printable('from 64 °F, 12 in and 6 % of it', covered)).toBe('from 64\u00a0°F, 12\u00a0in and 6\u00a0% of it')
    expect(printable('25 kg of pull (250 N), 8.5 fl oz (250 mL)', covered)).toBe(
      '25\u00a0kg of pull (250\u00a0N), 8.5\u00a0fl oz (250\u00a0mL)',
    )
    expect(printable('2 heaters, 1 insert', covered)).toBe('2 heaters, 1 insert')
  })
  it('changes every text of a tree and keeps its shape', () => {
    expect(printableTree({ a: ['\u0000b', 1, null, true], c: { d: '\u{1f41f}' } }, covered)).toEqual({
      a: ['b', 1, null, true],
      c: { d: UNCOVERED },
    })
  })

  it('never lets an uncovered sign or a long run through, whatever comes in', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        const out = printable(text, covered)
        expect(Array.from(out).every((sign) => sign === UNCOVERED || sign === '\u200b' || covered.has(sign.codePointAt(0)!))).toBe(true)
        expect(out.split(/[\s\u200b]/).every((run) => Array.from(run).length < 18)).toBe(true)
      }),
    )
  })
})

describe('a QR code', () => {
  // ISO/IEC 18004: a finder pattern of 7 × 7 modules in three corners; the smallest code has 21 × 21.
  it('has its three finder patterns', () => {
    const svg = qrSvg('https://tarnwick.example/q/abc')
    const size = Number(/viewBox="0 0 (\d+)/.exec(svg)?.[1])
    expect((size - 17) % 4).toBe(0)
    const dark = new Set([...svg.matchAll(/M(\d+) (\d+)h1/g)].map((match) => `${match[1]},${match[2]}`))
    for (const [left, top] of [
      [0, 0],
      [size - 7, 0],
      [0, size - 7],
    ] as const) {
      for (let index = 0; index < 7; index += 1) {
        for (const [x, y] of [
          [index, 0],
          [index, 6],
          [0, index],
          [6, index],
        ] as const)
          expect(dark.has(`${left + x},${top + y}`)).toBe(true)
      }
      expect(dark.has(`${left + 3},${top + 3}`)).toBe(true)
      expect(dark.has(`${left + 1},${top + 1}`)).toBe(false)
    }
  })
})

describe('a range in words', () => {
  it('says its unit once', () => expect(rangeWords('4 times an hour', '10 times an hour')).toBe('4 to 10 times an hour'))
  it('keeps two units that differ', () => expect(rangeWords('9 mm', '12 cm')).toBe('9 mm to 12 cm'))
  it('takes figures without a unit', () => expect(rangeWords('0.5', '1.0')).toBe('0.5 to 1.0'))
})
