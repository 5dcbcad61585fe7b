import { describe, expect, it } from 'vitest'
import type { TankSpec } from '../../../core/catalog/spec.ts'
import { workedOf } from '../../../core/explanation/worked.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import type { Check } from '../../../core/sizing/finding.ts'
import { sayPhrase, US } from '../../../core/units/say.ts'
import { conditions, gear, one } from '../sizing/sample-build.ts'

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
