import fc from 'fast-check'
import { expect, it } from 'vitest'
import { sayPhrase, METRIC } from '../../../core/units/say.ts'
import { conditions, findingOf, gear, group, one, reportOf } from './sample-build.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'

const heaters = (powerW: number, quantity = 1) => ({ heaters: [one('Torvane', { powerW }, quantity)] })

/** Own: the open 75 gallon tank of 25 °C loses 223 W in a dry room of 18 °C at F 0.74. */
it('asks for the winter loss of the open tank', () => {
  const found = findingOf('heater_holds', { lid: null, ...heaters(300) })
  expect(found.limit).toMatchObject({ kind: 'at_least', low: { unit: 'W', value: 223 } })
})

it('fits from a quarter above the loss, is marginal up to there, and does not fit below it', () => {
  expect(findingOf('heater_holds', { lid: null, ...heaters(279) }).verdict).toBe('fits')
  expect(findingOf('heater_holds', { lid: null, ...heaters(278) }).verdict).toBe('marginal')
  expect(findingOf('heater_holds', { lid: null, ...heaters(223) }).verdict).toBe('marginal')
  expect(findingOf('heater_holds', { lid: null, ...heaters(222) }).verdict).toBe('does_not_fit')
})

it('says what a heater that cannot hold settles at, instead of clipping its duty', () => {
  const text = sayPhrase(findingOf('heater_holds', { lid: null, ...heaters(100) }).reason, METRIC)
  expect(text).toMatch(/cannot hold that: it takes 223 % of what it has, and the water settles at 2\d\.\d °C/)
  expect(reportOf({ lid: null, ...heaters(100) }).figures.heaterDutyPercent).toBe(223)
})

it('adds the heaters up', () => {
  expect(findingOf('heater_holds', heaters(100, 3)).value?.value).toBe(300)
})

it('needs no heater where the room alone keeps the animals warm enough', () => {
  const found = findingOf('heater_holds', { heaters: [] }, { livestock: group('goldfish-fancy') })
  expect(found.verdict).toBe('fits')
  expect(found.value?.unit).toBe('degC')
})

it('does not fit without a heater in a room too cold for the animals', () => {
  const found = findingOf('heater_holds', { heaters: [] })
  expect(found.verdict).toBe('does_not_fit')
  expect(found.action).not.toBeNull()
})

it('names the default it rests on in words', () => {
  expect(findingOf('heater_holds', {}, { assumed: ['coldestRoomC'] }).assumed).toContain('coldest room temperature')
})

it('does not guess the power of a heater', () => {
  const found = findingOf('heater_holds', { heaters: [one('Torvane', {})] })
  expect(found.verdict).toBe('not_known')
  expect(found.missing).toContain('power of the heater')
})

it('holds an assumed glass thickness where it changes nothing, and asks for it where it does', () => {
  const tank = { lengthMm: 1219, widthMm: 457, heightMm: 533, material: 'glass' as const }
  const ample = findingOf('heater_holds', { tank: one('Wendlemere', tank), ...heaters(400) })
  expect(ample.verdict).toBe('fits')
  expect(ample.assumed).toContain('glass thickness')
  const close = findingOf('heater_holds', { tank: one('Wendlemere', tank), ...heaters(148) })
  expect(close.verdict).toBe('not_known')
  expect(close.missing).toContain('glass thickness')
})

it('asks for more watts in a colder room', () => {
  const wanted = (coldestRoomC: number) =>
    sizingReport({ gear: gear(), conditions: conditions({ coldestRoomC, warmestRoomC: 30 }) }).figures.coldLossW ?? NaN
  fc.assert(
    fc.property(fc.double({ min: 0, max: 23, noNaN: true }), fc.double({ min: 0.5, max: 7, noNaN: true }), (roomC, warmer) => {
      expect(wanted(roomC)).toBeGreaterThan(wanted(roomC + warmer))
    }),
    { numRuns: 60 },
  )
})
