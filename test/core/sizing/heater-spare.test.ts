import { expect, it } from 'vitest'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { findingOf, group, one } from './sample-build.ts'

it('is content with a single heater where the room is warm enough by itself', () => {
  const found = findingOf('heater_spare', { heaters: [one('Torvane', { powerW: 100 })] }, { coldestRoomC: 24, warmestRoomC: 27 })
  expect(found.verdict).toBe('fits')
})

it('finds a single heater marginal in a cold room, with the hours it leaves', () => {
  const found = findingOf('heater_spare', { heaters: [one('Torvane', { powerW: 200 })] })
  expect(found.verdict).toBe('marginal')
  expect(sayPhrase(found.reason, METRIC)).toMatch(
    /one heater and no spare.*After \d+ h it is below 21\.0 °C, the least that these animals bear/,
  )
})

it('holds with the weaker of two', () => {
  const two = findingOf('heater_spare', { heaters: [one('Torvane', { powerW: 150 }), one('Torvane', { powerW: 125 })] })
  const weaker = findingOf('heater_spare', { heaters: [one('Torvane', { powerW: 300 }), one('Torvane', { powerW: 125 })] })
  expect(two.verdict).toBe('fits')
  expect(two.value).toEqual(weaker.value)
})

it('offers powers of which one alone holds the animals', () => {
  for (const room of [{ coldestRoomC: 18 }, { coldestRoomC: 10, warmestRoomC: 11 }]) {
    const want = findingOf('heater_spare', { heaters: [one('Torvane', { powerW: 200 })] }, room).action?.want
    for (const powerW of [want?.minimum.powerW ?? 0, want?.maximum?.powerW ?? 0])
      expect(findingOf('heater_spare', { heaters: [one('Torvane', { powerW }, want?.quantity)] }, room).verdict).toBe('fits')
  }
})

it('is never worse than marginal: a spare is a precaution', () => {
  const found = findingOf(
    'heater_spare',
    { heaters: [one('Torvane', { powerW: 50 }, 2)] },
    { coldestRoomC: 5, livestock: group('warm-cichlids') },
  )
  expect(found.verdict).toBe('marginal')
  expect(found.margin?.value).toBeLessThan(0)
})
