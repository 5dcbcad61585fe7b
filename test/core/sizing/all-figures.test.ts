import { describe, expect, it } from 'vitest'
import { drawnFigures, withAllFigures } from '../../../core/sizing/all-figures.ts'
import { inspectedReport, sizingReport } from '../../../core/sizing/engine.ts'
import { withRanges } from '../../../core/sizing/sensitivity.ts'
import { conditions, gear, one } from './sample-build.ts'

const canister = { type: 'canister', ratedFlowLph: 1200, maxHeadM: 1.9, hoseMm: 16, powerW: 18 } as const
const subject = {
  gear: gear({ filters: [one('Pellick', canister)] }),
  conditions: conditions({ floor: 'timber_upper', joistSpanMm: 3600, joistSpacingMm: 400 }),
}

describe('a report as it is issued', () => {
  it('has, beside every figure that others reckon with while parts are chosen, those that are read and drawn', () => {
    const report = sizingReport(subject)
    const { figures, ...rest } = withAllFigures(subject, report)
    const added = Object.keys(figures).filter((key) => !Object.hasOwn(report.figures, key))
    const held = ['outsideVolumeL', 'substrateMassKg', 'heaterPowerW']
    const read = [
      ...held,
      'dripLoop',
      'evaporationLPerDay',
      'heatLostHours',
      'heaterDutyPercent',
      'lightAtBedUmol',
      'oneFailedC',
      'stuckHours',
    ]
    const drawn = ['energy', 'floorPlan', 'heatCurve', 'lightAlong', 'pumpCurve']
    expect(added.sort()).toEqual([...read, 'stuckTemperatureC', 'turnoverPerHour', 'usualLossW', 'waterChange', ...drawn].sort())
    expect({ ...figures, ...report.figures }).toEqual(figures)
    expect({ ...rest, figures: report.figures }).toEqual(report)
  })

  it('draws what the desk draws', () => {
    const { figures } = withAllFigures(subject, withRanges(subject, sizingReport(subject)))
    const { heatCurve, pumpCurve, lightAlong, floorPlan, dripLoop } = figures
    expect(figures).toMatchObject(drawnFigures(subject))
    expect(drawnFigures(subject)).toMatchObject({ heatCurve, pumpCurve, lightAlong, floorPlan, dripLoop })
  })

  it('has the same figures where what the report was found from is at hand; it is what the figures are of', () => {
    const { report, inspected } = inspectedReport(subject)
    expect(withAllFigures(subject, report, inspected)).toEqual(withAllFigures(subject, sizingReport(subject)))
    const cooler = inspectedReport({ ...subject, conditions: conditions({ coldestRoomC: 12 }) }).inspected
    expect(withAllFigures(subject, report, cooler).figures.usualLossW).toBeGreaterThan(
      withAllFigures(subject, report).figures.usualLossW ?? 0,
    )
  })

  it('has nothing more without a tank', () => {
    const bare = { ...subject, gear: gear({ tank: null }) }
    const report = sizingReport(bare)
    expect(withAllFigures(bare, report)).toEqual(report)
    expect(inspectedReport(bare).inspected).toBeNull()
    expect(drawnFigures(bare)).toEqual({})
  })
})
