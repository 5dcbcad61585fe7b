import { expect, it } from 'vitest'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { conditions, findingOf, group, one } from './sample-build.ts'

const inRoom = (warmestRoomC: number, gear = {}) => findingOf('warm_room', gear, { coldestRoomC: 18, warmestRoomC })

it('condemns a room that is past the danger mark by itself, whatever switches the heaters', () => {
  const controlled = { heaters: [one('Torvane', { powerW: 150, externalController: true })] }
  const found = inRoom(35, controlled)
  expect(found.verdict).toBe('does_not_fit')
  expect(found.margin?.value).toBeLessThan(0)
  expect(sayPhrase(found.action?.text ?? [], METRIC)).toMatch(/fan across the surface.*chiller/)
})

it('fits where the water stays at what the animals are comfortable with', () => {
  const found = inRoom(22)
  expect(found.verdict).toBe('fits')
  expect(found.limit).toMatchObject({ kind: 'at_most', high: { value: group('small-tropical').highestC } })
})

it('is marginal between comfort and danger', () => {
  const verdicts = [22, 24, 26, 28, 30, 32, 34].map((roomC) => inRoom(roomC).verdict)
  expect(verdicts[0]).toBe('fits')
  expect(verdicts).toContain('marginal')
  expect(verdicts.at(-1)).toBe('does_not_fit')
})

it('rises with the room, and with what pump and lamp give off', () => {
  const at = (roomC: number, gear = {}) => inRoom(roomC, gear).value?.value ?? NaN
  for (let roomC = 20; roomC < 34; roomC += 1) expect(at(roomC + 1)).toBeGreaterThan(at(roomC))
  expect(at(26, { filters: [], lights: [] })).toBeLessThan(at(26))
})

it('counts evaporation: without pump and lamp an open tank stays below its room', () => {
  // Sizing trap: at equal water and room temperature evaporation still takes 70 W/m² (own, ASHRAE form at 25 °C, 50 %).
  expect(inRoom(26, { lid: null, filters: [], lights: [] }).value?.value).toBeLessThan(26)
})

it('names an assumed room', () => {
  const found = findingOf('warm_room', {}, { assumed: ['warmestRoomC'] })
  expect(found.assumed).toContain('warmest room temperature')
})

it('tells what a fan and a chiller would do, from the same balance', () => {
  const text = (roomC: number, gear = {}) => sayPhrase(inRoom(roomC, gear).action?.text ?? [], METRIC)
  const figures = (said: string) => /settle at about (?<fan>[\d.]+) °C\), or a chiller that takes out (?<watts>\d+) W/.exec(said)?.groups
  const [warm, hot] = [figures(text(30)), figures(text(34))]
  expect(Number(warm?.['fan'])).toBeLessThan(inRoom(30).value?.value ?? 0)
  expect(Number(hot?.['fan'])).toBeGreaterThan(Number(warm?.['fan']))
  expect(Number(hot?.['watts'])).toBeGreaterThan(Number(warm?.['watts']))
  expect(text(30, { lid: one('Wendlemere lid', { cover: 'glass' as const }) })).toContain('the lid off on hot days')
})

it('has a chiller of the told power hold what the animals are comfortable with', () => {
  const watts = Number(/takes out (\d+) W/.exec(sayPhrase(inRoom(32).action?.text ?? [], METRIC))?.[1])
  const appliances = [{ kind: 'chiller' as const, name: 'Halden cold', quantity: 1, spec: { coolingW: watts } }]
  expect(inRoom(32, { appliances }).verdict).toBe('fits')
  expect(inRoom(32, { appliances: [{ ...appliances[0]!, spec: { coolingW: watts - 20 } }] }).verdict).not.toBe('fits')
})

it('judges a danger mark with more digits than are told by the digits that are told', () => {
  // The margin that is told and the verdict must not disagree.
  const value = findingOf('warm_room', {}, {}).value!.value
  const at = (dangerC: number) => findingOf('warm_room', {}, { livestock: { ...conditions().livestock, highestC: dangerC, dangerC } })
  const above = at(value - 0.04)
  expect([above.verdict, above.margin?.value]).toEqual(['fits', -0])
  expect(at(value - 0.06).verdict).toBe('does_not_fit')
})
