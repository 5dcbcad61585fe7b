import { describe, expect, it } from 'vitest'
import type { LidSpec, StandSpec, TankSpec } from '../../../core/catalog/spec.ts'
import { overhangStressPa } from '../../../core/sizing/overhang.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { isNear } from './reference-tanks.ts'
import { findingOf, one } from './sample-build.ts'

describe('a bottom that sticks out', () => {
  /** Any text on beams (AISC Manual, table 3-23, cases 19 and 22; from memory): a cantilever of 2 m under 3 kN/m has 6 kN·m at its foot, with 4 kN at its end 8 kN·m more. A strip 1 m wide and 0.2 m thick. */
  it.each([
    ['its load alone', 3000, 0, 6000],
    ['the pane at its end alone', 0, 4000, 8000],
    ['both', 3000, 4000, 14_000],
  ])('is bent by %s', (_what, pressurePa, edgeNPerM, momentNm) => {
    // Section modulus of the strip: 1 × 0.2² / 6 = 0.006667 m³.
    isNear(overhangStressPa({ outM: 2, thicknessM: 0.2, pressurePa, edgeNPerM }), momentNm / (0.2 ** 2 / 6), 1e-12)
  })
})

const hexagon: TankSpec = {
  lengthMm: 600,
  widthMm: 520,
  heightMm: 500,
  glassMm: 8,
  bottomMm: 8,
  material: 'glass',
  style: 'rimless',
  shape: 'hexagon',
}
const on = (stand: StandSpec, tank: TankSpec = hexagon) =>
  findingOf('stand_footprint', { tank: one('a tank', tank), stand: one('Thornby', { topLengthMm: 600, topWidthMm: 520, ...stand }) })

describe('a tank on a stand too small for it', () => {
  const box: TankSpec = { ...hexagon, shape: 'rectangular' }
  it('says how far it sticks out on either side, and what a flat bottom is bent by', () => {
    const found = on({ topLengthMm: 560, topWidthMm: 500, top: 'full' }, box)
    expect(found.verdict).toBe('does_not_fit')
    const said = sayPhrase(found.reason, METRIC)
    expect(said).toContain('stick out by 20 mm at either end and 10 mm in front and behind')
    expect(said).toMatch(/A flat bottom has to be carried all over\. As a strip it would be bent to 0\.\d N\/mm²/)
  })

  it('says of one that sticks out far that the glass cannot bear it', () => {
    expect(sayPhrase(on({ topLengthMm: 250, top: 'full' }, box).reason, METRIC)).toMatch(/beyond the 7\.3 N\/mm² that glass bears for long/)
  })

  it('reckons no strip for a rimmed tank, which stands on its frame, nor for acrylic', () => {
    const small: StandSpec = { topLengthMm: 560, top: 'full' }
    expect(sayPhrase(on(small, { ...box, style: 'rimmed' }).reason, METRIC)).toMatch(/all of the frame has to be carried\.$/)
    expect(sayPhrase(on(small, { ...box, material: 'acrylic' }).reason, METRIC)).toMatch(/carried all over\.$/)
  })
})

describe('a tank that is no box on its stand', () => {
  it.each([
    ['a full board', { top: 'full' }, 'fits'],
    ['an open rectangular frame', { top: 'perimeter' }, 'does_not_fit'],
    ['a top of which nobody knows', {}, 'not_known'],
    ['a frame of its own shape', { shape: 'hexagon', top: 'perimeter' }, 'fits'],
    ['a top of another shape', { shape: 'bow_front', top: 'full' }, 'not_known'],
  ] as const)('on %s', (_what, stand, verdict) => expect(on(stand).verdict).toBe(verdict))

  it('must not stick out of its box either', () => expect(on({ top: 'full', topLengthMm: 560 }).verdict).toBe('does_not_fit'))
})

describe('its lid', () => {
  const under = (lid: LidSpec, tank: TankSpec = hexagon) =>
    findingOf('lid', { tank: one('a tank', tank), lid: one('a lid', { lengthMm: 590, widthMm: 510, cover: 'glass', ...lid }) })
  it.each([
    ['of its own shape', { shape: 'hexagon' }, 'fits'],
    ['of another', { shape: 'rectangular' }, 'does_not_fit'],
    ['of which nobody knows the shape', {}, 'not_known'],
  ] as const)('%s', (_what, lid, verdict) => expect(under(lid).verdict).toBe(verdict))

  it('is asked of a box only where another shape is stated', () => {
    const { shape: _shape, ...box } = hexagon
    expect(under({}, box).verdict).toBe('fits')
    expect(under({ shape: 'rectangular' }, box).verdict).toBe('fits')
    expect(under({ shape: 'cylinder' }, box).verdict).toBe('does_not_fit')
  })
})
