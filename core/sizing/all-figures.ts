import { deliveryOf } from './filter-delivery.ts'
import { energyUse } from './energy-use.ts'
import { floorPlan } from './floor-plan.ts'
import { heatCurve } from './heat-curve.ts'
import { heatingOf, type Heating } from './heating.ts'
import { lightAlong, litOf } from './light-along.ts'
import { pumpCurve } from './pump-curve.ts'
import type { SizingFigures, SizingReport, SizingSubject } from './report.ts'
import { situationOf, type Situation } from './situation.ts'

/** What plots alone draw, a drip loop apart: a checklist says it too. */
type Drawn = Pick<SizingFigures, 'heatCurve' | 'pumpCurve' | 'lightAlong' | 'floorPlan'>

function drawnIn(situation: Situation, heating: Heating): Drawn {
  const [{ bed, lies }, strongest] = [litOf(situation), deliveryOf(situation)?.strongest]
  const along = bed && !bed.fluxUnstated ? lightAlong(situation, bed, lies) : undefined
  const plan = floorPlan(situation)
  return {
    heatCurve: heatCurve(situation, heating),
    ...(strongest ? { pumpCurve: pumpCurve(strongest, situation) } : {}),
    ...(along ? { lightAlong: along } : {}),
    ...(plan ? { floorPlan: plan } : {}),
  }
}

/**
 * Figures that plots alone take: reckoned where somebody looks. None without a tank that holds water.
 *
 * Units: as the figures' names say. @example drawnFigures(subject).heatCurve?.points.length // 13
 */
export function drawnFigures(subject: SizingSubject): Drawn {
  const result = situationOf(subject)
  return result.ok ? drawnIn(result.value, heatingOf(result.value)) : {}
}

/**
 * A report with every figure there is, as it is issued and answered: with those that plots alone take and the year of energy, for which nobody waits while
 * parts are being chosen.
 *
 * Units: as the figures' names say. @example withAllFigures(subject, sizingReport(subject)).figures.energy?.kwhPerYear // 867
 */
export function withAllFigures<Report extends SizingReport>(subject: SizingSubject, report: Report): Report {
  const result = situationOf(subject)
  if (!result.ok) return report
  const heating = heatingOf(result.value)
  const more = { ...drawnIn(result.value, heating), energy: energyUse(result.value, heating) }
  return { ...report, figures: { ...report.figures, ...more } }
}
