/** Drawn by the template as a small empty square, since none of our fonts has the sign. */
export const UNCOVERED = '\u25a1'

/** Runs of 18 letters or more are given a place to break after every ninth, or a table cell would overflow. */
const PIECE = 9
/** A place to break that shows nothing; the template turns it into room to break, so that no copy of the text contains it. */
const BREAK = '\u200b'

/** A figure and its unit stay on one line. */
const BEFORE_UNIT = /(\d) (?=(?:°[CF]|%|in|ft|lb|gal|L|mL|kg|g|mg|mm|cm|m|W|V|A|N|h|min|lm|fl)(?![\p{L}\d]))/gu

/** Control and format characters (bidirectional overrides, joiners, soft hyphens) and variation selectors: nothing a reader sees. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Variation_Selector}]/gu

/**
 * Text from anyone, ready for paper: well-formed, without control characters, uncovered signs as a square, long runs breakable.
 *
 * @example printable('Ines \ud83d\udc1f', covered) // 'Ines □'
 */
export function printable(text: string, covered: ReadonlySet<number>): string {
  const seen = PLAIN.test(text) ? text : drawable(text, covered)
  const typeset = seen.replace(/(\p{L})'(?=\p{L})/gu, '$1\u2019')
  const joined = typeset.replace(BEFORE_UNIT, '$1\u00a0')
  return joined.replace(/[^\s\u00a0]{18,}/g, breakable)
}

/** Most texts: every font of ours has every sign of ASCII, so there is nothing to look up. */
const PLAIN = /^[ -~]*$/

function drawable(text: string, covered: ReadonlySet<number>): string {
  const seen = text
    .toWellFormed()
    .normalize('NFC')
    .replace(/[\t\n\r\u2028\u2029]+/g, ' ')
    .replace(UNSEEN, '')
  return Array.from(seen, (sign) => (covered.has(sign.codePointAt(0) ?? 0) ? sign : UNCOVERED)).join('')
}

const breakable = (run: string): string => (run.match(new RegExp(`.{1,${PIECE}}`, 'gu')) ?? [run]).join(BREAK)

/** Every text in a tree of plain data made printable; the shape stays. */
export function printableTree<T>(value: T, covered: ReadonlySet<number>): T {
  if (typeof value === 'string') return printable(value, covered) as T
  if (Array.isArray(value)) return value.map((each: unknown) => printableTree(each, covered)) as T
  if (value !== null && typeof value === 'object') {
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, printableTree(each as unknown, covered)])) as T
  }
  return value
}
