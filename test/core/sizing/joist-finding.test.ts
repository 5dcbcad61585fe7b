import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { joistFinding } from '../../../core/sizing/joist-finding.ts'
import { onJoists, PERMANENT_LOAD_FACTOR, type Joists } from '../../../core/sizing/joist-floor.ts'
import { toldFinding } from '../../../core/sizing/told-report.ts'
import { phrase } from '../../../core/units/quantity.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
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

  /** By hand, feet: a pair stands on one joist, the other pair farther off than the next: half of 385 kg, 1887.78 N, in two weights 0.4572 m apart. */
  it('stands on its feet where they are stated', () => {
    const feet = onJoists({ ...TANK, base: 'feet' }, { ...JOISTS, joistLie: 'across' })
    // Against a wall: a foot over the support, the other 0.4572 m out, of which seven eighths come back to it.
    const allowedN = (1915.2 * 0.4064 * 3.6576) / 2
    isNear(feet.ratio, ((1887.780125 / 2) * (1 + 7 / 8)) / allowedN / 0.9, 1e-6)
    expect(feet).toMatchObject({ governs: 'shear', at: { path: 'feet', lie: 'across' } })
  })

  /** By hand: panels under the ends of its length lie 1.2192 m apart along the joist; of 0.4572 m across, 1 − 0.4572/(4·0.4064) = 0.71875 falls to one. */
  it('stands on two weights where its end panels lie across the joist', () => {
    const panels = onJoists({ ...TANK, base: 'end_panels' }, { ...JOISTS, joistLie: 'along' })
    const eachN = (0.71875 * 385 * 9.80665) / 2
    const allowedN = (1915.2 * 0.4064 * 3.6576) / 2
    // Against a wall: one panel over the support, the other 1.2192 m out, bears on the near end by 1 and by two thirds.
    isNear(panels.ratio, (eachN * (1 + 2 / 3)) / allowedN / 0.9, 1e-6)
  })

  /** By hand: 1 m of tank on a joist of 0.9 m lies over all of it: w·l²/8 and w·l/2 of the load, both as the allowance is. */
  it('lies over the whole of a joist that is shorter than the tank is deep, and tells bending where both come to the same', () => {
    const short = { joistSpanMm: 900, joistSpacingMm: 400, floorUse: 'other' } as const
    const wide = { massKg: 100, lengthMm: 2000, widthMm: 1000, base: 'full' } as const
    const found = onJoists(wide, { ...short, joistLie: 'bearing_wall' })
    // One fifth of 980.665 N on a joist that was designed for 1915.2 Pa · 0.4 m · 0.9 m.
    isNear(found.ratio, 196.133 / 689.472 / 0.9, 1e-9)
    expect(found.governs).toBe('bending')
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

/**
 * By hand, 1000 × 400 mm on its whole base along joists of 4 m at 0.4 m: three quarters of it on one joist, P = 7.35499 N/kg; at mid-span 0.875·P N m, of
 * 0.9 · 1915.2 · 0.4 · 4²/8 = 1378.94 N m. Half is 107.13 kg (108.2 at 50.5 %), all of it 214.27 kg (215.34 at 100.5 %).
 * At the wall two fifths fall to one joist: shear 0.9375 · 3.92266 N/kg of the same figure in newtons, half at 187.49 kg.
 * Sag at mid-span: 497 · P / 384 N m³ against 5 · 766.08 · 4⁴ / 384, the same at 268.25 kg.
 */
describe('its finding, by hand', () => {
  const stated = { joistSpanMm: 4000, joistSpacingMm: 400, floorUse: 'other', joistLie: 'along' } as const
  const found = (massKg: number, joists: Partial<Joists> = {}, askAboveKg = 450) =>
    joistFinding(
      { massKg, lengthMm: 1000, widthMm: 400, base: 'full' },
      { ...stated, ...joists },
      { weighs: phrase`It is heavy.`, assumed: ['glass thickness'], askAboveKg },
    )
  const onAnyBase = (massKg: number) =>
    joistFinding({ massKg, lengthMm: 1000, widthMm: 400, base: undefined }, stated, {
      weighs: phrase`It is heavy.`,
      assumed: ['glass thickness'],
      askAboveKg: 450,
    })
  const actionOf = (finding: ReturnType<typeof found>) => finding.action && sayPhrase(finding.action.text, METRIC)

  it.each([
    [108, 50, 'marginal', 'within the usual allowance'],
    [109, 51, 'marginal', 'ask before you place it'],
    [215, 100, 'marginal', 'ask before you place it'],
    [216, 101, 'does_not_fit', 'do not place it before an engineer has looked'],
  ])('%s kg take %s per cent: %s, %s', (massKg, percent, verdict, wording) => {
    expect(toldFinding(found(massKg))).toMatchObject({
      verdict,
      wording,
      value: { value: percent, unit: 'percent' },
      limit: { kind: 'at_most', high: { value: 50, unit: 'percent' } },
      source: { tag: 'own', text: expect.stringMatching(/IRC table R301\.5/) as string },
    })
  })

  it('asks above a mass whatever the joists', () => {
    expect(found(100, {}, 100).wording).toBe('within the usual allowance')
    expect(found(101, {}, 100).wording).toBe('ask before you place it')
    expect(actionOf(found(101, { joistLie: 'bearing_wall' }, 100))).toBe(
      "Ask the building's owner or a licensed structural engineer before you place it.",
    )
  })

  it('tells room, joist and share', () => {
    expect(sayPhrase(found(100).reason, METRIC)).toBe(
      "It is heavy. Of all that a living room's floor allows on one joist 400 cm long, 40 cm from the next, it would take 47 % in bending.",
    )
    // 367.749 N of the 0.9 · 1149.12 that a bedroom's joist was designed for.
    expect(sayPhrase(found(100, { joistLie: 'bearing_wall', floorUse: 'bedroom' }).reason, METRIC)).toBe(
      "It is heavy. Of all that a bedroom's floor allows on one joist 400 cm long, 40 cm from the next, it would take 36 % in shear at its end.",
    )
  })

  it('tells a sag beyond what the floor was designed for', () => {
    const sags = / It would sag further than the floor was designed to, and wood goes on sagging\.$/
    expect(sayPhrase(found(268).reason, METRIC)).not.toMatch(sags)
    expect(sayPhrase(found(269).reason, METRIC)).toMatch(sags)
  })

  it('tells of the wall that carries the joists where that is within the allowance', () => {
    const ask = "Ask the building's owner or a licensed structural engineer before you place it."
    expect(actionOf(found(108))).toBeNull()
    expect(actionOf(found(109))).toBe(`${ask} With its back against the wall that carries the joists it would take 29 %.`)
    expect(actionOf(found(187))).toBe(`${ask} With its back against the wall that carries the joists it would take 50 %.`)
    expect(actionOf(found(188))).toBe(ask)
    expect(actionOf(found(216))).toBe('Have a licensed structural engineer look at the floor before the tank is placed.')
  })

  it('assumes the worst of what nobody stated, and nothing else', () => {
    expect(found(100).assumed).toEqual(['glass thickness'])
    expect(found(100, { joistLie: undefined }).assumed).toEqual(['glass thickness', 'how the tank lies on the joists'])
    expect(found(100, { floorUse: undefined }).assumed).toEqual(['glass thickness', 'use of the room'])
    expect(onAnyBase(100).assumed).toEqual(['glass thickness', 'how the stand meets the floor'])
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
