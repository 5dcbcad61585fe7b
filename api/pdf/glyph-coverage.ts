/**
 * Glyphs of a TrueType font by code point, read from its cmap (format 4, the basic plane).
 *
 * Errors: throws for a font without such a table: a font of ours that lost it would print boxes in silence.
 * Source: OpenType specification, "cmap", format 4.
 */
export function glyphsOf(font: Buffer): Map<number, number> {
  const subtable = unicodeSubtable(font)
  const segments = font.readUInt16BE(subtable + 6) / 2
  const endAt = subtable + 14
  const startAt = endAt + segments * 2 + 2
  const glyphs = new Map<number, number>()
  for (let segment = 0; segment < segments; segment += 1) {
    const end = font.readUInt16BE(endAt + segment * 2)
    const start = font.readUInt16BE(startAt + segment * 2)
    for (let code = start; code <= end && code !== 0xffff; code += 1) {
      const glyph = glyphAt(font, subtable, segments, segment, code)
      if (glyph !== 0) glyphs.set(code, glyph)
    }
  }
  return glyphs
}

function unicodeSubtable(font: Buffer): number {
  const cmap = tableAt(font, 'cmap')
  const count = font.readUInt16BE(cmap + 2)
  for (let index = 0; index < count; index += 1) {
    const subtable = cmap + font.readUInt32BE(cmap + 4 + index * 8 + 4)
    if (font.readUInt16BE(subtable) === 4) return subtable
  }
  throw new Error('The font has no character map of format 4')
}

/** Where a table of the font begins. Source: OpenType specification, "Organization of an OpenType font". */
export function tableAt(font: Buffer, tag: string): number {
  const tables = font.readUInt16BE(4)
  for (let table = 0; table < tables; table += 1) {
    const at = 12 + table * 16
    if (font.toString('latin1', at, at + 4) === tag) return font.readUInt32BE(at + 8)
  }
  throw new Error(`The font has no table ${tag}`)
}

function glyphAt(font: Buffer, subtable: number, segments: number, segment: number, code: number): number {
  const startAt = subtable + 16 + segments * 2
  const deltaAt = startAt + segments * 2
  const offsetAt = deltaAt + segments * 2
  const start = font.readUInt16BE(startAt + segment * 2)
  const delta = font.readUInt16BE(deltaAt + segment * 2)
  const offset = font.readUInt16BE(offsetAt + segment * 2)
  if (offset === 0) return (code + delta) & 0xffff
  const glyph = font.readUInt16BE(offsetAt + segment * 2 + offset + (code - start) * 2)
  return glyph === 0 ? 0 : (glyph + delta) & 0xffff
}

/** What every one of the fonts covers. */
export function coveredByAll(fonts: readonly Buffer[]): Set<number> {
  const [first, ...others] = fonts.map(glyphsOf)
  return new Set([...(first?.keys() ?? [])].filter((code) => others.every((each) => each.has(code))))
}
