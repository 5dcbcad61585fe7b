import { fc, test as property } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import { nearWords, slipsBetween, slipsForgiven } from '../../../core/catalog/near-words.ts'

describe('slips between two words', () => {
  // The four classic slips, after Damerau (1964): a wrong, a missing, an extra letter, two neighbours swapped.
  it.each([
    ['heatar', 'heater', 1],
    ['heter', 'heater', 1],
    ['heaterr', 'heater', 1],
    ['cansiter', 'canister', 1],
    ['thermomter', 'thermometer', 1],
    ['snad', 'sand', 1],
    ['termomter', 'thermometer', 2],
    ['heater', 'heater', 0],
  ])('%s and %s are %d apart', (typed, word, slips) => {
    expect(slipsBetween(typed, word)).toBe(slips)
  })

  it('are counted to a start of the word while somebody types, half a slip dearer', () => {
    expect(slipsBetween('hete', 'heater')).toBe(1.5)
    expect(slipsBetween('thermo', 'thermometer')).toBe(0.5)
  })

  it('never make one figure of another', () => {
    expect(slipsBetween('c-1800', 'c-1200')).toBe(Infinity)
    expect(slipsBetween('100w', '150w')).toBe(Infinity)
    expect(slipsBetween('c1800', 'c-1800')).toBe(1)
  })

  property.prop([fc.stringMatching(/^[a-z]{4,12}$/), fc.nat(), fc.constantFrom('drop', 'double', 'swap')])(
    'are one at most where one letter is dropped, doubled or swapped with the next',
    (word, place, slip) => {
      const at = place % (word.length - 1)
      const [head, one, two, tail] = [word.slice(0, at), word[at] ?? '', word[at + 1] ?? '', word.slice(at + 2)]
      const typed = slip === 'drop' ? head + two + tail : slip === 'double' ? head + one + one + two + tail : head + two + one + tail
      expect(slipsBetween(typed, word)).toBeLessThanOrEqual(1)
    },
  )
})

describe('near words', () => {
  it('are found nearest first, none for a word too short to tell', () => {
    expect(nearWords('filtr', ['filter', 'fitting', 'filters']).map(({ word }) => word)).toEqual(['filter', 'filters'])
    expect(nearWords('lid', ['led', 'lit'])).toEqual([])
  })

  it('forgive one slip from four letters on, two from eight', () => {
    expect(['lid', 'sand', 'heaters', 'canister'].map(slipsForgiven)).toEqual([0, 1, 1, 2])
  })
})
