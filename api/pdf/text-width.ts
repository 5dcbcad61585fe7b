import { glyphsOf, tableAt } from './glyph-coverage.ts'

/** How wide a text of one face is, in the unit its size is in. */
export type WidthOf = (text: string, size: number) => number

/** What a sign that the face lacks is drawn as, in em. */
const UNCOVERED_EM = 0.55

/** Kerning draws a line of words together by this much: measured over lines of the four faces, 0.3 to 0.5 %. */
const KERNED = 0.996

/**
 * Reads a face's advance widths. Kerning is taken as a share of the line and not pair by pair.
 *
 * Source: OpenType specification, "hmtx", "hhea" and "head".
 *
 * @example widthsOf(archivo)('Tank', 10) // 22.2
 */
export function widthsOf(font: Buffer): WidthOf {
  const unitsPerEm = font.readUInt16BE(tableAt(font, 'head') + 18)
  const measured = font.readUInt16BE(tableAt(font, 'hhea') + 34)
  const metrics = tableAt(font, 'hmtx')
  const advance = (glyph: number): number => font.readUInt16BE(metrics + Math.min(glyph, measured - 1) * 4) / unitsPerEm
  const ems = new Map([...glyphsOf(font)].map(([code, glyph]) => [code, advance(glyph)]))
  return (text, size) =>
    Array.from(text).reduce((sum, sign) => sum + (ems.get(sign.codePointAt(0) ?? 0) ?? UNCOVERED_EM), 0) * size * KERNED
}

/** Lines a text takes in a column, broken at spaces and where a long run was given room to break; at least one. */
export function linesOf(text: string, size: number, width: number, widthOf: WidthOf): number {
  const space = widthOf(' ', size)
  let lines = 1
  let used = 0
  for (const word of text.split(' ')) {
    for (const [index, piece] of word.split('\u200b').entries()) {
      const wide = widthOf(piece, size)
      const before = used === 0 || index > 0 ? 0 : space
      if (used > 0 && used + before + wide > width) {
        lines += 1
        used = wide
      } else used += before + wide
    }
  }
  return lines
}
