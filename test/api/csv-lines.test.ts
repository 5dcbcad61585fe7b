import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { csvLines } from '../../api/exchange/csv-lines.ts'

/** Any line end ends a row for it, as for most programs that read CSV. */
const readStrictly = (text: string): string[][] => parse(text, { record_delimiter: ['\r\n', '\n', '\r'], relax_column_count: true })
const cell = fc.string({ unit: fc.constantFrom('a', '=', '1', ' ', '"', ',', ';', '\t', '\r', '\n', 'é'), maxLength: 8 })

describe('rows of CSV', () => {
  it('keep a line end inside its cell, whichever it is', () => {
    for (const end of ['\n', '\r', '\r\n']) expect(csvLines([['one', `aisle 3${end}=1+1`, 'two']])).toBe(`one,"aisle 3${end}=1+1",two\r\n`)
  })
  it('are read as they were by a reader of the standard', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.constant('x'), cell, cell), { minLength: 1, maxLength: 5 }), (rows) => {
        expect(readStrictly(csvLines(rows))).toEqual(rows)
      }),
      { numRuns: 2_000 },
    )
  })
})
