import { expect, it } from 'vitest'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'
import { figuresOf, told } from './told.ts'

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
  // What is told above is what the thermostat holds; the balance without the strongest is the weaker's own.
  const balanceC = (...powers: number[]) => reportOf({ heaters: powers.map((powerW) => one('Torvane', { powerW })) }).figures.oneFailedC
  expect(balanceC(300, 125)).toBe(balanceC(125, 150))
  expect(balanceC(150, 150)).toBeGreaterThan(balanceC(150, 125) ?? Infinity)
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

/**
 * Own, by a second program (bisection and midpoint rule over the same balance), of the lidded tank of 75 gallons in a room of 18 °C at the high-loss end:
 * 100 W hold 22.55 °C, 50 W 20.01 °C, none 17.45 °C; from 25 to 21 °C it takes 24.5 h with 50 W and 11.5 h with none.
 */
it('says what is left after one has failed, and after all have', () => {
  const of = (powerW: number, count: number) => findingOf('heater_spare', { heaters: [one('Torvane', { powerW }, count)] })
  const lost = 'With all heat lost, as in a power cut, it is as cold as they bear after 11 h.'
  expect(told(of(100, 2))).toEqual({
    verdict: 'fits',
    reason: `If the strongest heater fails in the coldest room, 18.0 °C, the water falls to 22.6 °C; the least that these animals bear is 21.0 °C. ${lost}`,
    action: null,
    assumed: [],
    missing: [],
  })
  expect(figuresOf(of(100, 2))).toMatchObject({ value: 22.6, low: 21, margin: 1.6 })
  expect(told(of(50, 2))).toMatchObject({
    verdict: 'marginal',
    reason: `If the strongest heater fails in the coldest room, 18.0 °C, the water falls to 20.0 °C. After 25 h it is below 21.0 °C, the least that these animals bear. ${lost}`,
    action:
      'Put in 2 heaters of 100 W each. Together they hold the target, 25.0 °C; should one fail, what is left does not hold even 23.0 °C in the coldest room: of what is sold, a power that did would be too much when it sticks on.',
  })
  expect(told(of(150, 1)).reason).toBe(
    'There is one heater and no spare. If it fails in the coldest room, 18.0 °C, the water falls to 17.5 °C. After 11 h it is below 21.0 °C, the least that these animals bear.',
  )
  expect(of(100, 2).source.tag).toBe('own')
})

it('fits from a degree above what the animals bear', () => {
  const bearing = (lowestC: number) =>
    findingOf('heater_spare', { heaters: [one('Torvane', { powerW: 100 }, 2)] }, { livestock: { ...group('small-tropical'), lowestC } })
      .verdict
  expect([bearing(21.6), bearing(21.7)]).toEqual(['fits', 'marginal'])
})

it('says nothing of a power cut that the room itself makes good', () => {
  // 17.45 °C without any heat is above the 12 °C that goldfish bear.
  const found = findingOf('heater_spare', { heaters: [one('Torvane', { powerW: 100 }, 2)] }, { livestock: group('goldfish-fancy') })
  expect(told(found).reason).not.toContain('power cut')
})

it('names what it took for the room, the fill and the lid', () => {
  const found = findingOf(
    'heater_spare',
    { heaters: [one('Torvane', {}, 2)], lid: one('a lid', { lengthMm: 1210, widthMm: 450 }) },
    { coldestRoomC: 24, assumed: ['coldestRoomC', 'substrateDepthMm'] },
  )
  expect(found).toMatchObject({
    verdict: 'fits',
    assumed: ['power of the heater', 'what the lid is made of', 'coldest room temperature', 'substrate depth'],
  })
})

/** Own: a thermostat switches off at its target, so that 300 W left of 600 W warm the water no further; a room of 27 °C does. */
it('tells no more than the target that thermostats hold, unless the room alone keeps it warmer', () => {
  const strong = findingOf('heater_spare', { heaters: [one('Torvane', { powerW: 300 }, 2)] })
  expect(strong).toMatchObject({ verdict: 'fits', value: { value: 25 }, margin: { value: 4 } })
  expect(sayPhrase(strong.reason, METRIC)).toContain('what is left still holds 25.0 °C, with heat to spare;')
  expect(sayPhrase(strong.reason, METRIC)).not.toContain('could hold')
  const warm = findingOf('heater_spare', { heaters: [one('Torvane', { powerW: 300 }, 2)] }, { coldestRoomC: 27, warmestRoomC: 28 })
  expect(warm.value?.value).toBeGreaterThan(25)
  expect(warm.value?.value).toBeLessThan(28)
  expect(sayPhrase(warm.reason, METRIC)).toContain('the room alone still keeps it at')
})
