import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { StandSpec, TankSpec } from '../../../core/catalog/spec.ts'
import { massTogether, tankCentres } from '../../../core/sizing/mass-centre.ts'
import { tankMass } from '../../../core/sizing/tank-mass.ts'
import { freeSurfaceRiseMm, tipAngleDeg, tipForceN } from '../../../core/sizing/tip-over.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { BLOCK_ON_SLOPE, BLOCK_PUSHED, CONE_ON_SLOPE, CRATE, CYLINDER_ON_HEMISPHERE } from '../../reference/tipping.ts'
import { FILL_A, GEOMETRY_A, geometryOf, isNear, MASS_A, TANK_A } from './reference-tanks.ts'
import { findingOf, gear, one, reportOf } from './sample-build.ts'

describe('statics', () => {
  it('tips a block on a slope by its width over its height, and a cone by four times that', () => {
    expect(tipAngleDeg(BLOCK_ON_SLOPE.width / 2, BLOCK_ON_SLOPE.height / 2)).toBeCloseTo(BLOCK_ON_SLOPE.degrees, 3)
    expect(tipAngleDeg(CONE_ON_SLOPE.radius, CONE_ON_SLOPE.height / 4)).toBeCloseTo(CONE_ON_SLOPE.degrees, 9)
  })

  it('tips a block pushed at its upper edge', () => {
    isNear(tipForceN({ kg: BLOCK_PUSHED.kg, leverMm: BLOCK_PUSHED.widthMm / 2 }, BLOCK_PUSHED.heightMm), BLOCK_PUSHED.newtons, 1e-12)
  })

  it('finds the crate of the textbook far from tipping, by the place of the floor’s push', () => {
    const { kg, halfWidthMm, push, normalN, normalAtMm } = CRATE
    const angle = (push.downwardsDeg * Math.PI) / 180
    const across = push.newtons * Math.cos(angle)
    const down = push.newtons * Math.sin(angle)
    // The moment that would tip it, per newton of the floor's push: what the force lacks to the one that tips, back to where the floor pushes.
    const tipsAt = tipForceN({ kg, leverMm: halfWidthMm }, push.heightMm)
    const normal = kg * 9.80665 + down
    isNear(normal, normalN, 2e-3)
    // Moments about the middle of the base: the push leans it one way, its downward part at the side the other.
    expect((across * push.heightMm - down * halfWidthMm) / normal).toBeCloseTo(normalAtMm, 1)
    expect(tipsAt).toBeGreaterThan(across)
  })

  it('puts bodies together at the mean of their centres', () => {
    const { cylinder, hemisphere, centreMm } = CYLINDER_ON_HEMISPHERE
    isNear(massTogether([cylinder, hemisphere]).heightMm, centreMm, 1e-12)
    expect(massTogether([])).toEqual({ kg: 0, heightMm: 0 })
  })

  it('lets water that runs to the low side raise the centre by the second moment of its surface', () => {
    // A box barge 10 × 2 m, free surface over all of it, 20 t: I = 10·2³/12 = 6.667 m⁴, rise 1000·6.667/20 000 = 0.3333 m.
    isNear(freeSurfaceRiseMm({ areaMm2: 20e6, widthMm: 2000, waterDensity: 1000 }, 20_000), 333.333, 1e-5)
  })
})

describe('centre of mass', () => {
  const centres = tankCentres(TANK_A, GEOMETRY_A, MASS_A)

  it('of the empty tank is that of its panels', () => {
    const { lengthMm: l, widthMm: w, heightMm: h } = TANK_A
    const t = 10
    const walls = 2 * (l + w - 2 * t) * t * (h - t)
    const base = l * w * t
    isNear(centres.empty.heightMm, (walls * (t + (h - t) / 2) + base * (t / 2)) / (walls + base), 1e-12)
  })

  it('of the running tank is that of panels, grains, water between them and water above', () => {
    const area = GEOMETRY_A.insidePlanMm2 / 1e6
    const kgPerL = MASS_A.waterKg / GEOMETRY_A.waterVolumeL
    const water = (depthMm: number, share: number, atMm: number) => ({ kg: area * depthMm * share * kgPerL, heightMm: atMm })
    const depth = GEOMETRY_A.waterDepthMm
    const together = massTogether([
      centres.empty,
      { kg: MASS_A.substrateKg, heightMm: 10 + 25 },
      water(50, 0.4, 10 + 25),
      water(depth - 50, 1, 10 + 50 + (depth - 50) / 2),
    ])
    isNear(centres.running.heightMm, together.heightMm, 1e-12)
    isNear(centres.running.kg, MASS_A.runningKg, 1e-12)
  })

  it('rises from running to filled to the rim, and lies below half the height in both', () => {
    expect(centres.brim.heightMm).toBeGreaterThan(centres.running.heightMm)
    expect(centres.brim.heightMm).toBeLessThan(TANK_A.heightMm / 2)
    isNear(centres.brim.kg, MASS_A.brimKg, 1e-12)
  })

  it('does not change with the plan where there is no glass to speak of', () => {
    const thin = { ...TANK_A, widthMm: TANK_A.lengthMm, glassMm: 0.001, bottomMm: 0.001 }
    for (const form of ['rectangular', 'cylinder', 'corner_round', 'hexagon'] as const) {
      const geometry = geometryOf({ ...thin, form }, { waterBelowRimMm: 40, substrateDepthMm: 0 })
      const mass = tankMass({ shape: thin, geometry, grain: 'quartz', water: 'fresh', waterC: 25 })
      isNear(tankCentres(thin, geometry, mass).running.heightMm, geometry.waterDepthMm / 2, 1e-3)
    }
  })

  it('grows with the lengths', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 3, noNaN: true }), (k) => {
        const shape = {
          ...TANK_A,
          lengthMm: TANK_A.lengthMm * k,
          widthMm: TANK_A.widthMm * k,
          heightMm: TANK_A.heightMm * k,
          glassMm: 10 * k,
          bottomMm: 10 * k,
        }
        const geometry = geometryOf(shape, { waterBelowRimMm: FILL_A.waterBelowRimMm * k, substrateDepthMm: FILL_A.substrateDepthMm * k })
        const mass = tankMass({ shape, geometry, grain: 'quartz', water: 'fresh', waterC: 25 })
        isNear(tankCentres(shape, geometry, mass).running.heightMm, centres.running.heightMm * k, 1e-9)
      }),
    )
  })
})

describe('tipping over', () => {
  const small: TankSpec = { lengthMm: 600, widthMm: 300, heightMm: 360, glassMm: 6, bottomMm: 6, material: 'glass', style: 'rimless' }
  const on = (stand: StandSpec, tank: TankSpec = small) => findingOf('tipping', { tank: one('a tank', tank), stand: one('Thornby', stand) })
  const stated: StandSpec = { topLengthMm: 600, topWidthMm: 300, heightMm: 700, massKg: 20 }

  /** Own: 336.0 kg of tank and 28.1 kg of stand, 230 mm from the middle to the edge, pushed 1293.4 mm up: 635 N. */
  it('of a heavy tank on its stand takes a push that nobody gives', () => {
    const found = findingOf('tipping')
    expect(found).toMatchObject({ verdict: 'fits', value: { value: 635, unit: 'N' }, limit: { kind: 'at_least', low: { value: 250 } } })
    isNear(found.value?.value, ((335.976 + 28.1) * 9.80665 * 230) / 1293.4, 1e-3)
    expect(found.caution).toMatch(/children climb.*earthquake.*local rules/)
  })

  it('of a small one is marginal, and the stand is fixed to the wall', () => {
    const found = on(stated)
    expect(found.verdict).toBe('marginal')
    expect(sayPhrase(found.action?.text ?? [], METRIC)).toMatch(/^Fix the stand to the wall/)
    expect(sayPhrase(found.reason, METRIC)).toMatch(/106 cm above the floor, 3\.5 times what the base is deep/)
  })

  it('does not fit where a child pulls it over in use', () => {
    const nano: TankSpec = { lengthMm: 150, widthMm: 150, heightMm: 200, glassMm: 4, bottomMm: 4, material: 'glass' }
    expect(on({ topLengthMm: 150, topWidthMm: 150, heightMm: 1000, massKg: 6 }, nano).verdict).toBe('does_not_fit')
  })

  it('is told empty against a child’s pull', () => {
    expect(sayPhrase(on({ ...stated, massKg: 5 }).reason, METRIC)).toMatch(/A child manages about 4\.6 kg of pull \(45 N\)\.$/)
  })

  it('is harder the wider the base and the heavier the stand, and easier the higher it stands', () => {
    const push = (spec: StandSpec) => on({ ...stated, ...spec }).value?.value ?? 0
    expect(push({ topWidthMm: 400 })).toBeGreaterThan(push({}))
    expect(push({ massKg: 40 })).toBeGreaterThan(push({}))
    expect(push({ heightMm: 900 })).toBeLessThan(push({}))
  })

  it('of a quarter round goes over its curved front, nearer to its centre than half its depth', () => {
    const round = { ...small, lengthMm: 600, widthMm: 600 }
    const stand = { ...stated, topWidthMm: 600 }
    const [square, quarter] = [on(stand, round), on(stand, { ...round, shape: 'corner_round' })]
    expect(quarter.value?.value ?? 0).toBeLessThan((square.value?.value ?? 0) * 0.8)
  })

  it('is not known where height and mass of the stand decide', () => {
    const found = on({ topLengthMm: 600, topWidthMm: 300 }, { ...small, lengthMm: 1219, widthMm: 330, heightMm: 533 })
    expect(found.verdict).toBe('not_known')
    expect(found.missing).toEqual(['height of the stand', 'mass of the stand'])
  })

  it('is not asked of a tank on something that nobody described', () => {
    expect(reportOf({ stand: null }).findings.some(({ check }) => check === 'tipping')).toBe(false)
    expect(gear().stand).not.toBeNull()
  })
})

/**
 * By hand. 1000 × 400 × 400 mm, 10 mm all round, 30 kg empty by its maker, bare, filled to 40 mm below the rim: 0.98 · 0.38 · 0.35 m³ of water, 129.955 kg
 * (0.99705 kg/L of fresh water at 25 °C, EOS-80). On a stand of 20 kg and 700 mm: 179.955 kg, 1764.76 N, the rim at 1100 mm.
 */
describe('tipping over, by hand', () => {
  const FLAT: TankSpec = { lengthMm: 1000, widthMm: 400, heightMm: 400, glassMm: 10, bottomMm: 10, material: 'glass', emptyMassKg: 30 }
  const STAND: StandSpec = { topLengthMm: 1000, topWidthMm: 400, heightMm: 700, massKg: 20 }
  const on = (stand: StandSpec = {}, tank: Partial<TankSpec> = {}, waterBelowRimMm = 40) =>
    findingOf(
      'tipping',
      {
        tank: one('a tank', { ...FLAT, ...tank }),
        stand: one('Thornby', { ...STAND, ...stand }),
        substrates: [],
        notNeeded: { substrate: 'bare' },
      },
      { waterBelowRimMm },
    )
  const reasonOf = (finding: ReturnType<typeof on>) => sayPhrase(finding.reason, METRIC)

  it('tells the push, the lean and what tips it empty', () => {
    const found = on()
    // 1764.76 N · 200 / 1100; empty 490.33 N · 200 / 1100. Centre 820 mm up, 25 mm more as the water runs: atan(200 / 845) is 13.3°.
    expect(reasonOf(found)).toBe(
      'The rim stands 110 cm above the floor, 2.8 times what the base is deep. It takes 33 kg of pull (321 N) there to tip it in use, or a lean of 13°; empty, 9.1 kg of pull (89 N) do it.',
    )
    expect(found).toMatchObject({ verdict: 'fits', action: null, value: { value: 321 }, limit: { low: { value: 250, unit: 'N' } } })
    expect(found).toMatchObject({ assumed: [], missing: [], source: { tag: 'from_memory' } })
  })

  it.each([
    // 1.60433 N a millimetre of lever: half the depth of the top.
    [312, 250, 'fits'],
    [311, 249, 'marginal'],
  ])('on a top %s mm deep takes %s N of 250: %s', (topWidthMm, value, verdict) => {
    expect(on({ topWidthMm })).toMatchObject({ verdict, value: { value }, margin: { value: value - 250 } })
  })

  it('goes over the shorter side, whichever it is', () => {
    expect(on({ topLengthMm: 312, topWidthMm: 1000 }).value?.value).toBe(250)
    expect(on({ topLengthMm: undefined, topWidthMm: 312 }).value?.value).toBe(250)
    expect(on({ topLengthMm: 1000, topWidthMm: undefined }).value?.value).toBe(321)
  })

  it('is pushed no higher than 2 m', () => {
    // The rim at 2100 mm: 1764.76 N · 200 / 2000.
    expect(on({ heightMm: 1700 }).value?.value).toBe(176)
  })

  it('is asked for a fifth of its weight where that is less than 250 N', () => {
    // 500 mm long: 0.48 · 0.38 · 0.35 m³, 63.651 kg; 113.651 kg in all, 1114.54 N: a fifth is 223, and 200 / 1100 of it 203.
    expect(on({}, { lengthMm: 500 })).toMatchObject({ verdict: 'marginal', value: { value: 203 }, limit: { low: { value: 223 } } })
    expect(on({ topWidthMm: 440 }, { lengthMm: 500, widthMm: 400 })).toMatchObject({ verdict: 'fits', value: { value: 223 } })
  })

  /** 300 mm cube of 5 mm, 5 kg: 0.29² · 0.255 m³, 21.382 kg; with a stand of 4 kg 297.94 N, the rim at 1000 mm. */
  it.each([
    [300, 45, 'marginal'],
    [298, 44, 'does_not_fit'],
  ])('of a nano on a top %s mm deep goes over at %s N, a child’s pull being 44.5: %s', (topWidthMm, value, verdict) => {
    const nano = { lengthMm: 300, widthMm: 300, heightMm: 300, glassMm: 5, bottomMm: 5, emptyMassKg: 5 }
    const found = on({ topLengthMm: 300, topWidthMm, massKg: 4 }, nano)
    expect(found).toMatchObject({ verdict, value: { value }, limit: { low: { value: 60 } } })
    expect(sayPhrase(found.action?.text ?? [], METRIC)).toMatch(/^Fix the stand to the wall/)
  })

  it('never asks less than a child’s pull', () => {
    // 1 kg of glass and 1 kg of stand, 0.13² · 0.155 m³ of water: 2.612 + 2 kg, of which a fifth is 9 N.
    const cup = { lengthMm: 150, widthMm: 150, heightMm: 205, emptyMassKg: 1 }
    expect(on({ topLengthMm: 900, topWidthMm: 900, massKg: 1 }, cup).limit).toMatchObject({ low: { value: 45 } })
  })

  it.each([
    // Empty 15 kg, 147.1 N: 44.9 N over 336 mm of lever, 44.3 N over 331.
    [672, '', 'fits'],
    [662, ' A child manages about 4.6 kg of pull (45 N).', 'marginal'],
  ])('on a top %s mm deep under an empty tank that is light:%s %s', (topWidthMm, words, verdict) => {
    const found = on({ topWidthMm, massKg: 5 }, { emptyMassKg: 10 })
    expect(found.verdict).toBe(verdict)
    expect(reasonOf(found)).toMatch(new RegExp(`; empty, 4\\.[56] kg of pull \\(4[45] N\\) do it\\.`))
    expect(reasonOf(found).endsWith(`do it.${words}`)).toBe(true)
  })

  /** 2 m long: 262.563 kg of water, its centre with stand and glass 847 mm up and 29 mm more as it runs: 9.5° is 146.6 mm of lever. */
  it.each([
    [294, '10°', '', 'fits'],
    [293, '9°', ' Standing equipment is made to lean by 10°.', 'marginal'],
  ])('on a top %s mm deep leans by %s before it goes:%s %s', (topWidthMm, lean, words, verdict) => {
    const found = on({ topLengthMm: 2000, topWidthMm }, { lengthMm: 2000 })
    expect(found.verdict).toBe(verdict)
    expect(reasonOf(found)).toMatch(new RegExp(`or a lean of ${lean}; empty, 6\\.[67] kg of pull \\(6[56] N\\) do it\\.${words}$`))
  })

  /** 3000 × 150 × 400 mm of 170 kg with 90 mm of water, its centre lower than the glass's: 833 mm in use and 845 mm empty; 9.5° are 139.4 and 141.4 mm. */
  it.each([
    [283, 'fits'],
    [281, 'marginal'],
  ])('leans empty too: on a top %s mm deep %s', (topWidthMm, verdict) => {
    const shallow = { lengthMm: 3000, widthMm: 150, emptyMassKg: 170 }
    const found = on({ topLengthMm: 3000, topWidthMm, massKg: 10 }, shallow, 300)
    expect(found.verdict).toBe(verdict)
    expect(reasonOf(found)).toContain('a lean of 10°')
  })

  it('takes the lightest and the highest stand where nobody says', () => {
    // 16 kg and 950 mm: 175.955 kg, 1725.53 N · 200 / 1350.
    const found = on({ heightMm: undefined, massKg: undefined })
    expect(found).toMatchObject({ verdict: 'fits', value: { value: 256 }, assumed: ['height of the stand', 'mass of the stand'] })
    expect(on({ massKg: undefined })).toMatchObject({ value: { value: 314 }, assumed: ['mass of the stand'] })
    expect(on({ topWidthMm: undefined }).assumed).toEqual(['length and depth of the stand’s top'])
    expect(on({ topLengthMm: undefined }).assumed).toEqual(['length and depth of the stand’s top'])
  })

  it('is settled where every stand that is sold is as bad, and open where some would do', () => {
    const cup = { lengthMm: 150, widthMm: 150, heightMm: 205, emptyMassKg: 1 }
    const small = { topLengthMm: 150, topWidthMm: 150 }
    // From 950 down to 600 mm high 3 to 4 N for each of its 4.6 kg and the stand's: 24 N at 30 kg at the most.
    expect(on({ ...small, heightMm: undefined }, cup)).toMatchObject({ verdict: 'does_not_fit', assumed: ['height of the stand'] })
    // 1350 and 1000 mm up a lever of 155 mm takes 203 and 274 N.
    expect(on({ topWidthMm: 310, heightMm: undefined })).toMatchObject({ verdict: 'not_known', missing: ['height of the stand'] })
    expect(on({ topWidthMm: 280, heightMm: 950, massKg: undefined })).toMatchObject({ verdict: 'marginal', missing: [] })
  })

  it('of a cylinder goes over its own round, and what the top stands out beyond it on the worse side', () => {
    // 0.24² · π · 0.35 m³: 63.148 kg, 113.148 kg in all, 1109.6 N; the top stands 20 mm out.
    const round = (topLengthMm: number, topWidthMm: number) =>
      on({ topLengthMm, topWidthMm }, { lengthMm: 500, widthMm: 500, shape: 'cylinder' }).value?.value
    expect(round(560, 540)).toBe(272)
    expect(round(540, 560)).toBe(272)
    expect(round(500, 500)).toBe(252)
    expect(round(100, 100)).toBe(50)
    // Nothing is left of the base but the millimetre that keeps it from nought.
    expect(round(0, 0)).toBe(1)
  })
})
