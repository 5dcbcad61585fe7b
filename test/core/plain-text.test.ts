import { describe, expect, it } from 'vitest'
import { isVisible } from '../../core/plain-text.ts'
import { readCustomerRow } from '../../core/exchange/customer-rows.ts'
import { readProductRow } from '../../core/exchange/product-rows.ts'
import { optionalText, text } from '../../core/schema.ts'

/** Signs that a page shows as nothing, by their names in the Unicode Character Database. */
const UNSEEN = [
  ['zero width space', '\u200B'],
  ['zero width non-joiner', '\u200C'],
  ['zero width joiner', '\u200D'],
  ['word joiner', '\u2060'],
  ['Hangul filler', '\u3164'],
  ['Hangul choseong filler', '\u115F'],
  ['Hangul jungseong filler', '\u1160'],
  ['soft hyphen', '\u00AD'],
  ['Mongolian vowel separator', '\u180E'],
  ['zero width no-break space between others', '\u200B\uFEFF\u200B'],
  ['all of them with spaces', '\u200B \u2060\u3164 \u00AD'],
] as const

describe('text of which nothing is seen', () => {
  it.each(UNSEEN)('is refused where it must be filled in: %s', (_, unseen) => {
    expect(isVisible(unseen)).toBe(false)
    for (const schema of [text('Name', 1, 80), optionalText('Name', 80)])
      expect(schema.safeParse(unseen).error?.issues.map(({ message }) => message)).toEqual(['Name has no visible character. Fill it in.'])
    expect(text('Note', 0, 80).parse(unseen)).toBe(unseen)
  })

  it.each(UNSEEN)('is refused in a cell of a file: %s', (_, unseen) => {
    const said: string[] = []
    const report = (column: string | null, message: string): void => void said.push(`${column}: ${message}`)
    expect(readCustomerRow(new Map([['name', unseen]]), report)).toBeNull()
    expect(readProductRow(new Map([['name', unseen]]), 'heater', report)).toBeNull()
    expect(said).toEqual(Array(2).fill('name: Name has no visible character. Fill it in, or leave the cell empty.'))
  })

  it.each([
    ['a family of one sign', '\u{1F468}\u200D\u{1F469}\u200D\u{1F467}'],
    ['a non-joiner between letters', '\u0645\u06CC\u200C\u062E\u0648\u0627\u0647\u0645'],
    ['a joiner between letters', '\u0D28\u0D4D\u200D'],
    ['a soft hyphen in a word', 'aqua\u00ADrium'],
    ['a single letter', 'x'],
  ])('is none of these, which stay as they are: %s', (_, seen) => expect(text('Name', 1, 80).parse(seen)).toBe(seen))

  it('is empty where blanks are all of it', () => {
    expect(
      text('Name', 1, 80)
        .safeParse(' \uFEFF ')
        .error?.issues.map(({ message }) => message),
    ).toEqual(['Name is empty. Fill it in.'])
  })
})
