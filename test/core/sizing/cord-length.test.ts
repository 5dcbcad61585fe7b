import { expect, it } from 'vitest'
import { METRIC, sayPhrase, sayQuantity, US } from '../../../core/units/say.ts'
import { findingOf, one } from './sample-build.ts'

const heater = (cordMm?: number) => ({ heaters: [one('Torvane', { powerW: 100, ...(cordMm ? { cordMm } : {}) })] })

it('counts the heater’s way up through the water and over the rim', () => {
  // 48 × 18 × 21 in tank: 533 mm of height and 100 mm over the rim are not outside the water.
  expect(findingOf('cord_length', heater(2300)).value?.value).toBe(2300 - 533 - 100)
})

/** Own: exit at 760 + 533 mm, outlet at 300, 600 sideways: hanging 1246.6 + 100, and 300 of slack. */
it('fits with slack, is marginal without, and does not fit when no loop can hang', () => {
  expect(findingOf('cord_length', heater(2400)).verdict).toBe('fits')
  expect(findingOf('cord_length', heater(2100)).verdict).toBe('marginal')
  const short = findingOf('cord_length', heater(1500))
  expect(short.verdict).toBe('does_not_fit')
  expect(short.margin?.value).toBeLessThan(0)
  expect(short.caution).toMatch(/licensed electrician/)
})

it('tells what a loop takes rounded up, and the same in the limit as in the sentence', () => {
  const short = findingOf('cord_length', heater(1500))
  if (short.limit?.kind !== 'at_least') throw new Error('a least length')
  // Own: 1646.6 mm, 64.8 in.
  expect(sayQuantity(short.limit.low, US)).toBe('65 in')
  expect(sayPhrase(short.reason, US)).toContain('takes 65 in, slack included')
})

it('never tells a cord that reaches as shorter than what it needs', () => {
  for (let cordMm = 2270; cordMm <= 2300; cordMm += 1) {
    const { verdict, value, limit } = findingOf('cord_length', heater(cordMm))
    if (verdict !== 'fits' || value === undefined || limit?.kind !== 'at_least') continue
    for (const reader of [US, METRIC])
      expect(parseFloat(sayQuantity(value, reader))).toBeGreaterThanOrEqual(parseFloat(sayQuantity(limit.low, reader)))
  }
})

it('does not guess a cord that nobody measured', () => {
  const unknown = findingOf('cord_length', heater())
  expect(unknown.verdict).toBe('not_known')
  expect(unknown.missing).toContain('cord of Torvane')
  expect(unknown.value).toBeUndefined()
})

it('asks for the stand’s height where the cord is stated and its way down is not', () => {
  const stand = { stand: one('Thornby', { ratedLoadKg: 450 }) }
  // Own: over a stand of 600 to 950 mm a loop takes 1503 to 1838 mm, and 2300 mm of cord leave 1667 outside the water.
  const found = findingOf('cord_length', { ...stand, ...heater(2300), filters: [], lights: [] })
  expect(found).toMatchObject({ verdict: 'not_known', missing: ['height of the stand'] })
  expect(sayPhrase(found.reason, METRIC)).toMatch(/by the height of the stand; nobody has stated it\.$/)
  expect(sayPhrase(found.action?.text ?? [], METRIC)).toMatch(/how high the stand is/)
  const both = findingOf('cord_length', { ...stand, ...heater(), filters: [], lights: [] })
  expect(both.missing).toEqual(['cord of Torvane', 'height of the stand'])
  expect(sayPhrase(both.reason, METRIC)).toMatch(/nobody has stated how long its cord is/)
})

it('lets the worst cord decide', () => {
  const found = findingOf('cord_length', { lights: [one('Halden', { cordMm: 800, lengthMm: 1150 })] })
  expect(found.verdict).toBe('does_not_fit')
  expect(found.reason[0]).toContain('Halden')
})

it('starts a canister’s cord at the floor of the stand', () => {
  const near = { filters: [one('Pellick', { type: 'canister' as const, cordMm: 1100, ratedFlowLph: 1500 })], heaters: [], lights: [] }
  expect(findingOf('cord_length', near).verdict).toBe('fits')
  const hung = { ...near, filters: [one('Pellick', { type: 'hang_on' as const, cordMm: 1100, ratedFlowLph: 1500 })] }
  expect(findingOf('cord_length', hung).verdict).toBe('does_not_fit')
})

it('says so where the outlet leaves no room for a loop', () => {
  const low = findingOf('cord_length', {}, { outletHeightMm: 60 })
  expect(low.verdict).toBe('does_not_fit')
  expect(sayPhrase(low.reason, METRIC)).toMatch(/no room to hang/)
})
