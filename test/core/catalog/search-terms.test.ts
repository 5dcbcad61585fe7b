import { describe, expect, it } from 'vitest'
import { foldText, namedSize, searchTerms } from '../../../core/catalog/search-terms.ts'

const texts = (typed: string): string[] => searchTerms(typed).map(({ text }) => text)
const sizeOf = (typed: string): string | undefined => namedSize(searchTerms(typed))?.size.id

describe('search terms', () => {
  it('are the words without case and accents, a figure and its unit as one', () => {
    expect(texts('Crème  HEATER 100 W')).toEqual(['creme', 'heater', '100w'])
    expect(texts('100w')).toEqual(['100w'])
    expect(texts('36" rimless')).toEqual(['36in', 'rimless'])
    expect(texts('  ')).toEqual([])
  })

  it('know a side from a power and from a barcode', () => {
    const of = (typed: string) => searchTerms(typed)[0]
    expect(of('90 cm')).toMatchObject({ side: '90', isNumber: false, parts: ['90', 'cm'] })
    expect(of('36')).toMatchObject({ side: '36', isNumber: false })
    expect(of('100 w')).toMatchObject({ side: null, isNumber: false })
    expect(of('2000000000015')).toMatchObject({ side: null, isNumber: true })
  })

  it('fold what people leave out: accents, joined letters, strokes', () => {
    expect(foldText('Łódź Bœuf STRASSE Straße Ærø')).toBe('lodz boeuf strasse strasse aero')
  })
})

describe('a size of the trade', () => {
  // Names of sizes: common practice, core/catalog/common-sizes.ts.
  it('is known by its name, a slip forgiven, among other words', () => {
    expect(sizeOf('20 long')).toBe('us-20-long')
    expect(sizeOf('rimless 20 longg')).toBe('us-20-long')
    expect(sizeOf('40 breder rimless')).toBe('us-40-breeder')
    expect(sizeOf('75 gal')).toBe('us-75')
    expect(sizeOf('90cm')).toBe('cm-90')
    expect(sizeOf('30 cm cube')).toBe('cm-30-cube')
  })

  it('is not read into another figure or into no figure', () => {
    expect(sizeOf('21 long')).toBeUndefined()
    expect(sizeOf('long')).toBeUndefined()
    expect(sizeOf('heater 100 w')).toBeUndefined()
  })
})
