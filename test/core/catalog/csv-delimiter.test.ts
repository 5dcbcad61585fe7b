import { describe, expect, it } from 'vitest'
import { delimiterFault, sniffDelimiter } from '../../../core/catalog/csv-delimiter.ts'

describe('the separator of a file', () => {
  it.each([
    ['name,maker,powerW', ','],
    ['name;maker;powerW', ';'],
    ['name\tmaker\tpowerW', '\t'],
    ['"a,b,c,d";maker', ';'],
    ['"she said ""x,y,z""";maker', ';'],
    ['name', null],
  ])('of %j is %j', (line, expected) => {
    expect(sniffDelimiter(line)).toBe(expected)
  })

  it('is named where a heading was read as one column', () => {
    expect(delimiterFault(['name;maker;powerW'])).toBe("The file seems to use ';' between columns. Save it with commas.")
    expect(delimiterFault(['name\tpowerW'])).toBe('The file seems to use a tab between columns. Save it with commas.')
    expect(delimiterFault(['name'])).toBeNull()
    expect(delimiterFault(['name', 'maker;x'])).toBeNull()
  })
})
