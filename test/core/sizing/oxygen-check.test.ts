import { describe, expect, it } from 'vitest'
import type { FilterSpec } from '../../../core/catalog/spec.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { stillTransfer, stirredBy, surfaceOxygen } from '../../../core/sizing/surface-oxygen.ts'
import { actionOf, inRoundTank, isMadeInRoundTank, reasonOf } from './round-tank.ts'
import { isNear } from './reference-tanks.ts'
import { group, one } from './sample-build.ts'

const fed = (
  feedGramsPerDay: number,
  gear: Partial<Gear> = {},
  marks: Partial<Conditions['livestock']> = {},
  room: Partial<Conditions> = {},
) => inRoundTank('surface_oxygen', gear, { livestock: { ...group('small-tropical'), feedGramsPerDay, ...marks }, ...room })
/** "takes up the oxygen for 6.9 g with the return pointed away from it and for 12.3 g with the return pointed at it; in a power cut for 1.1 g." */
function carried(found: ReturnType<typeof fed>) {
  const said = /oxygen for (?<least>[\d.]+) g .* for (?<most>[\d.]+) g with .* power cut for (?<still>[\d.]+) g\.$/.exec(reasonOf(found))
  return { least: Number(said?.groups?.['least']), most: Number(said?.groups?.['most']), still: Number(said?.groups?.['still']) }
}
const filter = (spec: FilterSpec, count = 1) => ({ filters: [one('Pellick', spec, count)] })

/**
 * By hand, 0.4 m² at 28 °C: 7.83 mg/L (Benson & Krause) less 5 are 2.83 g/m³; 2.07 cm/h at a Schmidt number of 600 are 2.68 at 358 (Wanninkhof), so 0.728 g a day; over
 * 0.689 g for each gram of feed, breathed at most and nitrified, 1.06 g.
 */
describe('the surface of 160 L', () => {
  it('carries a gram of feed in a power cut', () => {
    expect(carried(fed(1)).still).toBe(1.1)
  })

  it('carries what is told, to the digit, and a tenth more does not fit', () => {
    const { least, most } = carried(fed(1))
    expect(least).toBeLessThan(most)
    const at = fed(least)
    expect([at.verdict, at.action, at.margin?.value]).toEqual(['fits', null, 0])
    expect(at).toMatchObject({
      value: { value: least, unit: 'g' },
      limit: { kind: 'at_least', low: { value: least } },
      source: { tag: 'from_memory' },
    })
    for (const grams of [least + 0.1, most]) expect(fed(grams).verdict).toBe('marginal')
    expect(fed(most + 0.1).verdict).toBe('does_not_fit')
    expect(actionOf(fed(most))).toBe(
      "Point the filter's return at the surface or add an air pump; feed less, or keep fewer animals. Watch for gasping at dawn.",
    )
  })

  it('is told whole', () => {
    expect(reasonOf(fed(1))).toMatch(
      /^A usual stock eats 1\.0 g of dry feed a day\. At 28\.0 °C and at the height of the sea the surface takes up the oxygen for [\d.]+ g with the return pointed away from it and for [\d.]+ g with the return pointed at it; in a power cut for [\d.]+ g\.$/,
    )
    expect(fed(1).assumed).toEqual(['movement of the surface', 'feed a day of the group', 'height above the sea'])
  })

  it('is judged at the warmest that these animals like, at 35 °C at the most', () => {
    expect(reasonOf(fed(1, {}, { highestC: 36 }))).toContain('At 35.0 °C')
    expect(reasonOf(fed(1, {}, { highestC: 20 }))).toContain('At 20.0 °C')
    expect(carried(fed(1, {}, { highestC: 20 })).still).toBeGreaterThan(carried(fed(1)).still)
  })

  it('carries less at a height, which is told', () => {
    const high = fed(1, {}, {}, { altitudeM: 1600 })
    expect(carried(high).still).toBeLessThan(carried(fed(1)).still * 0.7)
    expect(high.assumed).toEqual(['movement of the surface', 'feed a day of the group'])
  })
})

/** Power of a jet goes with the cube of its flow, and transfer with its fourth root: twice the filters 2^¼, twice the flow 2^¾. */
describe('what stirs it', () => {
  const plain: FilterSpec = { type: 'internal', ratedFlowLph: 2000 }

  it('are all filters, by what they give with media loaded and clean', () => {
    const [once, twice] = [carried(fed(1, filter(plain))), carried(fed(1, filter(plain, 2)))]
    isNear(twice.least, once.least * 2 ** 0.25, 3e-2)
    isNear(twice.most, once.most * 2 ** 0.25, 1e-2)
    const strong = carried(fed(1, filter({ type: 'internal', ratedFlowLph: 4000 })))
    isNear(strong.least, once.least * 2 ** 0.75, 3e-2)
    // Clean media leave 0.7 of what is printed where loaded ones leave 0.5 (common practice), a return at the surface ten times the share: 10^¼ · 1.4^¾; and 0.489 g is the least that feed costs, 0.689 the most.
    isNear(once.most / once.least, 10 ** 0.25 * 1.4 ** 0.75 * (0.689 / 0.489), 3e-2)
  })

  it('is an air pump too', () => {
    const air = { appliances: [{ kind: 'air_pump' as const, ...one('Torvane air', {}) }] }
    const weak = filter({ type: 'internal', ratedFlowLph: 100 })
    expect(carried(fed(1, { ...weak, ...air })).least).toBeGreaterThan(carried(fed(1, weak)).least)
    const other = { appliances: [{ kind: 'uv' as const, ...one('Torvane ray', {}) }] }
    expect(carried(fed(1, { ...weak, ...other }))).toEqual(carried(fed(1, weak)))
    const known = fed(3, { ...filter({ type: 'sponge' }), ...air })
    expect(known.verdict).not.toBe('not_known')
    // Bubbles alone: 0.08 W at both ends, so 10^¼ apart but for what feed costs.
    isNear(carried(known).most / carried(known).least, 10 ** 0.25 * (0.689 / 0.489), 5e-2)
  })
})

describe('without the filter’s flow', () => {
  const sponge = filter({ type: 'sponge' })
  const { still } = carried(fed(0.5, sponge))
  it('is settled by a still surface alone, or not known', () => {
    expect(fed(still, sponge).verdict).toBe('fits')
    const found = fed(still + 0.1, sponge)
    expect(found).toMatchObject({
      verdict: 'not_known',
      missing: ['flow of the filter'],
      assumed: ['feed a day of the group'],
      limit: { kind: 'at_least', low: { unit: 'g' } },
      source: { tag: 'from_memory' },
    })
    expect(found.value).toBeUndefined()
    expect(reasonOf(found)).toMatch(
      /^A usual stock eats 1\.\d g of dry feed a day; a surface that nothing stirs takes up the oxygen for 1\.\d g\. How much the filter stirs it is not known without its flow\.$/,
    )
    expect(actionOf(found)).toBe('Enter the printed flow of the filter, or add an air pump.')
  })

  it('is no check without a filter', () => expect(isMadeInRoundTank('surface_oxygen', { filters: [] })).toBe(false))
})

/** By hand: (1e-4 W/kg · 8.93e-7 m²/s)^¼ · 0.4 m/s over √421 (Wanninkhof at 25 °C), 21.5 cm/h; a tenth of the power at the surface is 10^¼ times as fast. */
it('stirs a surface by the small eddies of Lamont and Scott', () => {
  const surface = { areaM2: 1, waterC: 25, water: 'fresh' } as const
  const { low, high } = stirredBy(surface, 1, 100)
  isNear(low, 21.5, 2e-2)
  isNear(high / low, 10 ** 0.25, 1e-9)
  expect(stirredBy(surface, 0, 100)).toEqual({ low: stillTransfer(surface), high: stillTransfer(surface) })
})

/** 28 °C, 7.83 mg/L at the sea and 0.8243 of it at 1600 m (standard atmosphere), 1.44 and 2.83 g/m³ over what animals must find; tolerance 2 %. */
it('takes up less from thin air', () => {
  const surface = { areaM2: 1, waterC: 28, water: 'fresh' } as const
  isNear(surfaceOxygen(surface, 100 / 24), 2.83, 1e-2)
  isNear(surfaceOxygen({ ...surface, altitudeM: 1600 }, 100 / 24), 1.44, 4e-2)
  expect(surfaceOxygen({ ...surface, altitudeM: 5000 }, 100)).toBe(0)
})
