import { describe, expect, it } from 'vitest'
import { ratingsIn, sayPower, sayUnsold } from '../../../core/sizing/heater-ratings.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'

const from = (eachLowestW: number, eachHighestW: number, count = 2) => ({ count, eachLowestW, eachHighestW })
const said = (lowW: number, highW: number, count?: number) =>
  sayPhrase([...sayPower(from(lowW, highW, count)), ...sayUnsold(from(lowW, highW, count))], METRIC)

/** What is sold: 25, 50, 75, 100, 150, 200, 250 and 300 W, common practice. */
describe('a range of heater powers', () => {
  it.each([
    [25, 25, [25]],
    [26, 49, []],
    [95, 160, [100, 150]],
    [25, 300, [25, 50, 75, 100, 150, 200, 250, 300]],
    [301, 900, []],
  ])('of %s to %s W holds those that are sold, both ends included', (low, high, sold) => expect(ratingsIn(from(low, high))).toEqual(sold))

  it.each([
    [95, 125, '100 W'],
    [70, 105, '75 W or 100 W'],
    [45, 110, '50 W to 100 W'],
  ])('of %s to %s W is told by what is sold of it: %s', (low, high, words) => expect(said(low, high)).toBe(words))

  it('of which none is sold is told as such, with what to take in its place', () => {
    expect(said(35, 40, 3)).toBe(
      '35 W to 40 W None of that power is commonly sold: 3 of 50 W would do with an external controller against one that sticks on.',
    )
    expect(said(40, 40, 1)).toMatch(/^40 W None of that power is commonly sold: one of 50 W would do/)
  })

  it('is not told of a controller again where one is told of', () =>
    expect(sayPhrase(sayUnsold(from(35, 40), true), METRIC)).toBe(' None of that power is commonly sold.'))

  it('beyond all that is sold names no other', () => expect(said(305, 400)).toBe('305 W to 400 W None of that power is commonly sold.'))
})
