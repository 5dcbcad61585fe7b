import fc from 'fast-check'
import { expect, it } from 'vitest'
import { L_PER_US_GALLON } from '../../../core/units/factors.ts'
import { tankGeometry } from '../../../core/sizing/tank-geometry.ts'
import { FILL_A, GEOMETRY_A, TANK_A, isNear } from './reference-tanks.ts'

/** Own: independent computation of the 75 gallon reference tank, tolerance 1e-6. */
it.each([
  ['outsideVolumeL', 297.3269],
  ['grossVolumeL', 274.4135],
  ['columnVolumeL', 253.4419],
  ['substrateSolidL', 15.7287],
  ['waterVolumeL', 237.7132],
  ['shellVolumeL', 22.9134],
] as const)('reckons %s of the 75 gallon tank', (figure, expected) => isNear(GEOMETRY_A[figure], expected, 2e-6))

it('finds 48 × 18 × 21 inches to be 78.5454 US gallons outside, exactly', () => {
  expect(GEOMETRY_A.outsideVolumeL / L_PER_US_GALLON).toBeCloseTo((48 * 18 * 21) / 231, 10)
})

it('sums the shell to the panels of a tank whose walls stand on the base', () => {
  const { lengthMm: l, widthMm: w, heightMm: h } = TANK_A
  const t = 10
  const panels = (l * w * t + 2 * l * (h - t) * t + 2 * (w - 2 * t) * (h - t) * t) / 1e6
  isNear(GEOMETRY_A.shellVolumeL, panels, 1e-9)
})

const shapes = fc.record({
  lengthMm: fc.double({ min: 200, max: 3000, noNaN: true }),
  widthMm: fc.double({ min: 150, max: 1200, noNaN: true }),
  heightMm: fc.double({ min: 200, max: 1200, noNaN: true }),
  glassMm: fc.double({ min: 3, max: 25, noNaN: true }),
  bottomMm: fc.double({ min: 3, max: 25, noNaN: true }),
  material: fc.constant('glass' as const),
})

it('scales every volume with the cube of the lengths', () => {
  fc.assert(
    fc.property(shapes, fc.double({ min: 0.5, max: 4, noNaN: true }), (shape, k) => {
      const grown = {
        ...shape,
        lengthMm: shape.lengthMm * k,
        widthMm: shape.widthMm * k,
        heightMm: shape.heightMm * k,
        glassMm: shape.glassMm * k,
        bottomMm: shape.bottomMm * k,
      }
      const small = tankGeometry(shape, { waterBelowRimMm: 20, substrateDepthMm: 30 })
      const large = tankGeometry(grown, { waterBelowRimMm: 20 * k, substrateDepthMm: 30 * k })
      if (!small.ok || !large.ok) throw new Error('both must be accepted')
      for (const figure of ['outsideVolumeL', 'grossVolumeL', 'waterVolumeL', 'shellVolumeL'] as const)
        isNear(large.value[figure], small.value[figure] * k ** 3, 1e-9)
    }),
  )
})

it('keeps water, grains and column in balance', () => {
  fc.assert(
    fc.property(shapes, (shape) => {
      const result = tankGeometry(shape, { waterBelowRimMm: 20, substrateDepthMm: 40 })
      if (!result.ok) throw new Error('must be accepted')
      const g = result.value
      isNear(g.waterVolumeL + g.substrateSolidL, g.columnVolumeL, 1e-12)
      expect(g.grossVolumeL).toBeLessThan(g.outsideVolumeL)
      expect(g.columnVolumeL).toBeLessThan(g.grossVolumeL)
    }),
  )
})

it('approaches the outside box as the panels get thin', () => {
  const result = tankGeometry({ ...TANK_A, glassMm: 1e-6, bottomMm: 1e-6 }, FILL_A)
  if (!result.ok) throw new Error('must be accepted')
  isNear(result.value.grossVolumeL, result.value.outsideVolumeL, 1e-6)
})

it.each([
  ['a panel as thick as half the depth', { ...TANK_A, glassMm: TANK_A.widthMm / 2 }, FILL_A, { code: 'no_inside', side: 'width' }],
  ['a bottom as thick as the tank is high', { ...TANK_A, bottomMm: TANK_A.heightMm }, FILL_A, { code: 'no_inside', side: 'height' }],
  ['a fill line below the floor', TANK_A, { ...FILL_A, waterBelowRimMm: 600 }, { code: 'no_water' }],
  ['a bed that reaches the surface', TANK_A, { ...FILL_A, substrateDepthMm: 500 }, { code: 'substrate_too_deep' }],
])('refuses %s', (_what, shape, fill, refusal) => {
  const result = tankGeometry(shape, fill)
  expect(result.ok ? null : result.refusal).toMatchObject(refusal)
})
