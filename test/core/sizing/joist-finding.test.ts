import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { onJoists, PERMANENT_LOAD_FACTOR, type Joists } from '../../../core/sizing/joist-floor.ts'
import { sayPhrase, US } from '../../../core/units/say.ts'
import { INCH, isNear } from './reference-tanks.ts'
import { findingOf, one } from './sample-build.ts'

/** 12 ft joists at 16 in, in a room that is no bedroom: 40 lbf/ft² by IRC table R301.5. */
const JOISTS: Joists = { joistSpanMm: 144 * INCH, joistSpacingMm: 16 * INCH, floorUse: 'other' }
const TANK = { massKg: 385, lengthMm: 48 * INCH, widthMm: 18 * INCH }
const floor = (joists: Partial<Conditions>, more = {}) => findingOf('floor_load', more, { floor: 'timber_upper', ...joists })

describe('a tank on measured joists', () => {
  /** Own worked values before the duration factor, tolerance 3e-4: shear of end panels at the wall, bending of a full base along mid-span. */
  it('takes the worse of bending and shear, and counts that it never leaves', () => {
    const atWall = onJoists({ ...TANK, base: 'end_panels' }, { ...JOISTS, joistLie: 'bearing_wall' })
    isNear(atWall.ratio * PERMANENT_LOAD_FACTOR, 1.2252, 3e-4)
    expect(atWall.governs).toBe('shear')
    const along = onJoists({ ...TANK, base: 'full' }, { ...JOISTS, joistLie: 'along' })
    isNear(along.ratio * PERMANENT_LOAD_FACTOR, 1.5887, 3e-4)
    expect(along.governs).toBe('bending')
  })

  it('takes the worst of what nobody stated: base, direction, use of the room', () => {
    const of = (base: 'full' | 'end_panels' | 'feet' | undefined, joistLie: Joists['joistLie']) =>
      onJoists({ ...TANK, base }, { ...JOISTS, joistLie }).ratio
    const every = (['full', 'end_panels', 'feet'] as const).flatMap((base) => (['across', 'along'] as const).map((lie) => of(base, lie)))
    expect(of(undefined, undefined)).toBe(Math.max(...every))
    const bedroom = onJoists({ ...TANK, base: 'full' }, { ...JOISTS, floorUse: undefined, joistLie: 'across' }).ratio
    isNear(bedroom / of('full', 'across'), 40 / 30, 1e-4)
  })

  it('grows with the mass and never with a closer spacing', () => {
    const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(mm(600, 9000), mm(150, 1200), mm(300, 2000), mm(200, 800), (joistSpanMm, joistSpacingMm, lengthMm, widthMm) => {
        const tank = { massKg: 200, lengthMm, widthMm, base: undefined }
        const joists = { joistSpanMm, joistSpacingMm }
        const { ratio } = onJoists(tank, joists)
        expect(Number.isFinite(ratio) && ratio > 0).toBe(true)
        isNear(onJoists({ ...tank, massKg: 400 }, joists).ratio, ratio * 2, 1e-9)
        expect(onJoists(tank, { ...joists, joistSpacingMm: joistSpacingMm / 1.2 }).ratio).toBeGreaterThanOrEqual(ratio * (1 - 1e-9))
      }),
    )
  })
})

describe('its finding', () => {
  it('speaks in the floor’s own words, never of fitting', () => {
    const heavy = floor({ ...JOISTS, joistLie: 'along' })
    expect(heavy).toMatchObject({ verdict: 'does_not_fit', wording: 'do not place it before an engineer has looked' })
    const small = floor(
      { ...JOISTS, joistLie: 'bearing_wall' },
      {
        tank: one('Wendlemere', { lengthMm: 600, widthMm: 300, heightMm: 360, glassMm: 6, bottomMm: 6, material: 'glass' as const }),
        stand: null,
      },
    )
    expect(small).toMatchObject({ verdict: 'marginal', wording: 'within the usual allowance', action: null })
    for (const found of [heavy, small]) expect(found.caution).toContain('licensed structural engineer')
  })

  it('names what it took the worst of, and says when a bearing wall would do', () => {
    const open = floor({ joistSpanMm: 144 * INCH, joistSpacingMm: 16 * INCH })
    expect(open.assumed).toEqual(expect.arrayContaining(['how the tank lies on the joists', 'use of the room']))
    const tank = one('Wendlemere', { lengthMm: 760, widthMm: 380, heightMm: 330, glassMm: 6, bottomMm: 6, material: 'glass' as const })
    const turned = floor({ joistSpanMm: 4000, joistSpacingMm: 400, floorUse: 'other', joistLie: 'along' }, { tank, stand: null })
    expect(turned).toMatchObject({ verdict: 'marginal', wording: 'ask before you place it' })
    expect(turned.action && sayPhrase(turned.action.text, US)).toMatch(/back against the wall that carries the joists it would take \d+ %/)
  })

  it('stays a question where span or spacing is missing', () => {
    for (const part of [{ joistSpanMm: 3600 }, { joistSpacingMm: 400 }])
      expect(floor(part)).toMatchObject({
        verdict: 'not_known',
        wording: 'ask before you place it',
        missing: ['span and spacing of the joists'],
      })
  })
})
