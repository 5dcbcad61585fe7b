import { describe, expect, it } from 'vitest'
import type { TankSpec } from '../../../core/catalog/spec.ts'
import { workedOf } from '../../../core/explanation/worked.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import type { Check } from '../../../core/sizing/finding.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { conditions, gear, group, one } from '../sizing/sample-build.ts'

const TANK: TankSpec = { lengthMm: 762, widthMm: 318, heightMm: 419, glassMm: 6, bottomMm: 6, material: 'glass', style: 'rimmed' }

/** "Turnover, loaded media: 264.2 gal/h ÷ 20.7 gal = 12.8 times an hour" */
function sumsOf(check: Check, tank: TankSpec): string[] {
  const subject = { gear: gear({ tank: one('Wendlemere 25', tank) }), conditions: conditions() }
  const found = sizingReport(subject).findings.find((each) => each.check === check)!
  return workedOf(found, subject).map(({ name, value }) => `${name}: ${sayPhrase(value, US)}`)
}
const waterIn = (sum: string | undefined): string => / ÷ ([\d.]+) gal = /.exec(sum ?? '')?.[1] ?? ''

describe('the water that two sums divide by', () => {
  it('is the same where everything is stated', () => {
    const [loaded, clean] = [sumsOf('filter_flow', TANK)[0], sumsOf('flow_ceiling', TANK)[0]]
    expect(loaded).toMatch(/^Turnover, loaded media: /)
    expect(clean).toMatch(/^Turnover of the tank, clean media: /)
    expect(Number(waterIn(clean)).toFixed(1)).toBe(waterIn(loaded))
  })

  it('is named as the most and the least that there may be where it hangs on an open pane', () => {
    const { bottomMm: _, ...open } = TANK
    const [loaded, clean] = [sumsOf('filter_flow', open)[0], sumsOf('flow_ceiling', open)[0]]
    expect(loaded).toMatch(/^Turnover, loaded media, most water: /)
    expect(clean).toMatch(/^Turnover of the tank, clean media, least water: /)
    expect(Number(waterIn(clean))).toBeLessThan(Number(waterIn(loaded)))
  })
})

it('tells the parts of a mass a digit further than their sum, which they come to', () => {
  const [sum] = sumsOf('stand_load', TANK)
  const [, tank, bed, water, all] =
    /: ([\d.]+) lb of tank \+ ([\d.]+) lb of substrate as bought \+ ([\d.]+) lb of water = ([\d.]+) lb$/.exec(sum ?? '') ?? []
  expect([tank, bed, water].map((part) => part?.split('.')[1]?.length)).toEqual([2, 2, 2])
  expect((Number(tank) + Number(bed) + Number(water)).toFixed(1)).toBe(all)
})

/** The lines of a check as a reader has them. */
function linesOf(check: Check, parts: Partial<Gear>, room: Partial<Conditions>, reader = US): string[] {
  const subject = { gear: gear(parts), conditions: conditions(room) }
  const found = sizingReport(subject).findings.find((each) => each.check === check)!
  return workedOf(found, subject).map(({ name, value }) => `${name}: ${sayPhrase(value, reader)}`)
}

describe('a floor on measured joists', () => {
  const JOISTS = { floor: 'timber_upper', joistSpanMm: 3657.6, joistSpacingMm: 406.4, floorUse: 'other', joistLie: 'across' } as const
  const stand = (base: 'full' | 'feet') => ({
    stand: one('Thornby', { topLengthMm: 1219.2, topWidthMm: 457.2, heightMm: 760, base, massKg: 28.1 }),
  })

  // By hand, 48 × 18 in across joists of 12 ft at 16 in: a joist takes 16/48 of it; a patch of 18 in on 144 bends by P·l/4·(1 − 18/288), an even load by
  // q·l/8, so that 2·(1 − 0.0625) = 1.875. IRC table R301.5 has 40 lb/ft² for what is no bedroom, NDS table 2.3.2 takes 0.9 of it for good.
  it('is reckoned in bending from the share of a joist to that of its allowance', () => {
    const [mass, share, even, allowed, of, sag] = linesOf('floor_load', stand('full'), JOISTS)
    expect(mass).toMatch(/^Mass on the floor, before rounding: [\d.]+ lb of full tank \+ 61\.95 lb of stand = [\d.]+ lb$/)
    expect(share).toMatch(/^On the worst joist: [\d.]+ lb × 0\.3333\d* = /)
    expect(even).toMatch(/^Spread evenly, bends it as much: [\d.]+ lb × 1\.875 = /)
    expect(allowed).toMatch(/^Allowed as a lasting load, on its area: 40\.0*\d? lb\/ft² × 16(?:\.0+)? ft² × 0\.9 = 576\.0 lb$/)
    expect(of).toMatch(/^Of what it allows: ([\d.]+) lb ÷ 576\.0 lb = \d+ %$/)
    expect(sag).toMatch(/^Sag, of the sag that it was designed for: \d+ %$/)
  })
  // Against a wall the middle of 18 in stands 2 in (50 mm) and 9 away from it: (144 − 10.97)/144 of it on the near end, twice that of an even load.
  it('is reckoned in shear where that governs', () => {
    const [, , even] = linesOf('floor_load', stand('full'), { ...JOISTS, joistLie: 'bearing_wall' })
    const near = (3657.6 - 50 - 228.6) / 3657.6
    const [, factor = ''] = /^Spread evenly, loads its end as much: [\d.]+ lb × ([\d.]+) = /.exec(even ?? '') ?? []
    expect(Number(factor)).toBeCloseTo(2 * near, 3)
  })
  it('tells the masses alone where no joist is measured', () => {
    expect(linesOf('floor_load', stand('full'), { floor: 'ground_slab' })).toHaveLength(1)
  })
})

it('tells what runs down into the sump, and the room that may be used', () => {
  const spec = { totalVolumeL: 66, operatingVolumeL: 38 }
  const parts = { sump: one('Osmere Sump', spec), filters: [one('Pellick Return', { type: 'return_pump' as const, ratedFlowLph: 2000 })] }
  const room = { siphonBelowMm: 30, pipeVolumeL: 1 }
  // By hand: 1199.2 × 437.2 mm inside, 523.4 − 40 mm deep, are 253.44 L; 30 of 483.4 mm are 6.206 %, 15.73 L; of 28 L of room a fifth stays free.
  const [depth, runs, usable] = linesOf('drain_down', parts, room, METRIC)
  expect(depth).toMatch(/: 30 mm ÷ 483\.4 mm, a share of 0\.0620[56]\d*$/)
  // 30 mm are 1.181 in, 483.4 mm 19.031.
  const [inches] = linesOf('drain_down', parts, room, US)
  expect(inches).toMatch(/: 1\.18 in \(30 mm\) ÷ 19\.03 in \(483\.4 mm\), a share of 0\.0620[56]\d*$/)
  expect(runs).toMatch(/^Runs down at most, with the pipes: 253\.4\d* L × 0\.0620[56]\d* \+ 1\.00 L = 17 L$/)
  expect(usable).toBe('Room in the sump, a fifth kept free: 28.00 L × 0.8 = 22.4 L')
})

it('tells a pull as a weight and as a force', () => {
  // By hand: half of 18 in over 760 + 533.4 mm is 228.6 / 1293.4 = 0.1767.
  const stand = one('Thornby', { topLengthMm: 1219.2, topWidthMm: 457.2, heightMm: 760, massKg: 28.1 })
  const [lever, pull] = linesOf('tipping', { stand }, {})
  expect(lever).toBe('Nearest edge of the base ÷ height of the push: 9.00 in (228.6 mm) ÷ 50.92 in (1,293.4 mm)')
  const [, weight, force] = /× 0\.1767\d* = ([\d.]+) lb; rounded, (\d+) lb of pull$/.exec(pull ?? '') ?? []
  expect(Math.abs(Number(weight) - Number(force))).toBeLessThan(0.7)
})

it('keeps to the reader’s units for doses and media', () => {
  const conditioners = [one('Quillmere', { packVolumeMl: 250, doseMlPerL: 0.13, bindsAmmonia: true })]
  const [metric, us] = [METRIC, US].map((reader) => linesOf('conditioner_dose', { conditioners }, {}, reader)[0])
  // A millilitre treats 1 / 0.13 = 7.692 L, 2.032 gal.
  expect(metric).toMatch(/^Dose of the first fill: [\d.]+ L ÷ 7\.69\d* L for each mL = \d+ mL$/)
  expect(us).toMatch(/^Dose of the first fill: [\d.]+ gal ÷ 2\.03\d* gal for each mL = [\d.]+ fl oz \(\d+ mL\)$/)
  const [feed] = linesOf('filter_feed', {}, {}, US)
  expect(feed).toMatch(/^Feed that poor media take up: [\d.]+ gal ÷ [\d.]+ gal for each gram = /)
})

describe('a balance of heat', () => {
  // By hand, 100 W of a heater, 20 W of a filter and half of a lamp of 30 W are 135 W.
  it('tells what is put in and what is lost at the temperature that was found', () => {
    const [heat, found, dry, vapour, all] = linesOf('heater_stuck', {}, {})
    expect(heat).toBe('Heat put in: 100.0 W from the heater + 35.0 W from pumps and lamps = 135.0 W')
    expect(found).toMatch(/^Found by trying until as much is lost: [\d.]+ °F, in a room of 75\.2 °F$/)
    const [, [, panes = ''] = [], [, gone = ''] = []] = [all, dry, vapour].map((text) => / = ([\d.]+) W$/.exec(text ?? '') ?? [])
    expect(Math.abs(Number(panes) + Number(gone) - 135)).toBeLessThan(0.11)
    expect(linesOf('heater_spare', {}, {})[0]).toBe('Heat put in: 100.0 W from the heaters that are left')
    expect(linesOf('warm_room', {}, {})[0]).toBe('Heat put in: 35.0 W from pumps and lamps')
  })
  it('is not told of a controller that cuts off before it', () => {
    const heaters = [one('Torvane', { powerW: 100, externalController: true })]
    expect(linesOf('heater_stuck', { heaters }, {})).toEqual([])
  })
})

// By hand, 1080 mm of flat glass are no common size: a litre of fresh water at 25 °C weighs 0.99705 kg, 520 mm of it press with 5.084 kPa; 520 ÷ 10 is 52.
it('tells pressure, stress and strength of a pane, in millimetres, as glass is bought', () => {
  const tank = one('Wendlemere', {
    lengthMm: 1100,
    widthMm: 500,
    heightMm: 530,
    glassMm: 10,
    bottomMm: 10,
    material: 'glass' as const,
    style: 'rimless' as const,
  })
  const [pressure, times, form, stress, strength] = linesOf('glass_pane', { tank }, {})
  expect(pressure).toMatch(/0\.997\d* kg a litre × 9\.80665 m\/s² × 0\.52 m = 5\.08\d* kPa$/)
  expect(times).toBe('Depth ÷ thickness: 520 mm ÷ 10 mm = 52')
  expect(form).toMatch(/, for length ÷ depth of 2\.12$/)
  const [, factor = '', told = ''] = /: ([\d.]+) × 5\.08\d* kPa × 52 × 52 ÷ 1000 = ([\d.]+) N\/mm²$/.exec(stress ?? '') ?? []
  // The table's free top has 0.4579 at twice as long as deep and 0.4947 at 2.25: between them 0.475.
  expect(Number(factor)).toBeCloseTo(0.4579 + ((1100 / 520 - 2) / 0.25) * (0.4947 - 0.4579), 3)
  expect(strength).toContain(`19.2 N/mm² ÷ ${told} N/mm² = ${(19.2 / Number(told)).toFixed(1)}`)
})

it('tells the oxygen of a surface and the feed that it carries', () => {
  const [held, passed, feed] = linesOf('surface_oxygen', {}, {}, METRIC)
  // Benson & Krause: 7.83 mg/L at 28 °C at the sea, from memory.
  expect(held).toBe('Needed at least + what may still pass in: 5 mg/L + 2.83 mg/L = 7.83 mg/L')
  expect(passed).toMatch(/ m² × [\d.]+ m\/h × 2\.8\d* g\/m³ × 24 h = [\d.]+ g$/)
  expect(feed).toMatch(/ g ÷ 0\.689 g for each gram = [\d.]+ g$/)
})

it('tells the drift of salt water by what is left and what went', () => {
  const sea = { livestock: { ...group('small-tropical'), water: 'salt' as const } }
  const [left, rise] = linesOf('salinity_drift', {}, sea)
  const [, stays = '', gone = ''] = /: ([\d.]+) lb \+ ([\d.]+) lb = [\d.]+ lb$/.exec(left ?? '') ?? []
  expect(rise).toBe(`Rise in a day: ${gone} lb ÷ ${stays} lb = ${((100 * Number(gone)) / Number(stays)).toFixed(1)} %`)
})

it('tells light by lamp, dimmer and length', () => {
  const lamp = (photonFluxUmolS: number) => ({ lights: [one('Lanmere', { photonFluxUmolS, lengthMm: 914.4, dimmable: true, powerW: 30 })] })
  expect(linesOf('light_level', lamp(100), {})).toEqual([
    expect.stringMatching(/: 100 µmol\/s × 1\.\d+ a m² = \d+ µmol\/m²s$/),
    expect.stringMatching(/^Dimmed: \d+ µmol\/m²s × 0\.\d+ = \d+ µmol\/m²s$/),
  ])
  // 36 of 48 in.
  expect(linesOf('light_coverage', lamp(50), {})).toEqual(['Of the tank’s length: 36.00 in (914.4 mm) ÷ 48.00 in (1,219.2 mm) = 75 %'])
})

it('adds up the watts of what is plugged in, with what else hangs on the circuit', () => {
  expect(linesOf('electrical_load', {}, { otherLoadW: 60 })).toEqual([
    'Everything on at once, at most: 200 W of heaters + 30 W of lights + 20 W of filters + 60 W of other things on the circuit = 310 W',
  ])
})
