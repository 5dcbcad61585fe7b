import { describe, expect, it } from 'vitest'
import type { StandSpec, TankSpec } from '../../../core/catalog/spec.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { findingOf, one, reportOf } from './sample-build.ts'

/** Flat glass, 1000 × 400 × 400 mm, 10 mm all round; fresh water of 25 °C has 0.99705 kg/L (EOS-80). */
const FLAT: TankSpec = {
  lengthMm: 1000,
  widthMm: 400,
  heightMm: 400,
  glassMm: 10,
  bottomMm: 10,
  material: 'glass',
  style: 'rimless',
}
const on = (stand: StandSpec, tank: Partial<TankSpec> = {}) =>
  findingOf('stand_footprint', {
    tank: one('a tank', { ...FLAT, ...tank }),
    stand: one('Thornby', stand),
    substrates: [],
    notNeeded: { substrate: 'bare bottom' },
  })
const board = (topLengthMm: number, topWidthMm: number): StandSpec => ({ topLengthMm, topWidthMm, top: 'full' })
const frame = (topLengthMm: number, topWidthMm: number): StandSpec => ({ topLengthMm, topWidthMm, top: 'perimeter' })
const reasonOf = (finding: ReturnType<typeof on>) => sayPhrase(finding.reason, METRIC)
const actionOf = (finding: ReturnType<typeof on>) => finding.action && sayPhrase(finding.action.text, METRIC)

describe('a stand’s top against the tank', () => {
  // Common practice: a frame lies under the tank's own within 20 mm; own: makers round by 2 mm.
  it.each<[string, StandSpec, string, number, number]>([
    ['a board of its size', board(1000, 400), 'fits', 1000, 0],
    ['a board that its maker rounded down', board(998, 400), 'fits', 998, 0],
    ['a board short by more', board(997, 400), 'does_not_fit', 997, -3],
    ['a frame as much larger as a frame may be', frame(1020, 400), 'fits', 1020, 0],
    ['a frame larger by more', frame(1021, 400), 'does_not_fit', 1021, -1],
    ['a frame too deep', frame(1000, 421), 'does_not_fit', 421, -1],
    ['a board much larger', board(1600, 900), 'fits', 900, 500],
    ['a top of which nobody says more', { topLengthMm: 1000, topWidthMm: 390 }, 'does_not_fit', 390, -10],
  ])('%s', (_what, stand, verdict, value, margin) => {
    expect(on(stand)).toMatchObject({ verdict, value: { value, unit: 'mm' }, margin: { value: margin } })
  })

  it('is held against both ends where it is a frame', () => {
    expect(on(frame(1000, 400)).limit).toMatchObject({ kind: 'between', low: { value: 1000 }, high: { value: 1020 } })
    expect(on(board(1000, 400)).limit).toEqual({ kind: 'at_least', low: { value: 1000, unit: 'mm', digits: 0 } })
  })

  it('says what it is and what would do', () => {
    const good = on(board(1010, 410))
    expect(reasonOf(good)).toBe("The tank covers 100 cm by 40 cm and the stand's top is 101 cm by 41 cm: every edge is carried.")
    expect(good.action).toBeNull()
    expect(good).toMatchObject({ source: { tag: 'common_practice', text: expect.stringMatching(/^No tank overhangs/) as string } })
    const beside = on(frame(1100, 400))
    expect(reasonOf(beside)).toBe(
      'The stand is an open frame of 110 cm by 40 cm and the tank covers 100 cm by 40 cm: its edges would not lie on the frame.',
    )
    expect(actionOf(beside)).toBe('Choose a stand whose top is at least 100 cm by 40 cm, with a full board.')
    const short = on(board(960, 400))
    expect(actionOf(short)).toBe('Choose a stand whose top is at least 100 cm by 40 cm.')
    expect(short.action?.want).toEqual({ slot: 'carry_tank', quantity: 1, minimum: { lengthMm: 998, widthMm: 398 } })
  })

  it('asks for the top where a side of it is missing', () => {
    for (const stand of [{ topLengthMm: 1000 }, { topWidthMm: 400 }]) {
      const found = on(stand)
      expect(found).toMatchObject({ verdict: 'not_known', missing: ['length and depth of the stand’s top'] })
      expect(reasonOf(found)).toBe('The top of Thornby is not stated; the tank covers 100 cm by 40 cm.')
      expect(actionOf(found)).toBe("Measure the stand's top and enter it.")
    }
  })

  it('is no check without a stand', () => {
    expect(reportOf({ stand: null }).findings.some(({ check }) => check === 'stand_footprint')).toBe(false)
  })
})

/**
 * By hand: 0.39 m of water press with 3813.3 Pa (0.99705 · 9.80665 · 390), the pane at the edge weighs 98.0665 N/m (2500 · 9.80665 · 0.01 · 0.4).
 * σ = 6 · (p·c²/2 + w·c) / t²: at 20 mm 0.163, at 227 mm 7.23, at 228 mm 7.28 N/mm².
 */
describe('a tank that sticks out', () => {
  it('in front alone, or at its ends alone, or all round', () => {
    expect(reasonOf(on(board(1000, 360)))).toContain('only 100 cm by 36 cm: it would stick out by 20 mm in front and behind. A flat bottom')
    expect(reasonOf(on(board(960, 400)))).toContain('it would stick out by 20 mm at either end. A flat bottom')
    expect(reasonOf(on(board(960, 380)))).toContain(
      'it would stick out by 20 mm at either end and 10 mm in front and behind. A flat bottom',
    )
  })

  it('is bent by so much where it is flat glass, the farther the more', () => {
    expect(reasonOf(on(board(960, 400)))).toMatch(
      /As a strip it would be bent to 0\.2 N\/mm² over the stand's edge, if that edge were straight all along; a hard spot under it takes many times as much\.$/,
    )
    expect(reasonOf(on(board(1000, 360)))).toMatch(/bent to 0\.2 N\/mm²/)
    expect(reasonOf(on(board(546, 400)))).toMatch(/bent to 7\.2 N\/mm² over the stand's edge, if/)
    expect(reasonOf(on(board(544, 400)))).toMatch(
      /bent to 7\.3 N\/mm² over the stand's edge: beyond the 7\.3 N\/mm² that glass bears for long\.$/,
    )
  })

  it('is only told to be carried where glass or bottom are not stated', () => {
    for (const part of [{ glassMm: undefined }, { bottomMm: undefined }, { material: 'acrylic' as const }])
      expect(reasonOf(on(board(960, 400), part))).toMatch(/at either end\. A flat bottom has to be carried all over\.$/)
    expect(reasonOf(on(board(960, 400), { style: 'rimmed' }))).toMatch(
      /at either end\. A rimmed tank bears along its frame, and all of the frame has to be carried\.$/,
    )
  })
})

describe('a tank that is no rectangle', () => {
  const round = (stand: StandSpec) =>
    on({ topLengthMm: 500, topWidthMm: 500, ...stand }, { lengthMm: 500, widthMm: 500, shape: 'cylinder' })

  it('on an open frame hangs free', () => {
    const found = round({ top: 'perimeter' })
    expect(reasonOf(found)).toBe('The stand is an open frame and the tank is no rectangle (cylinder): its edges would hang free.')
    expect(found.action?.want).toEqual({ slot: 'carry_tank', quantity: 1, minimum: {} })
    expect(actionOf(found)).toBe("Choose a stand of the tank's own shape, or one with a full board.")
    expect(found.source.tag).toBe('common_practice')
  })

  it('on a top of which nobody says whether it is a board is not known', () => {
    const found = round({})
    expect(found).toMatchObject({ verdict: 'not_known', missing: ['whether the stand has a full board'] })
    expect(reasonOf(found)).toContain('The tank is no rectangle (cylinder)')
    expect(actionOf(found)).toBe("Enter the stand's top: full board or frame.")
  })

  it('on a top made for another shape has to be seen, be it a board or not', () => {
    for (const top of ['full', 'perimeter'] as const) {
      const found = round({ top, shape: 'hexagon' })
      expect(found).toMatchObject({ verdict: 'not_known', missing: ['a top of the tank’s own shape'] })
      expect(reasonOf(found)).toContain("The stand's top is made for another shape (hexagon)")
      expect(actionOf(found)).toBe("Choose a stand of the tank's own shape, or a rectangular one with a full board.")
    }
    expect(on({ ...board(1000, 400), shape: 'hexagon' }).verdict).toBe('not_known')
    expect(on({ ...board(1000, 400), shape: 'rectangular' }).verdict).toBe('fits')
  })

  it('does not fit by its size whatever the shape', () => {
    expect(round({ top: 'full', topLengthMm: 400, shape: 'hexagon' }).verdict).toBe('does_not_fit')
  })
})
