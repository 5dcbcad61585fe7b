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
    expect(sayPhrase(on({ ...stated, massKg: 5 }).reason, METRIC)).toMatch(/A child pulls with about 45 N\.$/)
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
