import { describe, expect, it } from 'vitest'
import type { TankSpec } from '../../../core/catalog/spec.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { gear, one, reportOf } from './sample-build.ts'

const BOX: TankSpec = { lengthMm: 600, widthMm: 300, heightMm: 400, glassMm: 6, bottomMm: 10, material: 'glass' }
const stuck = (tank: Partial<TankSpec> | null, room: Partial<Conditions> = {}) => {
  const { findings } = reportOf({ tank: tank && one('Wendlemere', { ...BOX, ...tank }) }, room)
  const found = findings.find(({ check }) => check === 'heater_stuck')
  if (!found) throw new Error('heaters are always asked')
  expect(found).toMatchObject({ verdict: 'not_known', source: { tag: 'own', text: 'Nothing is guessed for a tank that is not stated.' } })
  return [sayPhrase(found.reason, METRIC), sayPhrase(found.action?.text ?? [], METRIC), ...found.missing]
}

describe('a tank that holds no water', () => {
  it('is one that nobody chose', () => {
    expect(stuck(null)).toEqual(['No tank is chosen.', 'Choose a tank.', 'length, depth and height of the tank'])
  })

  it('is a round one that is not as deep as long', () => {
    const words = [
      'A cylinder or a quarter round is as deep as it is long, and this tank is not.',
      'Enter a length and depth that are the same.',
      'length and depth that are the same',
    ]
    expect(stuck({ shape: 'cylinder' })).toEqual(words)
    expect(stuck({ shape: 'corner_round' })).toEqual(words)
  })

  it('has a bow or ends that leave no front', () => {
    // Half of 600 mm; nine tenths of 300 mm.
    expect(stuck({ shape: 'bow_front', bowMm: 301, widthMm: 500 })).toEqual([
      'The bow of the front is deeper than a tank of this length and depth can have: at most 30 cm.',
      'Enter a bow of the front that leaves its ends.',
      'bow of the front that leaves its ends',
    ])
    expect(stuck({ shape: 'corner_cut', endMm: 271 })).toEqual([
      "The ends are as deep as the tank's backs are long: at most 27 cm leaves a front to cut.",
      'Enter a depth of the ends that leaves a front.',
      'depth of the ends that leaves a front',
    ])
  })

  it('has panels that leave no inside', () => {
    const [, action, missing] = stuck({ glassMm: 150 })
    expect(stuck({ glassMm: 150 })[0]).toBe("The tank's panels are so thick that no width is left inside.")
    expect(stuck({ glassMm: 150, lengthMm: 300, widthMm: 600 })[0]).toBe("The tank's panels are so thick that no length is left inside.")
    expect(stuck({ bottomMm: 400 })[0]).toBe("The tank's panels are so thick that no height is left inside.")
    expect([action, missing]).toEqual([
      'Enter a thickness of glass and bottom that leaves room inside.',
      'thickness of glass and bottom that leaves room inside',
    ])
  })

  it('is filled below its floor, or by its bed', () => {
    expect(stuck({}, { waterBelowRimMm: 390 })).toEqual([
      'Filled to 39 cm below the rim, a tank of 39 cm inside height holds no water.',
      'Enter a water level below the rim that leaves water in the tank.',
      'water level below the rim that leaves water in the tank',
    ])
    expect(stuck({}, { waterBelowRimMm: 40, substrateDepthMm: 350 })).toEqual([
      'A bed of 35 cm reaches the surface of 35 cm of water.',
      'Enter a substrate depth that leaves water above it.',
      'substrate depth that leaves water above it',
    ])
    expect(reportOf({ tank: one('Wendlemere', BOX) }, { waterBelowRimMm: 40, substrateDepthMm: 349 }).figures.waterVolumeL).toBeGreaterThan(
      0,
    )
    expect(reportOf({ tank: one('Wendlemere', BOX) }, { waterBelowRimMm: 389, substrateDepthMm: 0 }).figures.waterVolumeL).toBeGreaterThan(
      0,
    )
  })
})

describe('what is asked without a tank', () => {
  const checksOf = (changes: Parameters<typeof reportOf>[0]) =>
    reportOf({ tank: null, power: [], testKits: [], filters: [], lights: [], ...changes })
      .findings.filter(({ missing }) => missing[0] === 'length, depth and height of the tank')
      .map(({ check }) => check)
      .sort()
  const always = ['conditioner_dose', 'empty_lift', 'filter_flow', 'floor_load', 'heater_holds', 'smallest_volume', 'stand_load']
  it('is what every build is asked, and the parts that are there', () => {
    expect(checksOf({ heaters: [], stand: null })).toEqual(always)
    expect(checksOf({ stand: null })).toEqual([...always, 'heater_stuck'].sort())
    expect(checksOf({ heaters: [] })).toEqual([...always, 'stand_footprint'].sort())
    expect(gear().stand).not.toBeNull()
  })
})
