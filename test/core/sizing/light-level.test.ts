import { describe, expect, it } from 'vitest'
import type { LightSpec } from '../../../core/catalog/spec.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { dimmedShare, lightLevel } from '../../../core/sizing/light-level.ts'
import { situationOf, type Situation } from '../../../core/sizing/situation.ts'
import type { Span } from '../../../core/sizing/span.ts'
import { toldFinding } from '../../../core/sizing/told-report.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { conditions, gear, one } from './sample-build.ts'

const WHITE: LightSpec = { lengthMm: 1150, luminousFluxLm: 3000 }
const DIMMABLE: LightSpec = { ...WHITE, dimmable: true }

function under(lights: LightSpec[], room: Partial<Conditions> = {}, more: Partial<Gear> = {}): Situation {
  const situation = situationOf({
    gear: gear({ lights: lights.map((spec) => one('Halden', spec)), ...more }),
    conditions: conditions(room),
  })
  if (!situation.ok) throw new Error(situation.refusal.code)
  return situation.value
}
const lit = (dim: Span, bright: Span = dim, fluxUnstated = false) => ({ dim, bright, fluxUnstated, perLumenLow: 0.007, shares: [dim] })
const span = (low: number, high: number): Span => ({ low, high })
const level = (
  light: ReturnType<typeof lit> | undefined,
  spec: LightSpec = WHITE,
  room: Partial<Conditions> = {},
  more: Partial<Gear> = {},
) => {
  const found = lightLevel(under([spec], room, more), light)
  if (!found) throw new Error('no check')
  return found
}
const reasonOf = (found: ReturnType<typeof level>) => sayPhrase(found.reason, METRIC)
const actionOf = (found: ReturnType<typeof level>) => found.action && sayPhrase(found.action.text, METRIC)
const LUMENS = " Reckoned for white light without lenses; a maker's photon flux would be nearer."

// Common practice: 30 to 60 µmol/m²s for plants of medium light; own: the bright end may pass the upper mark by a quarter, 75.
describe('light at the substrate under plants of medium light', () => {
  it.each([
    [20, 29.4, 'does_not_fit', 20],
    [20, 29.5, 'marginal', 20],
    [29.4, 60, 'marginal', 29],
    [29.5, 60, 'fits', 30],
    [60, 75.4, 'fits', 60],
    [60.4, 75, 'fits', 60],
    [60.5, 75, 'marginal', 75],
    [40, 75.5, 'marginal', 76],
    [40, 200, 'marginal', 200],
  ])('from %s to %s: %s', (low, high, verdict, value) => {
    expect(level(lit(span(low, high)))).toMatchObject({
      verdict,
      value: { value, unit: 'umol/m2/s' },
      limit: { kind: 'between', low: { value: 30 }, high: { value: 60 } },
      missing: [],
      assumed: ['clarity of the water and height of the light'],
      source: 'light_level',
    })
  })

  it('tells what arrives, what is wanted and what a day makes of it', () => {
    // 40 · 8 · 3600 / 10⁶ = 1.152 mol, 55 · 0.0288 = 1.584.
    expect(reasonOf(level(lit(span(40, 55))))).toBe(
      `40 to 55 µmol/m²s reach the substrate; these plants want 30 to 60 µmol/m²s. Over 8 h that is 1.2 to 1.6 mol/m² a day.${LUMENS}`,
    )
    expect(reasonOf(level(lit(span(40, 55)), WHITE, { lightHoursPerDay: 7.5 }))).toContain(' Over 7.5 h that is 1.1 to 1.5 mol/m² a day.')
    expect(reasonOf(level(lit(span(40, 55)), { ...WHITE, photonFluxUmolS: 40 }, { lightHoursPerDay: 0 }))).toBe(
      '40 to 55 µmol/m²s reach the substrate; these plants want 30 to 60 µmol/m²s.',
    )
    expect(reasonOf(level(lit(span(40, 55)), WHITE, { plants: 'none' }))).toMatch(
      /^40 to 55 µmol\/m²s reach the substrate; without plants more than 60 µmol\/m²s feeds algae\. Over/,
    )
  })

  it('asks for as many lumens as bring the dark end to the lower mark', () => {
    // 30 over 0.007 are 4286 lm, told in hundreds.
    const found = level(lit(span(20, 25)))
    expect(actionOf(found)).toBe('Choose plants for less light, or a light of at least 4,300 lm.')
    expect(found.action?.want).toEqual({ slot: 'light', quantity: 1, minimum: { luminousFluxLm: 4300 } })
    expect(actionOf(level(lit(span(29, 90))))).toMatch(/^Choose plants for less light/)
  })

  it('asks for less where it is too bright, and for nothing where it fits', () => {
    const words = 'Shorten the hours, raise the light, or dim it: more light than plants use feeds algae.'
    const found = level(lit(span(30, 90)))
    expect(actionOf(found)).toBe(words)
    expect(found.action?.want).toBeUndefined()
    expect(level(lit(span(40, 55))).action).toBeNull()
  })
})

describe('a light that can be dimmed', () => {
  /** By hand: so far that the bright end meets 60, or the dark end 30 if that is more light. */
  it.each([
    [40, 60, 1, '40 to 60'],
    [40, 61, 60 / 61, '39 to 60'],
    [30, 61, 1, '30 to 61'],
    [61, 200, 30 / 61, '30 to 98'],
    [40, 200, 0.75, '30 to 150'],
    [100, 150, 0.4, '40 to 60'],
  ])('from %s to %s is dimmed to %s', (low, high, share, shown) => {
    const situation = under([DIMMABLE])
    expect(dimmedShare(situation, lit(span(low, high)))).toBeCloseTo(share, 12)
    const found = level(lit(span(low, high)), DIMMABLE)
    expect(found.verdict).toBe('fits')
    const begin = share < 1 ? `Dimmed to about ${Math.round(100 * share)} %, ` : ''
    expect(reasonOf(found).startsWith(`${begin}${shown} µmol/m²s reach the substrate; these plants want`)).toBe(true)
  })

  it('is not dimmed where that would leave plants dark, nor where there is none to speak of', () => {
    expect(dimmedShare(under([DIMMABLE]), lit(span(20, 200)))).toBe(1)
    expect(level(lit(span(20, 200)), DIMMABLE)).toMatchObject({ verdict: 'marginal', value: { value: 20 } })
    expect(dimmedShare(under([DIMMABLE]), lit(span(0, 200)))).toBe(1)
    expect(dimmedShare(under([DIMMABLE], { plants: 'none' }), lit(span(0, 200)))).toBe(1)
    expect(dimmedShare(under([DIMMABLE], { plants: 'none' }), lit(span(10, 200)))).toBeCloseTo(0.3, 12)
  })

  it('stays as it is where one of several cannot be dimmed, or what nobody stated decides', () => {
    expect(dimmedShare(under([DIMMABLE, WHITE]), lit(span(100, 150)))).toBe(1)
    expect(dimmedShare(under([DIMMABLE]), lit(span(20, 200), span(100, 150)))).toBe(1)
    expect(dimmedShare(under([DIMMABLE]), lit(span(100, 150), span(200, 300)))).toBeCloseTo(0.4, 12)
    expect(dimmedShare(under([DIMMABLE]), lit(span(100, 150), span(5, 10)))).toBe(1)
  })
})

describe('a light whose flux nobody stated', () => {
  it('is judged where both ends read alike, and says what it rests on', () => {
    const found = level(lit(span(5, 10), span(15, 20), true))
    expect(found).toMatchObject({
      verdict: 'does_not_fit',
      value: { value: 5 },
      assumed: ['lumens or photon flux of the light', 'clarity of the water and height of the light'],
    })
    expect(reasonOf(found)).toMatch(/^5 to 20 µmol\/m²s reach/)
  })

  it.each([
    ['dark or good', span(5, 10), span(40, 50)],
    ['darkish or bright, both marginal', span(20, 40), span(70, 90)],
  ])('is not known where it may be %s', (_what, dim, bright) => {
    const found = level(lit(dim, bright, true))
    expect(found).toMatchObject({
      verdict: 'not_known',
      missing: ['lumens or photon flux of the light'],
      assumed: ['clarity of the water and height of the light'],
    })
    expect(found.value).toBeUndefined()
    expect(actionOf(found)).toBe("Enter the light's lumens or its photon flux.")
    expect(reasonOf(found)).toContain(`${dim.low} to ${bright.high} µmol/m²s reach the substrate`)
  })

  it('is asked for its photon flux where it is coloured', () => {
    const found = level(lit(span(5, 10), span(40, 50), true), { ...WHITE, spectrum: 'coloured' })
    expect(found.missing).toEqual(['photon flux of the light'])
    expect(actionOf(found)).toBe("Enter the light's photon flux: lumens tell nothing of coloured light.")
    const other = level(lit(span(5, 10), span(40, 50), true), { ...WHITE, spectrum: 'coloured', photonFluxUmolS: 30 })
    expect(other.missing).toEqual(['lumens or photon flux of the light'])
  })
})

describe('the hours', () => {
  it('are told to be fewer where all else fits, and left where something else is wrong', () => {
    const long = level(lit(span(40, 55)), WHITE, { lightHoursPerDay: 11 })
    expect(long.verdict).toBe('marginal')
    expect(actionOf(long)).toBe('Set the timer to 10 h a day or less.')
    expect(reasonOf(long)).toContain(' So many hours feed algae.')
    const dark = level(lit(span(5, 10)), WHITE, { lightHoursPerDay: 11 })
    expect(dark.verdict).toBe('does_not_fit')
    expect(reasonOf(dark)).not.toContain('So many hours')
    expect(reasonOf(level(lit(span(40, 55)), WHITE, { lightHoursPerDay: 10 }))).not.toContain('So many hours')
  })
})

describe('several lights', () => {
  it('are as unknown as the one that is', () => {
    const stated = { ...WHITE, photonFluxUmolS: 30 }
    const of = (...specs: LightSpec[]) => lightLevel(under(specs), lit(span(5, 10), span(40, 50), true))
    expect(of(stated, { ...WHITE, spectrum: 'coloured' })?.missing).toEqual(['photon flux of the light'])
    expect(sayPhrase(of(stated, WHITE)?.reason ?? [], METRIC)).toContain(LUMENS)
    expect(sayPhrase(of(stated, stated)?.reason ?? [], METRIC)).not.toContain(LUMENS)
  })
})

describe('plants of much light', () => {
  it('want 60 to 120', () => {
    expect(level(lit(span(60, 120)), WHITE, { plants: 'high' })).toMatchObject({
      verdict: 'fits',
      limit: { low: { value: 60 }, high: { value: 120 } },
    })
  })

  const food = ' Without carbon dioxide and fertiliser, light that strong feeds algae.'
  it('are told to need food unless carbon dioxide is there', () => {
    const high = { plants: 'high' } as const
    expect(reasonOf(level(lit(span(70, 110)), WHITE, high))).toContain(food)
    expect(reasonOf(level(lit(span(40, 55))))).not.toContain(food)
    const co2 = { appliances: [{ kind: 'co2' as const, ...one('Pellick gas', {}) }] }
    expect(reasonOf(level(lit(span(70, 110)), WHITE, high, co2))).not.toContain(food)
    const pump = { appliances: [{ kind: 'air_pump' as const, ...one('Pellick air', {}) }, ...co2.appliances] }
    expect(reasonOf(level(lit(span(70, 110)), WHITE, high, pump))).not.toContain(food)
    expect(reasonOf(level(lit(span(70, 110)), WHITE, high, { appliances: pump.appliances.slice(0, 1) }))).toContain(food)
  })
})

describe('a tank without a light', () => {
  const dark = (room: Partial<Conditions> = {}, more: Partial<Gear> = {}) => lightLevel(under([], room, more), undefined)

  it('does not fit where there are plants', () => {
    const found = dark({ assumed: ['plants'] })
    expect(found && toldFinding(found)).toMatchObject({
      verdict: 'does_not_fit',
      limit: { kind: 'between', low: { value: 30 }, high: { value: 60 } },
      assumed: ['kind of plants'],
      action: { want: { slot: 'light', quantity: 1, minimum: {} } },
      source: { tag: 'common_practice' },
    })
    expect(sayPhrase(found?.reason ?? [], METRIC)).toBe(
      'No light is chosen; these plants want 30 µmol/m²s to 60 µmol/m²s at the substrate.',
    )
    expect(sayPhrase(found?.action?.text ?? [], METRIC)).toBe('Choose a light.')
  })

  it('is not asked of one without plants, nor of one that needs none', () => {
    expect(dark({ plants: 'none' })).toBeNull()
    expect(dark({}, { notNeeded: { light: 'by a window' } })).toBeNull()
  })
})

it('names the defaults of the room that it rests on', () => {
  const assumed = ['plants', 'waterBelowRimMm', 'substrateDepthMm', 'lightHoursPerDay'] as const
  expect(level(lit(span(40, 55)), WHITE, { assumed: [...assumed] }).assumed).toEqual([
    'kind of plants',
    'water level below the rim',
    'substrate depth',
    'hours of light a day',
    'clarity of the water and height of the light',
  ])
})
