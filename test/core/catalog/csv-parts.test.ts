import { describe, expect, it } from 'vitest'
import { readParts } from '../../../core/catalog/csv-parts.ts'

const parts = (cell: string) => {
  const read = readParts(cell)
  return read.ok ? read.value.map(({ product, quantity }) => `${quantity} of ${product}`) : read.refusal.code
}

describe('the parts of a kit in a cell', () => {
  it.each([
    ['Torvane 150 W x 2; Pellick C-1800', ['2 of Torvane 150 W', '1 of Pellick C-1800']],
    ['Torvane 150 W × 2 ;', ['2 of Torvane 150 W']],
    ['Torvane 150 W X2', ['2 of Torvane 150 W']],
    ['Halden 60 x 30 x 1', ['1 of Halden 60 x 30']],
    ['Stillwell Box', ['1 of Stillwell Box']],
    ['', 'empty'],
    [' ; ', 'empty'],
    ['Torvane 150 W x 0', 'bad_count'],
    ['Torvane 150 W x 100', 'bad_count'],
    ['Torvane 150 W; torvane 150 w x 2', 'repeated'],
  ])('%j is %j', (cell, expected) => {
    expect(parts(cell)).toEqual(expected)
  })

  it('are refused where one is longer than any, before it is searched for a count', () => {
    const started = performance.now()
    expect(parts(`Torvane${' '.repeat(60_000)}150 W`)).toBe('too_long')
    // Searched, 60 000 blanks take twenty seconds.
    expect(performance.now() - started).toBeLessThan(500)
    expect(parts(`${'n'.repeat(120)} x 2`)).toEqual([`2 of ${'n'.repeat(120)}`])
  })

  it('are at most forty, as on the kit’s own page', () => {
    const cell = (count: number) => Array.from({ length: count }, (_, index) => `Part ${index}`).join(';')
    expect(parts(cell(40))).toHaveLength(40)
    expect(parts(cell(41))).toBe('too_many')
  })
})
