import { describe, expect, it } from 'vitest'
import { sniffDelimiter } from '../../../core/catalog/csv-delimiter.ts'

describe('the separator of a file', () => {
  it.each([
    ['name,maker,powerW', ','],
    ['name;maker;powerW', ';'],
    ['name\tmaker\tpowerW', '\t'],
    ['"a,b,c,d";maker', ';'],
    ['"she said ""x,y,z""";maker', ';'],
    ['\uFEFFname;maker', ';'],
    ['\r\n\r\nname;maker', ';'],
    ['"two\nlines, and more, and more";maker', ';'],
    ['name;powerW\n1,2,3,4,5', ';'],
    ['name', ','],
    ['', ','],
    ['name|maker', ','],
  ])('of %j is %j', (text, expected) => {
    expect(sniffDelimiter(text)).toBe(expected)
  })

  it('is found at once in a file that never ends a quote', () => {
    const started = performance.now()
    expect(sniffDelimiter(`name;"${'a""'.repeat(1_000_000)}`)).toBe(';')
    expect(performance.now() - started).toBeLessThan(500)
  })
})
