import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cutItems, JsonItemsError } from '../../../core/exchange/json-items.ts'

/** What comes of a text that arrives in parts of the given lengths. */
function cut(text: string, lengths: readonly number[] = []): unknown[] {
  const { feed, end } = cutItems()
  const items: string[] = []
  let at = 0
  for (const length of [...lengths, text.length]) {
    items.push(...feed(text.slice(at, at + length)))
    at += length
  }
  end()
  return items.map((item) => JSON.parse(item) as unknown)
}

describe('a JSON list that comes in parts', () => {
  it('gives the same items however it is cut', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.object({ maxDepth: 2 }).map((value) => JSON.parse(JSON.stringify(value)) as object),
          { maxLength: 6 },
        ),
        fc.array(fc.integer({ min: 1, max: 9 }), { maxLength: 60 }),
        fc.constantFrom('', ' ', '\n  '),
        (rows, lengths, space) => {
          expect(cut(space + JSON.stringify(rows, null, space) + space, lengths)).toEqual(rows)
        },
      ),
    )
  })

  it('is not confused by brackets, commas and quotation marks in text', () => {
    const rows = [{ a: '],[{"\\' }, { b: '"' }]
    expect(cut(JSON.stringify(rows), [3, 1, 1, 4])).toEqual(rows)
  })

  it('is read behind a byte order mark, and may be empty', () => {
    expect(cut('\uFEFF [ ]')).toEqual([])
  })

  it.each([
    ['{"a":1}', /no list of rows/],
    ['[{"a":1}', /ends before its list does/],
    ['[{"a":1},', /ends before its list does/],
    ['[{"a":1},]', /there is nothing/],
    ['[,{"a":1}]', /there is nothing/],
    ['[{}] and more', /no list of rows/],
    ['', /ends before its list does/],
  ])('%s is refused', (text, words) => {
    expect(() => cut(text)).toThrow(JsonItemsError)
    expect(() => cut(text)).toThrow(words)
  })
})
