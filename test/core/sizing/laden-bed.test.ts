import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { SubstrateSpec } from '../../../core/catalog/spec.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { explainFinding } from '../../../core/explanation/explain-finding.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { heatCapacity } from '../../../core/sizing/heat-capacity.ts'
import { powerCutHours } from '../../../core/sizing/heater-spare.ts'
import { hoursToDanger } from '../../../core/sizing/heater-stuck.ts'
import { heatingOf } from '../../../core/sizing/heating.ts'
import { boughtBedKg } from '../../../core/sizing/laden-bed.ts'
import type { SizingSubject } from '../../../core/sizing/report.ts'
import { withRanges } from '../../../core/sizing/sensitivity.ts'
import { situationOf } from '../../../core/sizing/situation.ts'
import { leastHours } from '../../../core/sizing/warm-up.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { anyGear, anyRoom } from './any-subject.ts'
import { isNear } from './reference-tanks.ts'
import { conditions, findingOf, gear, one } from './sample-build.ts'
import { roundTank } from './round-tank.ts'

const bags = (spec: SubstrateSpec, count: number) => ({ substrates: [one('Millrace gravel', spec, count)] })
/** Two bags of 20 lb. */
const FORTY_LB = bags({ type: 'gravel', packMassKg: 9.0718474 }, 2)
const DEFAULT_DEPTH = { assumed: ['substrateDepthMm' as const] }

/** The tank of 1000 × 400 mm inside: 50 mm of quartz at 0.40 weigh 31.8 kg (0.4 m² × 0.05 × 0.6 × 2650). */
const carried = (substrates: ReturnType<typeof bags>, depth: Parameters<typeof roundTank>[1] = {}) =>
  roundTank({ ...substrates, notNeeded: {} }, depth).corners[0]!

function sumOf(room: Conditions): string {
  const subject = { gear: gear(FORTY_LB), conditions: room }
  const { findings, figures } = sizingReport(subject)
  const found = findings.find(({ check }) => check === 'stand_load')!
  return explainFinding(found, subject, figures)
    .inputs.map(({ value }) => sayPhrase(value, METRIC))
    .join('\n')
}

describe('the bed that stand and floor carry', () => {
  it('weighs what its bags say, where nobody stated a depth', () => {
    const { mass, geometry, laden } = carried(FORTY_LB, DEFAULT_DEPTH)
    // 40 lb are 18.143 694 8 kg (NIST HB 44).
    isNear(mass.substrateKg, 18.1436948, 1e-9)
    // Of the 180 L inside the grains take 18.1437 / 2.65 = 6.8467 L; glass 17.064 L of 2500 kg/m³; water 0.99705 kg/L (EOS-80, 25 °C).
    isNear(mass.brimKg, 17.064 * 2.5 + 18.1436948 + (180 - 6.84667) * 0.99704796, 1e-5)
    isNear(mass.runningKg, 17.064 * 2.5 + 18.1436948 + (160 - 6.84667) * 0.99704796, 1e-5)
    // 6.84667 L of grains are 11.41 L of bed: 28.5 mm. What is dosed keeps the depth that the build is planned with.
    isNear(laden.substrateDepthMm, 28.528, 1e-3)
    isNear(geometry.waterVolumeL, 160 - 12, 1e-9)
    isNear(mass.waterKg, (160 - 12) * 0.99704796, 1e-5)
  })

  it('weighs the heavier of bags and a depth that is stated', () => {
    isNear(carried(FORTY_LB).mass.substrateKg, 31.8, 1e-9)
    isNear(carried(bags({ type: 'gravel', packMassKg: 9.0718474 }, 4)).mass.substrateKg, 36.2873896, 1e-9)
  })

  it('weighs what its depth says without a bag of known weight', () => {
    isNear(carried(bags({ type: 'gravel', packVolumeL: 5 }, 2), DEFAULT_DEPTH).mass.substrateKg, 31.8, 1e-9)
    const mixed = { substrates: [...FORTY_LB.substrates, one('Fell sand', { type: 'sand' as const, packVolumeL: 5 })] }
    expect(boughtBedKg(mixed)).toBeUndefined()
    isNear(carried(mixed, DEFAULT_DEPTH).mass.substrateKg, 31.8, 1e-9)
    expect(boughtBedKg({ substrates: [] })).toBeUndefined()
  })

  it('never weighs more than the tank holds below its water line', () => {
    // 160 L of bed, of which 0.6 are grains of 2650 kg/m³.
    isNear(carried(bags({ type: 'gravel', packMassKg: 20 }, 400), DEFAULT_DEPTH).mass.substrateKg, 160 * 0.6 * 2.65, 1e-9)
  })

  it('rests on no default, whatever depth is tried', () => {
    const subject = { gear: gear(FORTY_LB), conditions: conditions({ assumed: ['waterBelowRimMm', 'substrateDepthMm'] }) }
    const told = withRanges(subject, sizingReport(subject)).findings.find(({ check }) => check === 'stand_load')
    expect(told).toMatchObject({ assumed: ['water level below the rim'], turns: [] })
    expect(told?.limitRange).toBeUndefined()
    expect(findingOf('stand_load', bags({ type: 'gravel', packVolumeL: 5 }, 5), DEFAULT_DEPTH).assumed).toEqual(['substrate depth'])
  })

  it('is told as bought in the sum of the explanation', () => {
    expect(sumOf(conditions(DEFAULT_DEPTH))).toContain('18.14 kg of substrate as bought +')
    expect(sumOf(conditions())).toContain('41.68 kg of substrate +')
  })
})

/** Hours until a heater that sticks on, half of all heaters alone and a power cut hurt the animals, of so many times the bags; none where they never do. */
function hoursWith(times: number, { gear: drawn, conditions: room }: SizingSubject): number[] {
  const substrates = drawn.substrates.map((each) => ({ ...each, quantity: each.quantity * times }))
  const situation = situationOf({ gear: { ...drawn, substrates }, conditions: room })
  if (!situation.ok) return []
  const heating = heatingOf(situation.value)
  const { targetC, lowestC } = room.livestock
  const [heater] = heating.heaters
  const failed = leastHours(heating.cold, heating.installedW.low / 2, targetC, lowestC)
  const stuck = heater && hoursToDanger(situation.value, heating, heater)
  return [stuck, failed, powerCutHours(heating, room.livestock)].map((hours) => hours ?? Infinity)
}

describe('the heat in a bed that is bought', () => {
  /**
   * By hand, with the water as above: 42.66 kg of glass at 840 hold 35 834 J/K. Two bags: 152.7012 kg of water at 4180 and 18.1437 kg of grains at 830, 638 291
   * and 15 059. Bags past all room: 64 L of water, 63.8111 kg, and 254.4 kg of grains, 266 730 and 211 152.
   */
  it.each([
    [2, 9.0718474, 689_184],
    [400, 20, 513_716],
  ])('is that of %s bags of %s kg and of the water beside them', (count, packMassKg, expected) => {
    const { mass, shape } = carried(bags({ type: 'gravel', packMassKg }, count), DEFAULT_DEPTH)
    isNear(heatCapacity(mass, shape.material), expected, 1e-5)
  })

  it('never gives more time for more bags: to the danger mark, after a failed heater, in a power cut', () => {
    const kept = { gear: gear(FORTY_LB), conditions: conditions({ ...DEFAULT_DEPTH, coldestRoomC: 12 }) }
    const [many, few] = [hoursWith(8, kept), hoursWith(1, kept)]
    for (const [index, hours] of many.entries()) expect(hours).toBeLessThan((few[index] ?? NaN) * 0.97)
    fc.assert(
      fc.property(anyGear, anyRoom, fc.integer({ min: 2, max: 40 }), (drawn, room, times) => {
        const before = hoursWith(1, { gear: drawn, conditions: room })
        for (const [index, hours] of hoursWith(times, { gear: drawn, conditions: room }).entries())
          expect(hours).toBeLessThanOrEqual((before[index] ?? NaN) * (1 + 1e-9))
      }),
      { numRuns: 60 },
    )
  })
})
