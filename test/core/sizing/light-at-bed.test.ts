import { describe, expect, it } from 'vitest'
import type { LightSpec, TankSpec } from '../../../core/catalog/spec.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { lightAtBed } from '../../../core/sizing/light-at-bed.ts'
import { situationOf } from '../../../core/sizing/situation.ts'
import { isNear } from './reference-tanks.ts'
import { conditions, gear, one } from './sample-build.ts'

/** 1150 × 80 mm without a lid over 48 × 18 × 21 in. */
function bedOf(lights: LightSpec[], more: { tank?: Partial<TankSpec>; room?: Partial<Conditions>; lid?: 'glass'; count?: number } = {}) {
  const { tank, ...rest } = gear({
    lid: more.lid ? one('a lid', { cover: more.lid }) : null,
    lights: lights.map((spec) => one('Halden', { lengthMm: 1150, widthMm: 80, ...spec }, more.count)),
  })
  const situation = situationOf({
    gear: { ...rest, tank: tank && { ...tank, spec: { ...tank.spec, ...more.tank } } },
    conditions: conditions(more.room),
  })
  if (!situation.ok) throw new Error(situation.refusal.code)
  const found = lightAtBed(situation.value)
  if (!found) throw new Error('no light')
  return found
}

describe('light at the substrate of 40 µmol/s', () => {
  const known = bedOf([{ photonFluxUmolS: 40 }])

  /**
   * By hand: 0.9532 of it (own worked value for 50 mm above the water) and 0.98 of that enter 0.52429 m², and 0.4334 m of clear water leave e^(−0.1 · 0.4334);
   * tolerance 1e-3. At the dark end 0.93 enter and e^(−0.5 · 0.4334) is left, of a light 50 mm higher, which sends less to the water.
   */
  it('at either end of the water and of the mounting', () => {
    isNear(known.dim.high, ((40 * 0.9532 * 0.98) / 0.52429) * 0.957_586, 1e-3)
    const atSameHeight = ((40 * 0.9532 * 0.93) / 0.52429) * 0.805_17
    expect(known.dim.low).toBeLessThan(atSameHeight * 0.97)
    expect(known.dim.low).toBeGreaterThan(atSameHeight * 0.9)
    expect(known.bright).toEqual(known.dim)
    expect(known.shares).toEqual([known.dim])
    expect(known.fluxUnstated).toBe(false)
  })

  it('is brighter by Beer’s and Lambert’s law where the bed is 50 mm thicker', () => {
    const higher = bedOf([{ photonFluxUmolS: 40 }], { room: { substrateDepthMm: 100 } })
    isNear(higher.dim.low / known.dim.low, Math.exp(0.5 * 0.05), 1e-9)
    isNear(higher.dim.high / known.dim.high, Math.exp(0.1 * 0.05), 1e-9)
  })

  it('loses a tenth under a lid', () => {
    isNear(bedOf([{ photonFluxUmolS: 40 }], { lid: 'glass' }).dim.low / known.dim.low, 0.9, 1e-9)
  })

  it('adds up, by entries and by fixtures', () => {
    const two = bedOf([{ photonFluxUmolS: 10 }, { photonFluxUmolS: 30 }])
    isNear(two.dim.low, known.dim.low, 1e-9)
    isNear(two.bright.high, known.bright.high, 1e-9)
    isNear(two.shares[1]?.high, known.dim.high * 0.75, 1e-9)
    const three = bedOf([{ photonFluxUmolS: 40 }], { count: 3 })
    for (const end of ['low', 'high'] as const) {
      isNear(three.dim[end], known.dim[end] * 3, 1e-9)
      isNear(three.bright[end], known.bright[end] * 3, 1e-9)
    }
  })

  it('comes from a fixture as long as the tank where none is stated, 80 mm wide, and none larger than the tank', () => {
    const of = (spec: LightSpec) => bedOf([{ photonFluxUmolS: 40, ...spec }]).dim.low
    const whole = of({ lengthMm: 1219.2 })
    expect(of({ lengthMm: undefined })).toBe(whole)
    expect(of({ lengthMm: 3000 })).toBe(whole)
    expect(whole).toBeLessThan(known.dim.low)
    expect(of({ widthMm: undefined })).toBe(known.dim.low)
    expect(of({ widthMm: 900 })).toBe(of({ widthMm: 457.2 }))
    expect(of({ widthMm: 457.2 })).toBeLessThan(known.dim.low)
  })
})

/** Common practice: 60 to 140 lm/W, 60 to 80 lm for each µmol/s, 10 to 80 W a metre; own: 1 to 3 µmol/J of coloured light. By hand for each. */
describe('light of which only watts are known, or nothing', () => {
  it.each<[string, LightSpec, number, number]>([
    ['30 W of white light', { powerW: 30 }, (30 * 60) / 80, (30 * 140) / 60],
    ['30 W of coloured light', { powerW: 30, spectrum: 'coloured' }, 30, 90],
    ['a light that states nothing over 1.2192 m', {}, (12.192 * 60) / 80, (97.536 * 140) / 60],
  ])('%s', (_what, spec, leastUmolS, mostUmolS) => {
    const found = bedOf([spec])
    const [least, most] = [bedOf([{ photonFluxUmolS: leastUmolS }]), bedOf([{ photonFluxUmolS: mostUmolS }])]
    for (const end of ['low', 'high'] as const) {
      isNear(found.dim[end], least.dim[end], 1e-9)
      isNear(found.bright[end], most.dim[end], 1e-9)
    }
    expect(found.fluxUnstated).toBe(true)
  })

  it('is unstated where one of several says nothing', () => {
    expect(bedOf([{ photonFluxUmolS: 40 }, { powerW: 30 }]).fluxUnstated).toBe(true)
  })

  it('tells lumens as one range: 2400 lm are 30 to 40 µmol/s, and a lumen at the dark end an eightieth of one', () => {
    const found = bedOf([{ luminousFluxLm: 2400 }])
    const [least, most] = [bedOf([{ photonFluxUmolS: 30 }]), bedOf([{ photonFluxUmolS: 40 }])]
    isNear(found.dim.low, least.dim.low, 1e-9)
    isNear(found.dim.high, most.dim.high, 1e-9)
    expect(found.bright).toEqual(found.dim)
    isNear(found.perLumenLow * 2400, least.dim.low, 1e-9)
    // Of several the one that sends least of it down, whichever comes last.
    const [short, long] = [{ lengthMm: 300 }, { lengthMm: 1200 }]
    const each = [bedOf([short]), bedOf([long])].map(({ perLumenLow }) => perLumenLow)
    for (const both of [bedOf([short, long]), bedOf([long, short])]) expect(both.perLumenLow).toBe(Math.min(...each))
    expect(each[0]).not.toBe(each[1])
  })
})

/**
 * A lamp of next to no size over a disc of 240 mm sends it r²/(r² + h²) (Howell B-12, from memory): h is 50 mm at the bright end, where 0.98 enter and
 * e^(−0.1 · 0.4334) is left, and 100 mm at the dark one, where 0.93 enter and e^(−0.5 · 0.4334) is left. Tolerance 1 %: an arc is sixteen chords.
 */
it('falls on a round water by the closed form of a disc', () => {
  const tank = { lengthMm: 500, widthMm: 500, shape: 'cylinder' } as const
  const round = bedOf([{ photonFluxUmolS: 40, lengthMm: 1, widthMm: 1 }], { tank })
  const [r, area] = [240, Math.PI * 0.24 ** 2]
  isNear(round.dim.high, ((40 * 0.98) / area) * (r ** 2 / (r ** 2 + 50 ** 2)) * Math.exp(-0.1 * 0.4334), 1e-2)
  isNear(round.dim.low, ((40 * 0.93) / area) * (r ** 2 / (r ** 2 + 100 ** 2)) * Math.exp(-0.5 * 0.4334), 1e-2)
})
