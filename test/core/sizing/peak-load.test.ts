import { describe, expect, it } from 'vitest'
import type { TankSpec } from '../../../core/catalog/spec.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { applianceLoadW } from '../../../core/sizing/peak-load.ts'
import { conditions, gear, one } from './sample-build.ts'

const load = (changes: Partial<Gear>) =>
  applianceLoadW({ gear: gear({ filters: [], heaters: [], lights: [], ...changes }), conditions: conditions() })
const tank = (spec: Partial<TankSpec> = {}) => ({ tank: one('Wendlemere', { lengthMm: 600, widthMm: 300, heightMm: 400, ...spec }) })

describe('everything on at once', () => {
  it('adds up what is stated', () => {
    const appliances = [{ kind: 'uv' as const, ...one('Bog ray', { powerW: 9 }, 2) }]
    const found = load({
      heaters: [one('Torvane', { powerW: 100 }, 2)],
      filters: [one('Pellick', { powerW: 20 })],
      lights: [one('Halden', { powerW: 30 })],
      appliances,
    })
    expect(found).toEqual({ loadW: { low: 268, high: 268 }, unstated: [] })
  })

  // Common practice: heaters of 0.5 to 2 W for each litre outside, 72 L here; lights of 10 to 80 W a metre; a canister of 5 to 50 W, an air pump of 1 to 15.
  it.each<[string, Partial<Gear>, number, number, string[]]>([
    ['heaters', { heaters: [one('Torvane', {}, 2)] }, 72, 288, ['power of the heater']],
    ['a light', { lights: [one('Halden', {})] }, 6, 48, ['power of the light']],
    ['a canister', { filters: [one('Pellick', { type: 'canister' })] }, 5, 50, ['power of the filter']],
    ['an air pump', { appliances: [{ kind: 'air_pump', ...one('Pellick air', {}) }] }, 1, 15, ['power of the air pump']],
    ['nothing', {}, 0, 0, []],
  ])('takes the usual range of %s', (_what, changes, low, high, unstated) => {
    const found = load({ ...tank(), ...changes })
    expect([found.loadW.low, found.loadW.high].map((watts) => Math.round(watts * 1e6) / 1e6)).toEqual([low, high])
    expect(found.unstated).toEqual(unstated)
  })

  it('takes the litres of a tank’s own shape', () => {
    // π · 0.25² · 0.4 m³ are 78.54 L.
    const found = load({ ...tank({ lengthMm: 500, widthMm: 500, shape: 'cylinder' }), heaters: [one('Torvane', {})] })
    expect(found.loadW.low).toBeCloseTo(39.27, 2)
    expect(found.loadW.high).toBeCloseTo(157.08, 2)
  })

  it('takes a middling tank where there is none: 150 L and 900 mm', () => {
    const found = load({ tank: null, heaters: [one('Torvane', {})], lights: [one('Halden', {})] })
    expect(found.loadW.low).toBeCloseTo(75 + 9, 9)
    expect(found.loadW.high).toBeCloseTo(300 + 72, 9)
  })
})
