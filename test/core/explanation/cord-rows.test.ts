import { describe, expect, it } from 'vitest'
import { cordRows } from '../../../core/explanation/cord-rows.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { conditions, findingOf, gear, one } from '../sizing/sample-build.ts'

const rows = (changes: Partial<Gear> = {}, room = {}) => cordRows({ gear: gear(changes), conditions: conditions(room) })
const told = (changes: Partial<Gear> = {}, room = {}) =>
  Object.fromEntries(
    rows(changes, room).map(({ name, verdict, wanted, has }) => [
      name,
      [verdict, wanted && sayPhrase(wanted, METRIC), sayPhrase(has, METRIC)],
    ]),
  )

describe('the rows of the cords', () => {
  /**
   * By hand: rim at 760 + 533.4 = 1293.4 mm, outlet at 300, 600 away; low point 200. Hanging form √(600² + 1093.4²) + 100 + 300 of slack = 1647.2 mm;
   * a canister's head at 350: √(600² + 150²) + 100 + 300 = 1018.5 mm. A heater's cord of 2600 less 533.4 of tank and 100 over the rim leaves 1966.6.
   * A strip beside the rim, half of 1219.2 mm from the middle: √(609.6² + 100²) + 100 + 300 = 1017.7 mm.
   */
  it('tell what each loop wants and what there is of each cord, the heater’s without what lies in the tank', () => {
    expect(told({}, { circuitProtected: true })).toEqual({
      'Torvane 100 W': ['fits', '102 cm to the strip', '196.7 cm, without 63.3 cm in the water and over the rim'],
      'Pellick canister': ['fits', '102 cm', '150 cm'],
      'Halden Row': ['fits', '102 cm to the strip', '300 cm'],
      'Corbelle strip, hung at the rim': ['fits', '165 cm', '180 cm'],
    })
  })
  it('tell where the strip hangs that is all that protects, and every cord as going into it', () => {
    expect(told()).toEqual({
      'Torvane 100 W': ['fits', '165 cm to the strip', '196.7 cm, without 63.3 cm in the water and over the rim'],
      'Pellick canister': ['fits', '102 cm to the strip', '150 cm'],
      'Halden Row': ['fits', '165 cm to the strip', '300 cm'],
      'Corbelle strip, on the wall beside the outlet': [null, 'no reach: it is plugged in beside it', '180 cm'],
    })
    expect(rows().map(({ loop }) => loop?.to)).toEqual(['wall_strip', 'wall_strip', 'wall_strip', undefined])
    const atRim = { filters: [], power: [one('Corbelle', { protective: true, cordMm: 2000 }), one('Bare strip', { cordMm: 3000 })] }
    expect(told({ ...atRim, lights: [one('Halden', { cordMm: 1200 })] })).toEqual({
      'Torvane 100 W': ['fits', '102 cm to the strip', '196.7 cm, without 63.3 cm in the water and over the rim'],
      Halden: ['fits', '102 cm to the strip', '120 cm'],
      'Corbelle, hung at the rim': ['fits', '165 cm', '200 cm'],
    })
  })
  it('tell the usual range of a cord that nobody stated, and that it leaves open whether it reaches', () => {
    const [heater] = rows({ heaters: [one('Torvane', { powerW: 100 })] })
    expect(heater?.verdict).toBe('not_known')
    expect(sayPhrase(heater?.has ?? [], METRIC)).toMatch(/^not stated; usual 36\.7 cm to 136\.7 cm/)
  })
  it('know what hangs in the tank, stands at the rim, and stands in the stand or in a sump', () => {
    const kinds = rows({
      heaters: [],
      lights: [],
      power: [],
      filters: [one('Internal', { type: 'internal', cordMm: 2500 }), one('Hang-on', { type: 'hang_on', cordMm: 2500 })],
      appliances: [
        { ...one('Air pump', { cordMm: 2500 }), kind: 'air_pump' },
        { ...one('Skimmer in the sump', { cordMm: 2500, place: 'in_sump' as const }), kind: 'skimmer' },
        { ...one('Skimmer in the tank', { cordMm: 2500, place: 'in_tank' as const }), kind: 'skimmer' },
        { ...one('Chiller', { cordMm: 2500 }), kind: 'chiller' },
      ],
    })
    expect(kinds.map(({ name, rimMm, has }) => [name, rimMm === 1293, sayPhrase(has, METRIC).slice(0, 8)])).toEqual([
      ['Internal', false, '186.7 cm'],
      ['Hang-on', false, '250 cm'],
      ['Air pump', false, '250 cm'],
      // 350 mm of a sump that is not chosen, and 100 over its rim.
      ['Skimmer in the sump', true, '205 cm, '],
      ['Skimmer in the tank', false, '186.7 cm'],
      ['Chiller', true, '250 cm'],
    ])
  })
  it('have the finding’s verdict as their worst, and its loop as the one to draw', () => {
    const lights = [one('Halden Row', { lengthMm: 1150, powerW: 30, cordMm: 900 })]
    expect(findingOf('cord_length', { lights, power: [] }).verdict).toBe('does_not_fit')
    expect(rows({ lights, power: [] }).find(({ name }) => name === 'Halden Row')).toMatchObject({
      verdict: 'does_not_fit',
      loop: { neededMm: 1647, lowPointMm: 200, exitHeightMm: 760 + 533.4, outletHeightMm: 300, distanceMm: 600 },
    })
  })
  it('have nothing to draw where no loop can hang, and none without a tank', () => {
    expect(rows({}, { outletHeightMm: 50 }).map(({ wanted, loop }) => [wanted, loop])).toEqual(
      Array.from({ length: 4 }, () => [undefined, undefined]),
    )
    expect(rows({ tank: null })).toEqual([])
  })
})
