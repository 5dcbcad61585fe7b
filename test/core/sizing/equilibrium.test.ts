import { describe, expect, it } from 'vitest'
import { equilibriumC } from '../../../core/sizing/equilibrium.ts'
import { USUAL_LOSS } from '../../../core/sizing/heat-ends.ts'
import { heatLoss } from '../../../core/sizing/heat-loss.ts'
import { saturationPressurePa } from '../../../core/water/vapour-pressure.ts'
import { GEOMETRY_A, TANK_A } from './reference-tanks.ts'

const inRoom = (cover: 'open' | 'glass', roomC: number) => heatLoss(TANK_A, GEOMETRY_A, cover, USUAL_LOSS, roomC)

describe('the temperature at which heat and losses balance', () => {
  /** Own, by a second program that halves the range: the tank of 75 gallons at usual losses; below nothing a chiller takes heat out. */
  it.each([
    ['open', 24, -200, 13.3212],
    ['glass', 24, -100, 18.5059],
    ['open', 24, -50, 20.2474],
    ['open', 20, 0, 18.7643],
    ['open', -5, 200, 4.8254],
    ['glass', 22, 1200, 78.3874],
    ['glass', 22, 1500, 89.7739],
    // Through the panes alone it would boil.
    ['open', 22, 3000, 91.3891],
  ] as const)('under a top that is %s in a room of %s °C with %s W is %s °C', (cover, roomC, heatW, balanceC) =>
    expect(Math.abs(equilibriumC(inRoom(cover, roomC), heatW) - balanceC)).toBeLessThan(1e-4),
  )

  it('never passes the freezing or the boiling of water', () => {
    expect(equilibriumC(inRoom('glass', -5), 0)).toBe(0)
    expect(equilibriumC(inRoom('open', 22), 1e6)).toBe(100)
    // Own: the open tank gives off 3802.48 W at 100 °C.
    expect(equilibriumC(inRoom('open', 22), 3803)).toBe(100)
    expect(equilibriumC(inRoom('open', 22), 3802)).toBeLessThan(100)
    expect(equilibriumC(inRoom('open', 22), 3802)).toBeGreaterThan(99.9)
  })

  it('is by conduction alone where the air is too damp for anything to evaporate', () => {
    // In saturated air of 22 °C water of the room's temperature gives off nothing, and 100 W taken out cool it by 100 ÷ 18.809 K.
    const damp = { ...inRoom('open', 22), roomVapourPa: saturationPressurePa(22) }
    expect(equilibriumC(damp, 0)).toBeCloseTo(22, 9)
    expect(equilibriumC(damp, -100)).toBeCloseTo(22 - 100 / 18.809, 3)
  })
})
